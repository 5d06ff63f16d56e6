"""`planner stations`: find a weather station by name or near a place."""

from collections.abc import Sequence
from typing import Annotated

import typer

from planner.almanac import (
    NearStation,
    Station,
    nearest_stations,
    station_names,
    stations_named,
)
from planner.cli.shell import JsonOption, print_json, refuse
from planner.cli.station_words import (
    has_no_letter,
    no_dates_words,
    place_words,
    read_place,
    station_of,
)
from planner.garden import FreezeDates, FreezeDay, NeverFreezes
from planner.reading import nearest_word
from planner.terms import Place, Problem

_MOST = 20
_NEAREST = 5


def stations(
    where: Annotated[
        list[str],
        typer.Argument(help="Part of a name, or a latitude and a longitude."),
    ],
    json: JsonOption = False,
) -> None:
    """Find weather stations with freeze dates, by name or nearest to a place.

    South and west are negative. The stations are in the United States.

    Example: planner stations clemson

    Example: planner stations 34.7 -82.8
    """
    words = " ".join(where)
    found: Sequence[Station | NearStation]
    found = _near(words) if has_no_letter(words) else _named(words)
    if json:
        print_json([_as_json(one) for one in found])
        return
    for one in found[:_MOST]:
        print(_text(one))
    if len(found) > _MOST:
        print(f"... and {len(found) - _MOST} more; add a word of the name or the state.")
    print(
        '\nPut the id into garden.toml: station = "...". A garden higher up or in a hollow '
        "freezes later in spring than the station; dates are odds, not a forecast."
    )


def _near(words: str) -> Sequence[NearStation]:
    place = read_place(words)
    if place is not None:
        return nearest_stations(*place, _NEAREST)
    refuse(
        Problem(
            "not-a-place",
            Place("stations"),
            f'"{words}" is not a latitude and a longitude.',
            "write two numbers, such as 34.7 -82.8 (latitude -90 to 90 comes first), or a town; "
            "postcodes are not known.",
        )
    )


def _named(words: str) -> list[Station]:
    found = stations_named(words)
    if found:
        return found
    near = nearest_word(words, station_names())
    refuse(
        Problem(
            "nothing-found",
            Place("stations"),
            f'No station is named like "{words}".',
            f'try "{near}".' if near else "try a nearby town, or a place: LAT LON.",
        )
    )


def _text(found: Station | NearStation) -> str:
    one = station_of(found)
    return f"{one.id}  {one.name}, {one.state}\n    {place_words(found)}\n    {_freezes_text(one)}"


def _freezes_text(one: Station) -> str:
    freezes = one.freezes
    if not isinstance(freezes, FreezeDates):
        return no_dates_words(one)
    spring, fall = freezes.last_spring, freezes.first_fall
    return (
        f"last freeze of spring: half of all years after {spring.half}, "
        f"spread {spring.spread_days:.0f} days\n    first freeze of fall: half of all years "
        f"before {fall.half}, spread {fall.spread_days:.0f} days"
    )


def _as_json(found: Station | NearStation) -> dict[str, object]:
    one = station_of(found)
    record: dict[str, object] = {
        "station": one.id,
        "name": one.name,
        "state": one.state,
        "latitude_deg": one.latitude_deg,
        "longitude_deg": one.longitude_deg,
        "elevation_m": one.elevation_m,
    }
    if isinstance(found, NearStation):
        record["distance_km"] = round(found.distance_km, 1)
    freezes = one.freezes
    if isinstance(freezes, FreezeDates):
        record["last_spring_freeze"] = _freeze_json(freezes.last_spring)
        record["first_fall_freeze"] = _freeze_json(freezes.first_fall)
    else:
        record["freezes"] = "never" if isinstance(freezes, NeverFreezes) else "all year"
    return record


def _freeze_json(day: FreezeDay) -> dict[str, object]:
    return {"half_of_years": str(day.half), "spread_days": round(day.spread_days, 1)}
