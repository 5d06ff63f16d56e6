"""Crop trials: what one crop would have given by week, year after year."""

import math
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from itertools import pairwise
from statistics import fmean, pstdev

from planner.garden import Crop
from planner.terms import Week

# A week holds when nine tenths of what is wanted are there.
HOLDS = 0.9
# It counts as met in full but for what rounding leaves.
_FULL = 1 - 1e-6
_NOTHING = 1e-9
_POOR, _USUAL, _GOOD = 0.1, 0.5, 0.9


@dataclass(frozen=True)
class CropTrial:
    """A crop's harvest by week in each year tried, in its unit, and its first picks.

    `first_picks` has for each year the first harvest day of every sowing that gave something, in
    order of time.
    """

    crop: Crop
    wants: dict[Week, float]
    years: tuple[dict[Week, float], ...]
    first_picks: tuple[tuple[date, ...], ...]

    @cached_property
    def weeks(self) -> tuple[Week, ...]:
        """Every week that is wanted or has something in any year."""
        return tuple(sorted({week for year in self.years for week in year} | set(self.wants)))

    @cached_property
    def poor(self) -> dict[Week, float]:
        """What one year in ten does not reach."""
        return self._at(_POOR)

    @cached_property
    def usual(self) -> dict[Week, float]:
        """The middle of all years."""
        return self._at(_USUAL)

    @cached_property
    def good(self) -> dict[Week, float]:
        """What nine years in ten do not pass."""
        return self._at(_GOOD)

    def _at(self, share: float) -> dict[Week, float]:
        place = round(share * (len(self.years) - 1))
        return {week: self._in_order(week)[place] for week in self.weeks}

    def _in_order(self, week: Week) -> list[float]:
        return sorted(year.get(week, 0.0) for year in self.years)

    def met(self, year: int, week: Week) -> float:
        """The share of a wanted week that is met in a year, 0 to 1."""
        return min(1.0, self.years[year].get(week, 0.0) / self.wants[week])

    def holds(self, year: int, week: Week) -> bool:
        """Whether a wanted week has nine tenths of what is wanted."""
        return self.met(year, week) >= HOLDS - 1e-9

    def share_holding(self, week: Week) -> float:
        """The share of years in which a wanted week holds."""
        return fmean(self.holds(year, week) for year in range(len(self.years)))

    @property
    def fill(self) -> float:
        """The share of the amount wanted that is met, mean over years."""
        return fmean(self.fill_in(year) for year in range(len(self.years)))

    def fill_in(self, year: int) -> float:
        """The share of the amount wanted that is met in a year."""
        met = math.fsum(self.met(year, week) * amount for week, amount in self.wants.items())
        return met / math.fsum(self.wants.values())

    @property
    def weeks_met(self) -> float:
        """The share of wanted weeks met in full, over all years."""
        return fmean(
            self.met(year, week) >= _FULL for year in range(len(self.years)) for week in self.wants
        )

    @property
    def weeks_with_nothing(self) -> float:
        """Wanted weeks that have nothing, in an average year."""
        return fmean(
            sum(year.get(week, 0.0) <= _NOTHING for week in self.wants) for year in self.years
        )

    @property
    def interval_spreads(self) -> list[float]:
        """The spread of harvest intervals, days, in each year that has two of them."""
        return [_spread(picks) for picks in self.first_picks if len(picks) > 2]


def _spread(picks: tuple[date, ...]) -> float:
    return pstdev((after - before).days for before, after in pairwise(picks))
