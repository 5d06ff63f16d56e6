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
from planner.garden import FreezeDates, FreezeDay, NeverFreezes
from planner.reading import nearest_word
from planner.terms import Place, Problem

_MOST = 20
_NEAREST = 5


def stations(
    where: Annotated[
        list[str], typer.Argument(help="Part of a name, or a latitude and a longitude.")
    ],
    json: JsonOption = False,
) -> None:
    """Find weather stations with freeze dates, by name or nearest to a place.

    South and west are negative; put -- before them.

    Example: planner stations clemson

    Example: planner stations -- 34.7 -82.8
    """
    place = _place(where)
    found: Sequence[Station | NearStation]
    found = nearest_stations(*place, _NEAREST) if place else _named(" ".join(where))
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


def _place(where: list[str]) -> tuple[float, float] | None:
    words = " ".join(where).replace(",", " ").split()
    try:
        numbers = [float(word) for word in words]
    except ValueError:
        return None
    if len(numbers) == 2 and abs(numbers[0]) <= 90 and abs(numbers[1]) <= 180:
        return numbers[0], numbers[1]
    refuse(
        Problem(
            "not-a-place",
            Place("stations"),
            f'"{" ".join(words)}" is not a latitude and a longitude.',
            "write two numbers, such as 34.7 -82.8 (latitude -90 to 90 comes first).",
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
    one = found.station if isinstance(found, NearStation) else found
    head = f"{one.id}  {one.name}, {one.state}"
    height = f"{one.elevation_m:.0f} m ({one.elevation_m / 0.3048:.0f} ft) high"
    return f"{head}\n    {_away(found)}{height}\n    {_freezes_text(one)}"


def _away(found: Station | NearStation) -> str:
    if isinstance(found, Station):
        return ""
    return f"{found.distance_km:.0f} km ({found.distance_km / 1.609344:.0f} mi) away, "


def _freezes_text(one: Station) -> str:
    freezes = one.freezes
    if not isinstance(freezes, FreezeDates):
        never = isinstance(freezes, NeverFreezes)
        return "it never freezes" if never else "any night of the year may freeze"
    spring, fall = freezes.last_spring, freezes.first_fall
    return (
        f"last freeze of spring: half of all years after {spring.half}, "
        f"spread {spring.spread_days:.0f} days\n    first freeze of fall: half of all years "
        f"before {fall.half}, spread {fall.spread_days:.0f} days"
    )


def _as_json(found: Station | NearStation) -> dict[str, object]:
    one = found.station if isinstance(found, NearStation) else found
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
