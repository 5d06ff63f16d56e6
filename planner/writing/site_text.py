"""What the program knows of a site's year, in words: freezes and their odds, and temperatures."""

from collections.abc import Iterator

from planner.climate import (
    Climate,
    FreezeRecord,
    FreezeYearOdds,
    KnownTemperatures,
    NoSuchDay,
    NoUsableYear,
    freeze_record_of,
    numbered_day,
)
from planner.garden import DailyWeather, FreezesOnRecord, Garden
from planner.terms import day_words

# The thresholds of published freeze tables: 36, 32 and 28 degF.
_THRESHOLDS = ((2.2, "36 degF"), (0.0, "32 degF"), (-2.2, "28 degF"))
_HALF, _ONE_IN_TEN = 0.5, 0.1
_TOO_FEW = "too few years freeze for a date"


def site_text(garden: Garden) -> str:
    """The site's freezes, and how its crops' dates will be counted."""
    climate = Climate(garden.site)
    weather = garden.site.weather
    lines = [*_freeze_lines(climate, garden)]
    if isinstance(weather, DailyWeather):
        lines += _record_lines(weather, garden.site.latitude_deg)
    lines.append(_temperature_line(climate, garden))
    return "\n".join(lines)


def _freeze_lines(climate: Climate, garden: Garden) -> Iterator[str]:
    site, first = garden.site, garden.wish.first
    if climate.never_freezes:
        yield "It never freezes here."
    elif climate.freezes_all_year:
        yield "Any night of the year may freeze here."
    elif isinstance(site.freezes, FreezesOnRecord) and isinstance(site.weather, DailyWeather):
        yield from _odds_lines(*_recorded_days(freeze_record_of(site.weather, site.latitude_deg)))
    else:
        years = climate.freeze_years(first, first)
        year = min(years, key=lambda one: abs((one.spring_half - first).days))
        yield from _odds_lines(*_stated_days(year))


def _stated_days(year: FreezeYearOdds) -> Iterator[tuple[str, str]]:
    for risk in (_HALF, _ONE_IN_TEN):
        yield day_words(year.spring_at_risk(risk)), day_words(year.fall_at_risk(risk))


def _recorded_days(record: FreezeRecord) -> Iterator[tuple[str, str]]:
    """Spring's and fall's day at each risk; empty where too few years freeze for it."""
    for risk in (_HALF, _ONE_IN_TEN):
        days = (record.spring_day_at_risk(risk), record.fall_day_at_risk(risk))
        spring, fall = (
            day_words(numbered_day(day, 2023)) if isinstance(day, int | float) else ""
            for day in days
        )
        yield spring, fall


def _odds_lines(half: tuple[str, str], one_in_ten: tuple[str, str]) -> Iterator[str]:
    if all((*half, *one_in_ten)):
        yield f"Half of all years freeze after {half[0]} in spring and before {half[1]} in fall;"
        yield f"one in ten after {one_in_ten[0]} and before {one_in_ten[1]}."
        return
    for share, (spring, fall) in (("half of all years", half), ("one year in ten", one_in_ten)):
        yield f"In spring {share}: {f'freeze after {spring}' if spring else _TOO_FEW}."
        yield f"In fall {share}: {f'freeze before {fall}' if fall else _TOO_FEW}."


def _record_lines(weather: DailyWeather, latitude_deg: float) -> Iterator[str]:
    lacking = f"{weather.missing_days} days missing"
    yield f"{weather.source}: {weather.first} to {weather.last}, {lacking}."
    yield from weather.left_out
    yield "Of the years on record, the latest thirty at most, by the night's low:"
    yield f"{'':12}{'last of spring':^24}{'first of fall':^24}"
    yield f"{'':12}{'half':^12}{'1 in 10':^12}{'half':^12}{'1 in 10':^12}".rstrip()
    for degc, words in _THRESHOLDS:
        record = freeze_record_of(weather, latitude_deg, degc)
        sides = (record.spring_day_at_risk, record.fall_day_at_risk)
        cells = [_cell(day_at(risk)) for day_at in sides for risk in (_HALF, _ONE_IN_TEN)]
        yield f"{words:12}{''.join(f'{cell:^12}' for cell in cells)}".rstrip()


def _cell(number: float | NoSuchDay | NoUsableYear) -> str:
    if isinstance(number, NoUsableYear):
        return "no record"
    if isinstance(number, NoSuchDay):
        return "none"
    return f"{numbered_day(number, 2023):%m-%d}"


def _temperature_line(climate: Climate, garden: Garden) -> str:
    known = climate.season_temperatures(garden.wish.first, garden.wish.last)
    if isinstance(known, KnownTemperatures):
        return f"Growth is counted by heat, from {known.words}."
    return (
        "Growth is counted by the calendar, because the plan states no temperatures; no week is "
        "left out as too hot."
    )
