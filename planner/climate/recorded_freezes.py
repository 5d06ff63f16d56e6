"""Freeze odds read off a site's own daily record.

With twenty years and more the odds are counted, years without a freeze kept in; with fewer they
follow the mixed normal law. Of a long record the latest thirty years count (rules §27).
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
from planner.climate.freeze_record import freeze_seasons
from planner.garden import DailyWeather

FREEZE_DEGC = 0.0
_MOST_YEARS = 30
_ENOUGH_TO_COUNT = 20
_HALF = 0.5
_ALL_YEAR_DAYS = 14


@dataclass(frozen=True, slots=True)
class FreezeRecord:
    """Both sides of the freeze years on record, at 0 degrees C."""

    spring: FreezeOdds | NoUsableYear
    fall: FreezeOdds | NoUsableYear
    south: bool

    @property
    def never(self) -> bool:
        """Whether no year on record froze."""
        return all(not isinstance(side, FreezeOdds) or not side.days for side in self._sides)

    @property
    def all_year(self) -> bool:
        """Whether the last freeze of spring and the first of fall hardly leave days between."""
        if not isinstance(self.spring, FreezeOdds) or not isinstance(self.fall, FreezeOdds):
            return False
        last, first = (side.day_at_risk(_HALF) for side in (self.spring, self.fall))
        if isinstance(last, NoSuchDay) or isinstance(first, NoSuchDay):
            return False
        return first - last < _ALL_YEAR_DAYS

    @property
    def _sides(self) -> tuple[FreezeOdds | NoUsableYear, FreezeOdds | NoUsableYear]:
        return self.spring, self.fall


def freeze_record_of(weather: DailyWeather, latitude_deg: float) -> FreezeRecord:
    """The odds of a record's latest thirty freeze years."""
    seasons = freeze_seasons(weather, latitude_deg, FREEZE_DEGC)[-_MOST_YEARS:]
    return FreezeRecord(last_freeze_odds(seasons), first_freeze_odds(seasons), latitude_deg < 0)


@dataclass(frozen=True, slots=True)
class RecordedFreezeYear:
    """One freeze year with the odds of the record.

    Where too few years freeze for a date, the edge of the freeze year stands for it.
    """

    record: FreezeRecord
    year: int

    @property
    def spring_half(self) -> date:
        """The day after which half of all years still freeze."""
        return self.spring_at_risk(_HALF)

    @property
    def fall_half(self) -> date:
        """The day by which half of all years have frozen."""
        return self.fall_at_risk(_HALF)

    def spring_at_risk(self, risk: float) -> date:
        """The day after which a share `risk` of years still freezes."""
        edge = date(self.year, 7, 1) if self.record.south else date(self.year, 1, 1)
        return self._day(self.record.spring, risk, edge)

    def fall_at_risk(self, risk: float) -> date:
        """The day before which a share `risk` of years has frozen already."""
        edge = date(self.year + 1, 6, 30) if self.record.south else date(self.year, 12, 31)
        return self._day(self.record.fall, risk, edge)

    def _day(self, odds: FreezeOdds | NoUsableYear, risk: float, edge: date) -> date:
        if isinstance(odds, NoUsableYear):
            return edge
        law = odds.law
        source: FreezeOdds | FreezeLaw = odds
        if odds.years < _ENOUGH_TO_COUNT and isinstance(law, FreezeLaw):
            source = law
        day = source.day_at_risk(risk)
        return edge if isinstance(day, NoSuchDay) else numbered_day(day, self.year)
