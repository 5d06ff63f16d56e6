"""Whether a record tells a whole spring and a whole fall, as freeze odds need them.

A spring is looked at from 1 January to 31 July and a fall from 1 August to 31 December, in the
south from 1 July to 31 January and from 1 February to 30 June. Each may miss ten lows. A fall
without a freeze tells nothing before the record goes on to the first one, or through the
spring after it (§5).
"""

import math
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import DailyWeather
from planner.terms import day_words, days_between

_MOST_MISSING_DAYS = 10
_FREEZE_DEGC = 0.0


@dataclass(frozen=True, slots=True)
class _Windows:
    """The days of one spring, from `spring` up to `fall`, and of the fall up to `winter`."""

    spring: date
    fall: date
    winter: date
    summer: date


def sides_untold(weather: DailyWeather, latitude_deg: float) -> tuple[str, ...]:
    """The freezes no year of the record tells of, in words with their windows."""
    years = range(weather.years[0] - 1, weather.years[-1] + 1)
    windows = [_windows(year, latitude_deg) for year in years]
    words = []
    if not any(_is_kept(weather, one.spring, one.fall) for one in windows):
        words.append(f"the last freeze of spring ({_span(windows[0].spring, windows[0].fall)})")
    if not any(_tells_fall(weather, one) for one in windows):
        words.append(f"the first freeze of fall ({_span(windows[0].fall, windows[0].winter)})")
    return tuple(words)


def _windows(year: int, latitude_deg: float) -> _Windows:
    if latitude_deg >= 0:
        return _Windows(
            date(year, 1, 1), date(year, 8, 1), date(year + 1, 1, 1), date(year + 1, 8, 1)
        )
    return _Windows(
        date(year, 7, 1), date(year + 1, 2, 1), date(year + 1, 7, 1), date(year + 2, 2, 1)
    )


def _span(first: date, end: date) -> str:
    return f"{day_words(first)} to {day_words(end - timedelta(days=1))}"


def _tells_fall(weather: DailyWeather, windows: _Windows) -> bool:
    if not _is_kept(weather, windows.fall, windows.winter):
        return False
    days = days_between(windows.fall, windows.summer - timedelta(days=1))
    freeze = next((day for day in days if round(weather.low(day), 1) <= _FREEZE_DEGC), None)
    return _is_kept(weather, windows.fall, freeze or windows.summer)


def _is_kept(weather: DailyWeather, first: date, end: date) -> bool:
    """Whether hardly a low is missing from `first` up to the day before `end`."""
    days = days_between(first, end - timedelta(days=1))
    return sum(math.isnan(weather.low(day)) for day in days) <= _MOST_MISSING_DAYS
