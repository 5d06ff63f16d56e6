"""Weather stations and their published freeze dates.

Source: NCEI 1981-2010 agricultural normals at 32 F (US government data). The published
"90 %" date of spring is the early one: nine years in ten still freeze after it. The columns
of our table say so in words.
"""

import math
from dataclasses import dataclass
from functools import cache

from planner.almanac.table import table_rows
from planner.garden import (
    FreezeDates,
    FreezeDay,
    Freezes,
    FreezesAllYear,
    NeverFreezes,
    spread_between,
)
from planner.terms import MonthDay, Source, read_month_day

SOURCE = Source("NCEI-1981-2010")
_EARTH_RADIUS_KM = 6371.0088  # mean radius, IUGG


@dataclass(frozen=True, slots=True)
class Station:
    """A station, its place, and when it freezes."""

    id: str
    name: str
    state: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    freezes: Freezes


@dataclass(frozen=True, slots=True)
class NearStation:
    """A station and how far it lies from the place asked for."""

    station: Station
    distance_km: float


def _month_day(text: str) -> MonthDay:
    day = read_month_day(text)
    if day is None:
        message = f"the station table holds no such day: {text}"
        raise ValueError(message)
    return day


def _freezes(row: dict[str, str]) -> Freezes:
    if row["last_spring_half"] == "never":
        return NeverFreezes(SOURCE)
    if row["last_spring_half"] == "all year":
        return FreezesAllYear(SOURCE)
    spring, fall = _month_day(row["last_spring_half"]), _month_day(row["first_fall_half"])
    spring_tail = _month_day(row["last_spring_nine_in_ten_later"])
    fall_tail = _month_day(row["first_fall_nine_in_ten_earlier"])
    return FreezeDates(
        FreezeDay(spring, spread_between(spring, spring_tail), SOURCE, SOURCE),
        FreezeDay(fall, spread_between(fall, fall_tail), SOURCE, SOURCE),
    )


@cache
def _stations() -> dict[str, Station]:
    return {
        row["station"]: Station(
            row["station"],
            row["name"],
            row["state"],
            float(row["latitude_deg"]),
            float(row["longitude_deg"]),
            float(row["elevation_m"]),
            _freezes(row),
        )
        for row in table_rows("stations.csv")
    }


def station(station_id: str) -> Station | None:
    """The station with this id."""
    return _stations().get(station_id.strip().upper())


def stations_named(words: str) -> list[Station]:
    """Stations whose id, name or state holds every one of the words, by name."""
    wanted = words.upper().split()
    found = [
        one
        for one in _stations().values()
        if all(word in f"{one.id} {one.name} {one.state}" for word in wanted)
    ]
    return sorted(found, key=lambda one: (one.name, one.id))


def station_names() -> list[str]:
    """All station names, for suggesting one that was nearly written."""
    return sorted({one.name for one in _stations().values()})


def great_circle_km(first: tuple[float, float], second: tuple[float, float]) -> float:
    """Distance over the globe between two (latitude, longitude) pairs in degrees: haversine."""
    lat1, lon1, lat2, lon2 = map(math.radians, (*first, *second))
    half = (
        math.sin((lat2 - lat1) / 2) ** 2
        + math.cos(lat1) * math.cos(lat2) * math.sin((lon2 - lon1) / 2) ** 2
    )
    return 2 * _EARTH_RADIUS_KM * math.asin(math.sqrt(half))


def nearest_stations(latitude_deg: float, longitude_deg: float, count: int) -> list[NearStation]:
    """The `count` stations nearest to a place, nearest first."""
    here = (latitude_deg, longitude_deg)
    near = [
        NearStation(one, great_circle_km(here, (one.latitude_deg, one.longitude_deg)))
        for one in _stations().values()
    ]
    return sorted(near, key=lambda one: (one.distance_km, one.station.id))[:count]
