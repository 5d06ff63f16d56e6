"""Freezes in a weather record: the last of each spring and the first of each fall.

A freeze year is named by the spring it begins with. In the north spring is looked for from
1 January to 31 July and fall from 1 August on; in the south from 1 July to 31 January, and from
1 February of the next calendar year on. A window with more than ten missing lows tells nothing.

A freeze is a low at or below the threshold, both rounded to 0.1 degC: records keep tenths, and
28 degF, which is -2.22 degC, stands in them as -2.2 (docs/rules.md §5).

Source: the windows, the ten days and the rounding are those under which the tables in
tests/published were worked out; an independent library gives the same dates.
"""

import math
from dataclasses import dataclass
from datetime import date
from enum import Enum

from planner.garden import DailyWeather
from planner.terms import days_between

MOST_MISSING_DAYS = 10


@dataclass(frozen=True, slots=True)
class FreezeOn:
    """The freeze that was looked for came on `day`."""

    day: date


@dataclass(frozen=True, slots=True)
class NoFreeze:
    """The record was kept, and nothing froze."""


@dataclass(frozen=True, slots=True)
class RecordBroken:
    """Too many lows are missing to say when it froze, or whether it did."""

    missing_days: int


Freeze = FreezeOn | NoFreeze | RecordBroken


class FallEnd(Enum):
    """Until when the first freeze of fall is looked for.

    MIDWINTER is 31 December (30 June in the south), as tables by calendar year have it.
    NEXT_SUMMER goes on where nothing froze by then, to the end of the next spring's window: a
    first freeze in January belongs to the fall before, though the same night may also be the
    last freeze of the spring that follows. Up to midwinter the two say the same.
    """

    MIDWINTER = "midwinter"
    NEXT_SUMMER = "next summer"


@dataclass(frozen=True, slots=True)
class FreezeSeason:
    """One freeze year: the last freeze of the spring of `year`, the first of the fall after."""

    year: int
    spring: Freeze
    fall: Freeze

    @property
    def frost_free_days(self) -> int | NoFreeze | RecordBroken:
        """Days strictly between the two freezes; without one of them, why there is no number."""
        match self.spring, self.fall:
            case FreezeOn(day=last), FreezeOn(day=first):
                return (first - last).days - 1
            case (RecordBroken() as broken, _) | (_, RecordBroken() as broken):
                return broken
            case _:
                return NoFreeze()


@dataclass(frozen=True, slots=True)
class _Window:
    """Days in which a freeze is looked for, both ends included."""

    first: date
    last: date


def freeze_seasons(
    weather: DailyWeather,
    latitude_deg: float,
    threshold_degc: float,
    fall_end: FallEnd = FallEnd.NEXT_SUMMER,
) -> tuple[FreezeSeason, ...]:
    """Every freeze year that the record touches, in order. `latitude_deg` is negative in the south.

    A year that the record only touches is there too, its windows broken.
    """
    midsummer_on = 1 if latitude_deg >= 0 else 7
    first, last = (day.year - (day.month < midsummer_on) for day in (weather.first, weather.last))
    record = _FreezeRecord(weather, round(threshold_degc, 1))
    windows = _northern_windows if latitude_deg >= 0 else _southern_windows
    return tuple(record.season(year, windows(year), fall_end) for year in range(first, last + 1))


def _northern_windows(year: int) -> tuple[_Window, _Window, _Window]:
    """Spring, fall up to midwinter, and the rest of the winter after it."""
    return (
        _Window(date(year, 1, 1), date(year, 7, 31)),
        _Window(date(year, 8, 1), date(year, 12, 31)),
        _Window(date(year + 1, 1, 1), date(year + 1, 7, 31)),
    )


def _southern_windows(year: int) -> tuple[_Window, _Window, _Window]:
    """The same half a year later."""
    return (
        _Window(date(year, 7, 1), date(year + 1, 1, 31)),
        _Window(date(year + 1, 2, 1), date(year + 1, 6, 30)),
        _Window(date(year + 1, 7, 1), date(year + 2, 1, 31)),
    )


@dataclass(frozen=True, slots=True)
class _FreezeRecord:
    """The record asked for freezes; the threshold is rounded to 0.1 degC already."""

    weather: DailyWeather
    threshold_degc: float

    def season(
        self, year: int, windows: tuple[_Window, _Window, _Window], fall_end: FallEnd
    ) -> FreezeSeason:
        spring, fall, winter = windows
        first = self._freeze(fall, 0)
        if isinstance(first, NoFreeze) and fall_end is FallEnd.NEXT_SUMMER:
            first = self._late_first_freeze(fall, winter)
        return FreezeSeason(year, self._freeze(spring, -1), first)

    def _freeze(self, window: _Window, which: int) -> Freeze:
        """The first (0) or last (-1) freeze of a window."""
        missing_days = self._missing_days(window)
        if missing_days > MOST_MISSING_DAYS:
            return RecordBroken(missing_days)
        freezes = self._freezes(window)
        return FreezeOn(freezes[which]) if freezes else NoFreeze()

    def _late_first_freeze(self, fall: _Window, winter: _Window) -> Freeze:
        """The first freeze after midwinter; days missing after it do not matter."""
        freezes = self._freezes(winter)
        looked_at = _Window(fall.first, freezes[0] if freezes else winter.last)
        missing_days = self._missing_days(looked_at)
        if missing_days > MOST_MISSING_DAYS:
            return RecordBroken(missing_days)
        return FreezeOn(freezes[0]) if freezes else NoFreeze()

    def _freezes(self, window: _Window) -> list[date]:
        days = days_between(window.first, window.last)
        return [day for day in days if round(self.weather.low(day), 1) <= self.threshold_degc]

    def _missing_days(self, window: _Window) -> int:
        days = days_between(window.first, window.last)
        return sum(math.isnan(self.weather.low(day)) for day in days)
