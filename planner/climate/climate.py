"""Freeze dates at any risk, year by year.

Freeze dates follow a normal law around their half-of-years date (rules §6). Years are told
apart by spring: a freeze year begins with one spring's last freeze and ends with the first
freeze after it, which in the south falls in the next calendar year.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property
from statistics import NormalDist
from typing import Protocol

from planner.climate.day_length import day_length_h, longest_day
from planner.climate.recorded_freezes import FreezeRecord, RecordedFreezeYear, freeze_record_of
from planner.climate.temperatures import (
    BEYOND,
    LEAD,
    KnownTemperatures,
    UnknownTemperatures,
    temperatures_from_months,
    temperatures_from_weather,
)
from planner.garden import (
    DailyWeather,
    FreezeDates,
    FreezesAllYear,
    FreezesOnRecord,
    MonthlyTemperatures,
    NeverFreezes,
    Site,
)


@dataclass(frozen=True, slots=True)
class FreezeYear:
    """One spring's last freeze and the first freeze after it, each at half of all years."""

    spring_half: date
    fall_half: date
    spring_spread_days: float
    fall_spread_days: float

    def spring_at_risk(self, risk: float) -> date:
        """The day after which a share `risk` of years still freezes."""
        shift = NormalDist().inv_cdf(1 - risk) * self.spring_spread_days
        return self.spring_half + timedelta(days=round(shift))

    def fall_at_risk(self, risk: float) -> date:
        """The day before which a share `risk` of years has frozen already."""
        shift = NormalDist().inv_cdf(risk) * self.fall_spread_days
        return self.fall_half + timedelta(days=round(shift))

    def share_freezing_after(self, day: date) -> float:
        """The share of years that still freeze after `day` in spring."""
        return 1 - NormalDist(0, self.spring_spread_days or 1e-9).cdf((day - self.spring_half).days)

    def share_frozen_by(self, day: date) -> float:
        """The share of years that have frozen by `day` in fall."""
        return NormalDist(0, self.fall_spread_days or 1e-9).cdf((day - self.fall_half).days)

    @property
    def has_spring_half(self) -> bool:
        """Always: a stated date is the date of half of all years."""
        return True

    @property
    def frost_free_days(self) -> int:
        """Days strictly between the two half-of-years dates, as freeze tables count them."""
        return (self.fall_half - self.spring_half).days - 1


# Last freezes of spring come up to 31 July (31 January in the south), so many days after midsummer.
_LATEST_SPRING = timedelta(days=41)


class FreezeYearOdds(Protocol):
    """One freeze year and its odds, by a stated law or by a record."""

    @property
    def spring_half(self) -> date:
        """The day after which half of all years still freeze."""
        ...

    @property
    def has_spring_half(self) -> bool:
        """Whether half of all years freeze in spring; else an edge stands for `spring_half`."""
        ...

    @property
    def fall_half(self) -> date:
        """The day by which half of all years have frozen."""
        ...

    def spring_at_risk(self, risk: float) -> date:
        """The day after which a share `risk` of years still freezes."""
        ...

    def fall_at_risk(self, risk: float) -> date:
        """The day before which a share `risk` of years has frozen already."""
        ...


@dataclass(frozen=True)
class Climate:
    """The climate of a site."""

    site: Site

    @cached_property
    def _record(self) -> FreezeRecord | None:
        """The odds of the daily record, where freezes are to be read off it."""
        if not isinstance(self.site.freezes, FreezesOnRecord):
            return None
        weather = self.site.weather
        if not isinstance(weather, DailyWeather):
            return None
        return freeze_record_of(weather, self.site.latitude_deg)

    def day_length_h(self, day: date) -> float:
        """Hours of daylight."""
        return day_length_h(self.site.latitude_deg, day)

    def temperatures(self, days: tuple[date, date]) -> KnownTemperatures | UnknownTemperatures:
        """What is known of the temperatures of the days from first to last."""
        if isinstance(self.site.weather, DailyWeather):
            return temperatures_from_weather(self.site.weather, days)
        if isinstance(self.site.temperatures, MonthlyTemperatures):
            return temperatures_from_months(self.site.temperatures, days)
        return UnknownTemperatures()

    def season_temperatures(
        self, first: date, last: date
    ) -> KnownTemperatures | UnknownTemperatures:
        """The same for a season, with the days before and after it that growth asks for."""
        return self.temperatures((first - LEAD, last + BEYOND))

    @property
    def never_freezes(self) -> bool:
        """Whether frost sets no limits here."""
        record = self._record
        return isinstance(self.site.freezes, NeverFreezes) or bool(record and record.never)

    @property
    def freezes_all_year(self) -> bool:
        """Whether any night of the year may freeze."""
        record = self._record
        return isinstance(self.site.freezes, FreezesAllYear) or bool(record and record.all_year)

    def freeze_years(self, first: date, last: date) -> tuple[FreezeYearOdds, ...]:
        """Every freeze year that touches the days from `first` to `last`, in order.

        Empty where it never freezes or freezes all year: such a site has no freeze dates.
        """
        freezes = self.site.freezes
        years = range(first.year - 2, last.year + 2)
        if self.never_freezes or self.freezes_all_year:
            return ()
        if self._record is not None:
            return tuple(RecordedFreezeYear(self._record, year) for year in years)
        if not isinstance(freezes, FreezeDates):
            return ()
        return tuple(_freeze_year(freezes, y, self.site.latitude_deg) for y in years)


def _freeze_year(freezes: FreezeDates, year: int, latitude_deg: float) -> FreezeYear:
    """The freeze year whose last freeze of spring falls in the calendar year `year`."""
    spring, fall = freezes.last_spring, freezes.first_fall
    spring_half = spring.half.in_year(year)
    summer = max(spring_half, _midsummer_of_spring(spring_half, latitude_deg))
    falls = (fall.half.in_year(summer.year + later) for later in range(2))
    fall_half = next(day for day in falls if day > summer)
    return FreezeYear(spring_half, fall_half, spring.spread_days, fall.spread_days)


def _midsummer_of_spring(spring: date, latitude_deg: float) -> date:
    """The midsummer of the year a spring belongs to, which a late spring may overrun.

    Where it freezes about midwinter only, spring's last freeze may come before New Year (in the
    south before July), and still belongs to the spring that follows.
    """
    earliest = spring - _LATEST_SPRING
    midsummers = (longest_day(latitude_deg, earliest.year + later) for later in range(2))
    return next(day for day in midsummers if day >= earliest)
