"""The pace of each crop at a site: by heat where temperatures are known, else by the calendar."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cache, cached_property, partial
from itertools import pairwise
from typing import Protocol

from planner.climate import Climate, KnownTemperatures, SeasonTemperatures
from planner.garden import Crop, HeatNeeds
from planner.growth.heat_pace import Before, HeatPace, reference_heat, season_heat
from planner.growth.pace import SHORT_DAY_H, Pace
from planner.terms import days_between

# Counted by heat, a day shorter than ten hours counts half: the cold of winter, which makes up
# part of the slow-down by the calendar, is in the temperatures already. From memory.
SHORT_DAY_SHARE_OF_HEAT = 0.5
# What stands when a season begins was begun in the year before it.
_LOOKED_BACK = timedelta(days=366)


class CropPace(Protocol):
    """How fast a crop goes through its life at one site."""

    @property
    def words(self) -> str:
        """How its dates are counted, in words."""
        ...

    @property
    def past(self) -> "tuple[CropPace, ...]":
        """The pace in each past year on record; empty where there is no record."""
        ...

    def ripe_on(self, start: date, days: float) -> date:
        """The day a crop of `days` to maturity, counted from `start`, is ripe."""
        ...

    def day_after(self, start: date, growing_days: float) -> date:
        """The first day on which so many growing days have passed since `start`."""
        ...

    def fall_extra_days(self, day: date) -> float:
        """Extra days counted for a crop ripe on `day` because it is fall."""
        ...


@dataclass(frozen=True)
class Paces:
    """The paces of all crops over the days from `first` to `last`.

    What was begun before `first` is counted from its own start, by the average year.
    """

    climate: Climate
    first: date
    last: date

    @cached_property
    def temperatures(self) -> KnownTemperatures | None:
        """Temperatures of the season's days, where any are known."""
        return self._temperatures(self.first, self.last)

    def _temperatures(self, first: date, last: date) -> KnownTemperatures | None:
        known = self.climate.temperatures((first, last))
        return known if isinstance(known, KnownTemperatures) else None

    @cached_property
    def _before(self) -> KnownTemperatures | None:
        """Temperatures of the year before `first`."""
        return self._temperatures(self.first - _LOOKED_BACK, self.first - timedelta(days=1))

    @cached_property
    def past_soils(self) -> tuple[tuple[float, ...], ...]:
        """The soil of each past year on record, degrees C by day."""
        past = self.temperatures.past if self.temperatures is not None else ()
        return tuple(year.soil_degc() for year in past)

    @cached_property
    def calendar(self) -> Pace:
        """The pace by the calendar, the same for every crop."""
        return Pace(self.climate, self.first, self.last)

    @cached_property
    def _day_shares(self) -> list[float]:
        return self._shares(self.first, self.last)

    def _shares(self, first: date, last: date) -> list[float]:
        """How much of its heat each day counts."""
        return [
            1.0 if self.climate.day_length_h(day) >= SHORT_DAY_H else SHORT_DAY_SHARE_OF_HEAT
            for day in days_between(first, last)
        ]

    def of(self, crop: Crop) -> CropPace:
        """A crop's pace: by heat where its needs and the temperatures are known."""
        known, needs = self.temperatures, crop.heat
        if known is None or not isinstance(needs, HeatNeeds):
            return self.calendar
        words = f"by heat, from {known.words}"
        before = cache(partial(self._heat_before, needs))
        past = tuple(self._heat_pace(year, needs, words, before) for year in known.past)
        return replace(self._heat_pace(known.average, needs, words, before), past=past)

    def _heat_pace(
        self, year: SeasonTemperatures, needs: HeatNeeds, words: str, before: Before
    ) -> HeatPace:
        heat = season_heat(year, needs, self._day_shares)
        return HeatPace(year.first, heat, reference_heat(needs), words, before)

    def _heat_before(self, needs: HeatNeeds) -> list[float]:
        """The heat of each day of the year before `first`, the same whatever year follows."""
        known = self._before
        if known is None:
            return []
        shares = self._shares(self.first - _LOOKED_BACK, self.first - timedelta(days=1))
        sums = season_heat(known.average, needs, shares)
        return [after - gathered for gathered, after in pairwise(sums)]
