"""The site in the text: place, and freeze dates by hand or from a station."""

from planner.almanac import station, station_names, stations_named
from planner.garden import (
    FreezeDates,
    FreezeDay,
    Freezes,
    FreezesOnRecord,
    MonthlyTemperatures,
    NeverFreezes,
    NoTemperatures,
    Paper,
    PaperByUnits,
    Site,
    spread_between,
)
from planner.reading.months import read_twelve
from planner.reading.near_miss import nearest_word
from planner.reading.plan_files import PlanFiles
from planner.reading.toml_table import TomlTable
from planner.reading.weather_part import read_weather_named
from planner.terms import Dimension, MonthDay, Problem, Source

_ZONE_KEYS = ("zone", "hardiness_zone", "usda_zone", "climate_zone")
_BY_HAND = ("last_spring_freeze", "first_fall_freeze")
_MEANS = ("mean_high", "mean_low")

# Median of the spreads of 5,398 stations, each from its half and nine-in-ten dates at 32 F;
# spring and fall agree. tests/almanac/test_stations.py works it out again.
USUAL_SPREAD_DAYS = 11.7
_USUAL = Source("NCEI-1981-2010")


def read_site(table: TomlTable, files: PlanFiles, problems: list[Problem]) -> Site | None:
    """The site, or None when something in it cannot stand."""
    name = table.text("name") if "name" in table else "My garden"
    latitude = None
    if table.need("latitude", "latitude = 47.6"):
        latitude = table.number("latitude", -66.0, 70.0)
    _refuse_zone(table)
    weather = read_weather_named(table, latitude, files, problems)
    freezes = _read_freezes(table, latitude)
    temperatures = _read_temperatures(table)
    paper = _read_paper(table)
    table.refuse_unknown()
    if name is None or latitude is None or freezes is None:
        return None
    return Site(name, latitude, freezes, temperatures, weather, paper)


def _read_paper(table: TomlTable) -> Paper | PaperByUnits:
    written = table.choice("paper", Paper) if "paper" in table else None
    return Paper(written) if written else PaperByUnits()


def _refuse_zone(table: TomlTable) -> None:
    for key in _ZONE_KEYS:
        if key in table:
            table.report(
                "zone-is-no-date",
                key,
                "A hardiness zone says how cold a winter gets, not when the last freeze comes.",
                "take this line out and state last_spring_freeze and first_fall_freeze, or a "
                "station (planner stations finds the nearest).",
            )


def _read_freezes(table: TomlTable, latitude: float | None) -> Freezes | None:
    by_hand = [key for key in _BY_HAND if key in table]
    if "station" in table:
        if by_hand:
            table.report(
                "freeze-dates-twice",
                by_hand[0],
                "Freeze dates are stated by hand and by a station.",
                "keep one of the two.",
            )
        return _from_station(table)
    if len(by_hand) == len(_BY_HAND):
        return _from_hand(table, latitude)
    if not by_hand and "weather" in table:
        return FreezesOnRecord(table.source("weather"))
    table.report(
        "freeze-dates-missing",
        by_hand[0] if by_hand else "",
        f"{' and '.join(key for key in _BY_HAND if key not in by_hand)} "
        f"{'is' if by_hand else 'are'} missing.",
        'add last_spring_freeze = "04-15" and first_fall_freeze = "10-20" (half of all years), '
        "or a station (planner stations finds the nearest).",
    )
    return None


def _from_station(table: TomlTable) -> Freezes | None:
    written = table.text("station")
    if written is None:
        return None
    found = station(written)
    if found is not None:
        return found.freezes
    named = stations_named(written)
    near = named[0].name if named else nearest_word(written, station_names())
    hint = f"perhaps {stations_named(near)[0].id} ({near})." if near else ""
    table.report(
        "unknown-station",
        "station",
        f'There is no station "{written}".',
        hint or "find one with: planner stations NAME, or planner stations LAT LON.",
    )
    return None


def _from_hand(table: TomlTable, latitude: float | None) -> Freezes | None:
    words = [table.text(key, '"03-28"') for key in _BY_HAND]
    if words == ["never", "never"]:
        return NeverFreezes(table.source(_BY_HAND[0]))
    days = [_freeze_day(table, key) for key in _BY_HAND]
    spring, fall = days
    if spring is None or fall is None:
        return None
    if latitude is not None and not _in_order(spring.half, fall.half, latitude):
        table.report(
            "date-order",
            _BY_HAND[0],
            f"The last freeze of spring ({spring.half}) does not come before the first of fall "
            f"({fall.half}) at latitude {latitude:g}.",
            "check the two dates, and that a southern latitude is negative.",
        )
        return None
    return FreezeDates(spring, fall)


def _freeze_day(table: TomlTable, key: str) -> FreezeDay | None:
    half = table.month_day(key)
    tails = {one: table.month_day(one) for one in _tail_keys(key) if one in table}
    if half is None or None in tails.values():
        return None
    source = table.source(key)
    for tail_key, tail in tails.items():
        if tail is not None and _side(key, tail_key) * half.days_until(tail) < 0:
            _report_side(table, tail_key, half)
            return None
    tail = next(iter(tails.values()), None)
    if tail is None:
        return FreezeDay(half, USUAL_SPREAD_DAYS, source, _USUAL)
    return FreezeDay(half, spread_between(half, tail), source, source)


def _tail_keys(key: str) -> tuple[str, str]:
    """The words for the early and the late one of a pair of rarer dates.

    In spring nine years in ten still freeze after the early date; in fall one year in ten has
    frozen by it.
    """
    early, late = f"{key}_nine_in_ten", f"{key}_one_in_ten"
    return (early, late) if key == _BY_HAND[0] else (late, early)


def _side(key: str, tail_key: str) -> int:
    """1 for the rarer date that comes after the half-of-years date, -1 for the one before."""
    return 1 if tail_key == _tail_keys(key)[1] else -1


def _report_side(table: TomlTable, key: str, half: MonthDay) -> None:
    spring = key.startswith(_BY_HAND[0])
    meaning = {
        (True, True): f"One year in ten still freezes after it, so it comes after {half}.",
        (True, False): f"Nine years in ten still freeze after it, so it comes before {half}.",
        (False, True): f"One year in ten has frozen by it, so it comes before {half}.",
        (False, False): f"Nine years in ten have frozen by it, so it comes after {half}.",
    }
    wrong = meaning[spring, key.endswith("_one_in_ten")]
    table.report("date-order", key, wrong, "correct this date, or the half-of-years date.")


def _in_order(spring: MonthDay, fall: MonthDay, latitude: float) -> bool:
    """Spring's last freeze lies in the half-year that ends at midsummer, fall's in the other.

    Source: the split of 31 July and 1 August (January and February in the south) used for
    freeze seasons, with a month's grace at midwinter for sites that hardly freeze.
    """
    spring_month, fall_month = spring.month, fall.month
    if latitude < 0:
        spring_month = (spring_month + 5) % 12 + 1
        fall_month = (fall_month + 5) % 12 + 1
    return spring_month in {12, 1, 2, 3, 4, 5, 6, 7} and fall_month in {8, 9, 10, 11, 12, 1}


def _read_temperatures(table: TomlTable) -> MonthlyTemperatures | NoTemperatures:
    stated = [key for key in _MEANS if key in table]
    high, low = (
        read_twelve(table, key, Dimension.TEMPERATURE, "temperatures", '"46 degF" or "8 degC"')
        for key in _MEANS
    )
    if len(stated) == 1 and (high or low):
        other = next(key for key in _MEANS if key not in stated)
        table.report(
            "missing-key",
            stated[0],
            f'"{stated[0]}" stands alone.',
            f'add "{other}" with twelve temperatures, or take this line out.',
        )
    if high is None or low is None:
        return NoTemperatures()
    for month, (warm, cold) in enumerate(zip(high, low, strict=True), 1):
        if cold > warm:
            table.report(
                "out-of-range",
                "mean_low",
                f"In month {month} the mean low is above the mean high.",
                "check the two lists.",
            )
    return MonthlyTemperatures(high, low, table.source("mean_high"))
