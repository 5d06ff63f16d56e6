"""Freeze odds read off a site's own daily record.

With twenty years and more the odds are counted, years without a freeze kept in; with fewer they
follow the mixed normal law. Of a long record the latest thirty years that can be told count, in
spring and in fall each (rules §27).
"""

from dataclasses import dataclass
from datetime import date

from planner.climate.freeze_odds import (
    FreezeLaw,
    FreezeOdds,
    NoSuchDay,
    NoUsableYear,
    first_freeze_odds,
    last_freeze_odds,
    numbered_day,
)
from planner.climate.freeze_record import RecordBroken, freeze_seasons
from planner.garden import DailyWeather

FREEZE_DEGC = 0.0
_MOST_YEARS = 30
_ENOUGH_TO_COUNT = 20
_HALF = 0.5
_ALL_YEAR_DAYS = 14


@dataclass(frozen=True, slots=True)
class FreezeRecord:
    """Both sides of the freeze years on record, at one threshold."""

    spring: FreezeOdds | NoUsableYear
    fall: FreezeOdds | NoUsableYear
    south: bool

    @property
    def never(self) -> bool:
        """Whether both sides were kept, and no year froze on either."""
        sides = (self.spring, self.fall)
        return all(isinstance(side, FreezeOdds) and not side.days for side in sides)

    @property
    def all_year(self) -> bool:
        """Whether the last freeze of spring and the first of fall hardly leave days between."""
        if not isinstance(self.spring, FreezeOdds) or not isinstance(self.fall, FreezeOdds):
            return False
        last, first = (side.day_at_risk(_HALF) for side in (self.spring, self.fall))
        if isinstance(last, NoSuchDay) or isinstance(first, NoSuchDay):
            return False
        return first - last < _ALL_YEAR_DAYS

    def spring_day_at_risk(self, risk: float) -> float | NoSuchDay | NoUsableYear:
        """The number of the day after which a share `risk` of years still freezes."""
        return _day_at_risk(self.spring, risk)

    def fall_day_at_risk(self, risk: float) -> float | NoSuchDay | NoUsableYear:
        """The number of the day before which a share `risk` of years has frozen already."""
        return _day_at_risk(self.fall, risk)


def freeze_record_of(
    weather: DailyWeather, latitude_deg: float, threshold_degc: float = FREEZE_DEGC
) -> FreezeRecord:
    """The odds of the latest thirty springs and the latest thirty falls that can be told."""
    seasons = freeze_seasons(weather, latitude_deg, threshold_degc)
    springs = [one for one in seasons if not isinstance(one.spring, RecordBroken)]
    falls = [one for one in seasons if not isinstance(one.fall, RecordBroken)]
    return FreezeRecord(
        last_freeze_odds(springs[-_MOST_YEARS:]),
        first_freeze_odds(falls[-_MOST_YEARS:]),
        latitude_deg < 0,
    )


def _day_at_risk(odds: FreezeOdds | NoUsableYear, risk: float) -> float | NoSuchDay | NoUsableYear:
    """Counted where the years are many enough, by the law where they are not."""
    if isinstance(odds, NoUsableYear):
        return odds
    law = odds.law if odds.years < _ENOUGH_TO_COUNT else None
    return law.day_at_risk(risk) if isinstance(law, FreezeLaw) else odds.day_at_risk(risk)


@dataclass(frozen=True, slots=True)
class RecordedFreezeYear:
    """One freeze year with the odds of the record.

    Where too few years freeze for a date, midwinter stands for it: 1 January, 1 July in the
    south. The fall's is the next spring's, so that nothing lies between two freeze years.
    """

    record: FreezeRecord
    year: int

    @property
    def spring_half(self) -> date:
        """The day after which half of all years still freeze."""
        return self.spring_at_risk(_HALF)

    @property
    def has_spring_half(self) -> bool:
        """Whether half of all years freeze in spring."""
        return isinstance(self.record.spring_day_at_risk(_HALF), int | float)

    @property
    def fall_half(self) -> date:
        """The day by which half of all years have frozen."""
        return self.fall_at_risk(_HALF)

    def spring_at_risk(self, risk: float) -> date:
        """The day after which a share `risk` of years still freezes."""
        return self._day(self.record.spring_day_at_risk(risk), self.year)

    def fall_at_risk(self, risk: float) -> date:
        """The day before which a share `risk` of years has frozen already."""
        return self._day(self.record.fall_day_at_risk(risk), self.year + 1)

    def _day(self, number: float | NoSuchDay | NoUsableYear, edge_year: int) -> date:
        if isinstance(number, int | float):
            return numbered_day(number, self.year)
        return date(edge_year, 7, 1) if self.record.south else date(edge_year, 1, 1)
