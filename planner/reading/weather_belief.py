"""Which days of a weather file can be believed, and whether they make a record.

A few impossible values are dropped and counted; many mean that the unit or the columns are not
what they were taken for, and nothing is used (§1).
"""

import math
from dataclasses import replace
from datetime import date

from planner.garden import DailyWeather
from planner.reading.rain_means import rain_by_month
from planner.reading.weather_days import WeatherDays
from planner.reading.weather_gap import CalendarGap, calendar_gap
from planner.terms import Place, Problem, Source, count_words

# No weather station has had more; few have had less, and no vegetables grow there (from memory).
_BEYOND_DEGC = 60.0
# Where vegetables grow, some day of the year is warmer (from memory). A table in degC read as
# degF has no day above about 7 degC, so this finds what the limits above cannot.
_WARMEST_AT_LEAST_DEGC = 10.0
_FEW_PERCENT = 1
_FULL_YEAR_DAYS = 365
_ROUNDING_DEGC = 1e-6


def believe(days: WeatherDays, place: Place) -> DailyWeather | Problem:
    """The record of a file's days, or what keeps it from being one. `place` is the whole file."""
    low, high = days.low.by_day_degc, days.high.by_day_degc
    stated = len(low.keys() | high.keys())
    if len(low.keys() & high.keys()) < _FULL_YEAR_DAYS:
        return _too_little(len(low.keys() & high.keys()), place)
    beyond = _take_out_beyond(low) + _take_out_beyond(high)
    crossed = _take_out_crossed(low, high)
    if len({*beyond, *crossed}) * 100 > stated * _FEW_PERCENT:
        return _impossible(len({*beyond, *crossed}), stated, place)
    if max(high.values()) < _WARMEST_AT_LEAST_DEGC:
        return _too_cold(max(high.values()), place)
    if len(low.keys() & high.keys()) < _FULL_YEAR_DAYS:
        return _too_little(len(low.keys() & high.keys()), place)
    for word, column in (("low", low), ("high", high)):
        gap = calendar_gap(column)
        if gap is not None:
            return _no_average(word, gap, place)
    left_out = (_flagged_words(days), _beyond_words(len(beyond)), _crossed_words(len(crossed)))
    record = _record(low, high, place, tuple(words for words in left_out if words))
    return replace(record, rain=rain_by_month(days.rain.by_day_mm, record.source))


def _take_out_beyond(values: dict[int, float]) -> list[int]:
    beyond = [day for day, value in values.items() if abs(value) > _BEYOND_DEGC]
    for day in beyond:
        del values[day]
    return beyond


def _take_out_crossed(low: dict[int, float], high: dict[int, float]) -> list[int]:
    """Both values of a day whose low lies above its high: nobody can tell which one is wrong."""
    both = low.keys() & high.keys()
    crossed = [day for day in both if low[day] > high[day] + _ROUNDING_DEGC]
    for day in crossed:
        del low[day], high[day]
    return crossed


def _record(
    low: dict[int, float], high: dict[int, float], place: Place, left_out: tuple[str, ...]
) -> DailyWeather:
    every_day = low.keys() | high.keys()
    span = range(min(every_day), max(every_day) + 1)
    return DailyWeather(
        date.fromordinal(span[0]),
        tuple(low.get(day, math.nan) for day in span),
        tuple(high.get(day, math.nan) for day in span),
        Source("plan", place),
        left_out,
    )


def _too_little(usable_days: int, place: Place) -> Problem:
    return Problem(
        "weather-too-little",
        place,
        f"It has {usable_days} days with both a low and a high; a full year has 365.",
        "get a longer record (thirty years tell the odds of a freeze well), or state "
        "last_spring_freeze and first_fall_freeze instead.",
    )


def _no_average(word: str, gap: CalendarGap, place: Place) -> Problem:
    return Problem(
        "weather-too-little",
        place,
        f"From {gap} no year has a {word}; an average year cannot be told from it.",
        "get a record without that gap, or take weather out and state last_spring_freeze and "
        "first_fall_freeze, and mean_high and mean_low if you have them.",
    )


def _impossible(impossible_days: int, days: int, place: Place) -> Problem:
    return Problem(
        "weather-unit",
        place,
        f"On {impossible_days} of {days} days the low lies above the high, or a temperature is "
        "beyond 60 degC of heat or cold.",
        "wrong unit or columns swapped? Check weather_unit and the names of the columns; a file "
        "that counts tenths of a degree has to be exported in whole degrees.",
    )


def _too_cold(warmest_degc: float, place: Place) -> Problem:
    return Problem(
        "weather-unit",
        place,
        f"Its warmest day has {warmest_degc:.1f} degC; no vegetable grows where that is so.",
        'wrong unit? Check weather_unit: a file in degrees C needs "degC".',
    )


def _flagged_words(days: WeatherDays) -> str:
    lows, highs = days.low.flagged, days.high.flagged
    told = [count_words(lows, "low")] * bool(lows) + [count_words(highs, "high")] * bool(highs)
    return f"{' and '.join(told)} failed a quality check of the weather service." if told else ""


def _beyond_words(values: int) -> str:
    if not values:
        return ""
    lie = "lies" if values == 1 else "lie"
    return f"{count_words(values, 'temperature')} {lie} beyond 60 degC of heat or cold."


def _crossed_words(days: int) -> str:
    if not days:
        return ""
    have, their = ("has", "its") if days == 1 else ("have", "their")
    return f"{count_words(days, 'day')} {have} a low above {their} high."
