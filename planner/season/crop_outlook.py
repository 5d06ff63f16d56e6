"""Outlooks: what each crop wants and can be expected to have, week by week."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from statistics import fmean
from typing import NamedTuple

from planner.garden import Crop, Garden
from planner.scheduling import Sowing, Supply, Unmet, supply_of
from planner.terms import Week, week_of

# What rounding may leave of a week that is met in full.
_SHORT_OF_FULL = 1e-6


class WeekOutlook(NamedTuple):
    """A week of a crop: what is wanted and can be expected, and between which bounds."""

    week: Week
    wanted: float
    expected: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class CropOutlook:
    """A crop's weeks: wanted, expected, low and high, in the crop's unit."""

    crop: Crop
    wants: dict[Week, float]
    supply: Supply
    unmet: tuple[Unmet, ...]

    @property
    def weeks(self) -> Iterator[WeekOutlook]:
        """Every week in which something is wanted or may come, in order."""
        for week in sorted({*self.wants, *self.supply.expected}):
            one = self.at(week)
            if any((one.wanted, one.expected, one.low, one.high)):
                yield one

    def at(self, week: Week) -> WeekOutlook:
        """A week, whether or not anything is wanted of it or comes in it."""
        supply = self.supply
        amounts = (by_week.get(week, 0.0) for by_week in (supply.expected, supply.low, supply.high))
        return WeekOutlook(week, self.wants.get(week, 0.0), *amounts)

    def met(self, week: Week) -> float:
        """The share of a wanted week that is met, 0 to 1."""
        return min(1.0, self.supply.expected.get(week, 0.0) / self.wants[week])

    def is_met(self, week: Week) -> bool:
        """Whether a wanted week is met in full."""
        return self.met(week) >= 1 - _SHORT_OF_FULL

    @property
    def wanted(self) -> float:
        """All that is wanted."""
        return math.fsum(self.wants.values())

    @property
    def fill(self) -> float:
        """Share of the amount wanted that is met."""
        return (
            math.fsum(self.met(week) * amount for week, amount in self.wants.items()) / self.wanted
        )

    @property
    def weeks_met(self) -> float:
        """Share of wanted weeks met in full."""
        return fmean(self.is_met(week) for week in self.wants)

    @property
    def surplus(self) -> float:
        """Amount beyond what is wanted, as a share of what is wanted."""
        expected = self.supply.expected
        over = math.fsum(max(0.0, expected[week] - self.wants.get(week, 0.0)) for week in expected)
        return over / self.wanted


def outlooks_of(
    garden: Garden, sowings: tuple[Sowing, ...], unmet: tuple[Unmet, ...] = ()
) -> tuple[CropOutlook, ...]:
    """An outlook for each crop, over the season's weeks and any others that are wanted."""
    wish, wants = garden.wish, garden.wants()
    season = set(week_of(wish.first).until(week_of(wish.last)))
    return tuple(
        CropOutlook(
            crop,
            wants[name],
            supply_of((one for one in sowings if one.crop.name == name), wants[name]).within(
                season | set(wants[name])
            ),
            tuple(one for one in unmet if one.crop == name),
        )
        for name, crop in garden.crops.items()
    )
