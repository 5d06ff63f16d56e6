"""What the program knows of a site's year, in words: freezes and their odds, and temperatures."""

from collections.abc import Iterator
from datetime import date

from planner.climate import (
    Climate,
    FreezeOdds,
    KnownTemperatures,
    NoSuchDay,
    NoUsableYear,
    first_freeze_odds,
    freeze_seasons,
    last_freeze_odds,
    numbered_day,
)
from planner.garden import DailyWeather, Garden

# The thresholds of published freeze tables: 36, 32 and 28 degF.
_THRESHOLDS = ((2.2, "36 degF"), (0.0, "32 degF"), (-2.2, "28 degF"))
_HALF, _ONE_IN_TEN = 0.5, 0.1


def site_text(garden: Garden) -> str:
    """The site's freezes, and how its crops' dates will be counted."""
    climate = Climate(garden.site)
    weather = garden.site.weather
    lines = [*_freeze_lines(climate, garden.wish.first)]
    if isinstance(weather, DailyWeather):
        lines += _record_lines(weather, garden.site.latitude_deg)
    lines.append(_temperature_line(climate, garden))
    return "\n".join(lines)


def _freeze_lines(climate: Climate, first: date) -> Iterator[str]:
    if climate.never_freezes:
        yield "It never freezes here."
    elif climate.freezes_all_year:
        yield "Any night of the year may freeze here."
    else:
        years = climate.freeze_years(first, first)
        year = min(years, key=lambda one: abs((one.spring_half - first).days))
        yield (
            f"Half of all years freeze after {_day(year.spring_half)} in spring and before "
            f"{_day(year.fall_half)} in fall;"
        )
        yield (
            f"one in ten after {_day(year.spring_at_risk(_ONE_IN_TEN))} and before "
            f"{_day(year.fall_at_risk(_ONE_IN_TEN))}."
        )


def _day(day: date) -> str:
    return f"{day.day} {day:%B}"


def _record_lines(weather: DailyWeather, latitude_deg: float) -> Iterator[str]:
    lacking = f"{weather.missing_days} days missing"
    yield f"{weather.source}: {weather.first} to {weather.last}, {lacking}."
    yield from weather.left_out
    yield "Of the years on record, by the night's low:"
    yield f"{'':12}{'last of spring':^24}{'first of fall':^24}"
    yield f"{'':12}{'half':^12}{'1 in 10':^12}{'half':^12}{'1 in 10':^12}".rstrip()
    for degc, words in _THRESHOLDS:
        seasons = freeze_seasons(weather, latitude_deg, degc)
        sides = (last_freeze_odds(seasons), first_freeze_odds(seasons))
        cells = [_cell(odds, risk) for odds in sides for risk in (_HALF, _ONE_IN_TEN)]
        yield f"{words:12}{''.join(f'{cell:^12}' for cell in cells)}".rstrip()


def _cell(odds: FreezeOdds | NoUsableYear, risk: float) -> str:
    if isinstance(odds, NoUsableYear):
        return "no record"
    number = odds.day_at_risk(risk)
    if isinstance(number, NoSuchDay):
        return "none"
    return f"{numbered_day(number, 2023):%m-%d}"


def _temperature_line(climate: Climate, garden: Garden) -> str:
    known = climate.temperatures((garden.wish.first, garden.wish.last))
    if isinstance(known, KnownTemperatures):
        return f"Growth is counted by heat, from {known.words}."
    return (
        "Growth is counted by the calendar, because no temperatures are stated; heat closes no "
        "part of the year."
    )
