"""Temperatures over the days of a season: an average year, and each past year on record.

A season's days are laid over each past year in turn: the season's 1 May takes that year's
1 May. Days a year lacks are taken from the average year. Days are laid out from a little before
a season to some time after it; a year that lacks more than one in ten of them all, and of those up
to the season's end, is left out.
"""

import math
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import islice

from planner.climate.monthly_curve import daily_curve, day_of_curve
from planner.climate.soil import soil_degc_by_day
from planner.garden import DailyWeather, MonthlyTemperatures
from planner.terms import MonthDay, Source, count_words, days_between

# Temperatures are asked for from a little before the season, for the soil's warmth, to some time
# after it, for courses that end beyond.
LEAD = timedelta(days=14)
BEYOND = timedelta(days=150)
# A past year counts when it has this share of the days, or of those up to the season's end.
_ENOUGH_OF_A_YEAR = 0.9
# Climates drift: of a long record the latest thirty years count, as in published normals.
_MOST_YEARS = 30
# The average day is the mean over this many days on either side, over all years.
_SMOOTHING_DAYS = 7


@dataclass(frozen=True, slots=True)
class SeasonTemperatures:
    """Lows and highs, degrees C, of each day from `first` on, as one year has them."""

    first: date
    low_degc: tuple[float, ...]
    high_degc: tuple[float, ...]

    def mean_degc(self, day: date) -> float:
        """The mean of a day's low and high."""
        index = (day - self.first).days
        return (self.low_degc[index] + self.high_degc[index]) / 2

    def soil_degc(self) -> tuple[float, ...]:
        """Soil temperature at sowing depth on each day, estimated from the air.

        Bare soil in the sun, an inch down, is about as warm as the day's high: with that, beans
        come up in 13 days in late April and 8 in early July where an Oregon trial saw 12 to 17
        and 5 to 6 (OSU-BEAN69); the air's mean would make it 26 and 10.
        """
        return soil_degc_by_day(self.high_degc)


@dataclass(frozen=True, slots=True)
class KnownTemperatures:
    """What is known of a season's temperatures: the average year, and past years if any."""

    average: SeasonTemperatures
    past: tuple[SeasonTemperatures, ...]
    source: Source
    words: str


@dataclass(frozen=True, slots=True)
class UnknownTemperatures:
    """A site of which only freeze dates are known: its crops grow by the calendar."""


def temperatures_from_months(
    months: MonthlyTemperatures, days: tuple[date, date]
) -> KnownTemperatures:
    """An average year from twelve monthly means, which the daily curve keeps."""
    lows, highs = daily_curve(months.low_degc), daily_curve(months.high_degc)
    places = [day_of_curve(day) for day in days_between(*days)]
    average = SeasonTemperatures(
        days[0], tuple(lows[n] for n in places), tuple(highs[n] for n in places)
    )
    words = f"monthly means ({months.source})"
    return KnownTemperatures(average, (), months.source, words)


def temperatures_from_weather(weather: DailyWeather, days: tuple[date, date]) -> KnownTemperatures:
    """The average year of a daily record, and the latest thirty past years that cover a season.

    `days` end `BEYOND` after the season's end. Days of the season that the record holds already
    are what they were, in the average year and over every past one.
    """
    average = _as_it_was(weather, _average(weather, days))
    past = tuple(islice(_past_years(weather, average, days), _MOST_YEARS))[::-1]
    words = count_words(len(past), "past year") if past else "the average year of a record"
    words = f"{words} ({weather.source})"
    return KnownTemperatures(average, past, weather.source, words)


def _average(weather: DailyWeather, days: tuple[date, date]) -> SeasonTemperatures:
    lows = _mean_by_day(weather.first, weather.low_degc)
    highs = _mean_by_day(weather.first, weather.high_degc)
    keys = [_key(day) for day in days_between(*days)]
    return SeasonTemperatures(
        days[0], tuple(lows[key] for key in keys), tuple(highs[key] for key in keys)
    )


def _as_it_was(weather: DailyWeather, season: SeasonTemperatures) -> SeasonTemperatures:
    """The temperatures of a season, with those of its own days that are on record."""
    begins = max(0, (weather.first - season.first).days)
    ends = min(len(season.low_degc), (weather.last - season.first).days + 1)
    if begins >= ends:
        return season
    lows, highs = [*season.low_degc], [*season.high_degc]
    for place in range(begins, ends):
        day = season.first + timedelta(days=place)
        if not _lacks(weather, day):
            lows[place], highs[place] = weather.low(day), weather.high(day)
    return SeasonTemperatures(season.first, tuple(lows), tuple(highs))


def _key(day: date) -> MonthDay:
    """The day of the year; 29 February counts as 28 February."""
    return MonthDay(day.month, min(day.day, 28) if day.month == 2 else day.day)


def _mean_by_day(first: date, values: tuple[float, ...]) -> dict[MonthDay, float]:
    """The mean of each day of the year over all years, smoothed over neighbouring days."""
    sums: dict[MonthDay, list[float]] = defaultdict(lambda: [0.0, 0.0])
    for offset, value in enumerate(values):
        if not math.isnan(value):
            entry = sums[_key(first + timedelta(days=offset))]
            entry[0] += value
            entry[1] += 1
    keys = [_key(day) for day in days_between(date(2023, 1, 1), date(2023, 12, 31))]
    totals = [sums[key] for key in keys]
    smooth = {}
    for index, key in enumerate(keys):
        near = [
            totals[(index + shift) % len(keys)]
            for shift in range(-_SMOOTHING_DAYS, _SMOOTHING_DAYS + 1)
        ]
        count = math.fsum(entry[1] for entry in near)
        smooth[key] = math.fsum(entry[0] for entry in near) / count if count else math.nan
    return smooth


def _past_years(
    weather: DailyWeather, average: SeasonTemperatures, days: tuple[date, date]
) -> Iterator[SeasonTemperatures]:
    """Every past year that counts, the latest first.

    Days that begin late in a year run on into the next: the year before the record's first is
    looked at too.
    """
    all_days = list(days_between(*days))
    for year in reversed(range(weather.years[0] - 1, weather.years[-1] + 1)):
        then = _in_year(all_days, year)
        lacking = [_lacks(weather, day) for day in then]
        if _is_kept(lacking) or _is_kept(lacking[: -BEYOND.days]):
            yield _as_it_was(weather, _filled(weather, average, then, lacking))


def _in_year(days: list[date], year: int) -> list[date]:
    """The days moved by whole years, so that the first falls in `year`."""
    shift = year - days[0].year
    return [MonthDay(day.month, day.day).in_year(day.year + shift) for day in days]


def _is_kept(lacking: list[bool]) -> bool:
    """Whether enough of some days are there; of no days nothing is."""
    return bool(lacking) and sum(lacking) <= (1 - _ENOUGH_OF_A_YEAR) * len(lacking)


def _lacks(weather: DailyWeather, day: date) -> bool:
    return math.isnan(weather.low(day)) or math.isnan(weather.high(day))


def _filled(
    weather: DailyWeather, average: SeasonTemperatures, then: list[date], lacking: list[bool]
) -> SeasonTemperatures:
    """The lows and highs of the days `then`, those lacking taken from the average year."""
    lows = [
        average.low_degc[index] if lacking[index] else weather.low(day)
        for index, day in enumerate(then)
    ]
    highs = [
        average.high_degc[index] if lacking[index] else weather.high(day)
        for index, day in enumerate(then)
    ]
    return SeasonTemperatures(average.first, tuple(lows), tuple(highs))
