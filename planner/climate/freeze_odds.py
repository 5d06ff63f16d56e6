"""Odds of a freeze, from the years of a record: counted, and by a law with freeze-free years.

In spring the risk of a day is the share of years whose last freeze comes later than it; in fall,
the share whose first freeze has come on or before it. Years without a freeze stay in the sample:
earlier than all others in spring, later than all others in fall.

Days are numbered on a calendar of 365 days, 29 February counting as 1 March, from 1 January of
the year a freeze year is named by; they go on past 365 where it crosses New Year.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from enum import Enum
from statistics import NormalDist, fmean, stdev

from planner.climate.freeze_record import Freeze, FreezeOn, FreezeSeason, RecordBroken

_COMMON_YEAR = 2023
_YEAR_DAYS = 365
_FEWEST_FREEZES = 2  # one date has no spread


class FreezeSide(Enum):
    """Which freeze is meant."""

    LAST_OF_SPRING = "last freeze of spring"
    FIRST_OF_FALL = "first freeze of fall"


@dataclass(frozen=True, slots=True)
class NoSuchDay:
    """No day has this risk: too few years freeze at all, only the share `freezing_share`."""

    freezing_share: float


@dataclass(frozen=True, slots=True)
class TooFewFreezes:
    """No law can be drawn through so few freezes."""

    freezes: int


@dataclass(frozen=True, slots=True)
class NoUsableYear:
    """Every year of the record is broken on this side."""


@dataclass(frozen=True, slots=True)
class FreezeLaw:
    """A share of years freezes, and their dates follow a normal law; both in one distribution.

    Source: H. C. S. Thom and R. H. Shaw, "Climatological analysis of freeze data for Iowa",
    Monthly Weather Review 86 (1958), from memory; US normals mix their freeze dates the same way.
    """

    side: FreezeSide
    freezing_share: float
    mean_day: float
    spread_days: float

    def risk_on(self, day_number: float) -> float:
        """Share of years that still freeze after the day (spring), or have frozen by it (fall)."""
        share_by = NormalDist(self.mean_day, self.spread_days or 1e-9).cdf(day_number)
        share = 1 - share_by if self.side is FreezeSide.LAST_OF_SPRING else share_by
        return self.freezing_share * share

    def day_at_risk(self, risk: float) -> float | NoSuchDay:
        """The day number at a risk above 0; there is none unless more years than that freeze."""
        if risk >= self.freezing_share:
            return NoSuchDay(self.freezing_share)
        among_freezing = risk / self.freezing_share
        share_by = 1 - among_freezing if self.side is FreezeSide.LAST_OF_SPRING else among_freezing
        return self.mean_day + self.spread_days * NormalDist().inv_cdf(share_by)


@dataclass(frozen=True, slots=True)
class FreezeOdds:
    """One side of every unbroken year: sorted day numbers of the freezes, and years without."""

    side: FreezeSide
    days: tuple[int, ...]
    years_without: int

    @property
    def years(self) -> int:
        """Years in the sample, those without a freeze among them."""
        return len(self.days) + self.years_without

    @property
    def freezing_share(self) -> float:
        """Share of years with a freeze on this side."""
        return len(self.days) / self.years

    def risk_on(self, day_number: float) -> float:
        """Share of years that still froze after the day (spring), or had frozen by it (fall)."""
        if self.side is FreezeSide.LAST_OF_SPRING:
            return sum(day > day_number for day in self.days) / self.years
        return sum(day <= day_number for day in self.days) / self.years

    def day_at_risk(self, risk: float) -> float | NoSuchDay:
        """The day number at a risk from 0 to 1, between two years' dates in proportion.

        Source: R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American
        Statistician 50 (1996), type 7.
        """
        if self.side is FreezeSide.LAST_OF_SPRING:
            sample = [*[-math.inf] * self.years_without, *self.days]
            return self._quantile(sample, 1 - risk)
        return self._quantile([*self.days, *[math.inf] * self.years_without], risk)

    def _quantile(self, sample: list[float], share: float) -> float | NoSuchDay:
        # Rounded, so that a rank meant to be whole does not reach for the next year's date.
        rank = round((len(sample) - 1) * share, 9)
        below, above = sample[math.floor(rank)], sample[math.ceil(rank)]
        if math.isinf(below) or math.isinf(above):
            return NoSuchDay(self.freezing_share)
        return below + (above - below) * (rank - math.floor(rank))

    @property
    def law(self) -> FreezeLaw | TooFewFreezes:
        """The law with the mean and the sample spread of the freezes."""
        if len(self.days) < _FEWEST_FREEZES:
            return TooFewFreezes(len(self.days))
        return FreezeLaw(self.side, self.freezing_share, fmean(self.days), stdev(self.days))


def last_freeze_odds(seasons: Iterable[FreezeSeason]) -> FreezeOdds | NoUsableYear:
    """Odds of the last freeze of spring; broken years are left out."""
    return _odds(FreezeSide.LAST_OF_SPRING, [(one.year, one.spring) for one in seasons])


def first_freeze_odds(seasons: Iterable[FreezeSeason]) -> FreezeOdds | NoUsableYear:
    """Odds of the first freeze of fall; broken years are left out."""
    return _odds(FreezeSide.FIRST_OF_FALL, [(one.year, one.fall) for one in seasons])


def _odds(side: FreezeSide, freezes: list[tuple[int, Freeze]]) -> FreezeOdds | NoUsableYear:
    usable = [(year, one) for year, one in freezes if not isinstance(one, RecordBroken)]
    if not usable:
        return NoUsableYear()
    days = sorted(day_number(one.day, year) for year, one in usable if isinstance(one, FreezeOn))
    return FreezeOdds(side, tuple(days), len(usable) - len(days))


def day_number(day: date, year: int) -> int:
    """The number of a day counted from 1 January of `year`, which is 1."""
    month, of_month = (3, 1) if (day.month, day.day) == (2, 29) else (day.month, day.day)
    in_year = (date(_COMMON_YEAR, month, of_month) - date(_COMMON_YEAR, 1, 1)).days + 1
    return in_year + _YEAR_DAYS * (day.year - year)


def numbered_day(number: float, year: int) -> date:
    """The day nearest to a number counted from 1 January of `year`; never a 29 February."""
    years, days = divmod(round(number) - 1, _YEAR_DAYS)
    like = date(_COMMON_YEAR, 1, 1) + timedelta(days=days)
    return like.replace(year=year + years)
