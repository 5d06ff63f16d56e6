"""How much processor time a long weather record takes to read, in each of its four shapes.

By hand: python tests/benchmarks/weather_load.py [--years 90] [--repeat 3]

The record is made up: a wave of the year with a little disorder in it, the same on every run.
Files of GHCN-Daily carry five more elements, as those of real stations do.
"""

import argparse
import math
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby
from pathlib import Path
from statistics import median

from planner.garden import DailyWeather
from planner.reading import PlanFile, read_weather

_STATION = "USC00999999"
_LAST_YEAR = 2020
_OTHERS = ("PRCP", "SNOW", "SNWD", "TOBS", "WESD")


@dataclass(frozen=True, slots=True)
class MadeUpDay:
    """A day with its low and high in tenths of degrees C."""

    day: date
    low: int
    high: int


def made_up_days(years: int) -> list[MadeUpDay]:
    """Every day of the `years` that end with 2020."""
    first = date(_LAST_YEAR - years + 1, 1, 1)
    count = (date(_LAST_YEAR, 12, 31) - first).days + 1
    return [_made_up(first + timedelta(days=number), number) for number in range(count)]


def _made_up(day: date, number: int) -> MadeUpDay:
    middle = 120 - 130 * math.cos(math.tau * day.timetuple().tm_yday / 365.25)
    disorder = 45 * math.sin(number * 1.7) + 30 * math.sin(number * 0.37 + 1)
    return MadeUpDay(day, round(middle + disorder - 60), round(middle + disorder + 60))


def fixed_columns(days: list[MadeUpDay]) -> Iterator[str]:
    """GHCN-Daily in fixed columns."""
    for (year, month), some in groupby(days, key=lambda one: (one.day.year, one.day.month)):
        in_month = list(some)
        rest = "-9999   " * (31 - len(in_month))
        for element in ("TMAX", "TMIN", *_OTHERS):
            values = "".join(f"{_tenths(one, element):5d}  X" for one in in_month)
            yield f"{_STATION}{year:04d}{month:02d}{element}{values}{rest}"


def comma_file(days: list[MadeUpDay]) -> Iterator[str]:
    """GHCN-Daily as a comma file."""
    for one in days:
        for element in ("TMAX", "TMIN", *_OTHERS):
            yield f"{_STATION},{one.day:%Y%m%d},{element},{_tenths(one, element)},,,X,0700"


def _tenths(one: MadeUpDay, element: str) -> int:
    return {"TMAX": one.high, "TMIN": one.low}.get(element, 0)


def daily_summaries(days: list[MadeUpDay]) -> Iterator[str]:
    """The export of daily summaries, in whole degrees F, every cell in quotes."""
    yield '"STATION","NAME","DATE","PRCP","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"'
    for one in days:
        high, low = (round(tenths * 0.18 + 32) for tenths in (one.high, one.low))
        yield f'"{_STATION}","A TOWN, US","{one.day}","0.00","{high}",",,X","{low}",",,X,0700"'


def own_table(days: list[MadeUpDay]) -> Iterator[str]:
    """A grower's own table in degrees C."""
    yield "date,low,high"
    for one in days:
        yield f"{one.day},{one.low / 10},{one.high / 10}"


@dataclass(frozen=True, slots=True)
class Shape:
    """A shape of weather file: how it is written, and the unit its reader has to be told."""

    name: str
    write: Callable[[list[MadeUpDay]], Iterator[str]]
    unit: str | None


SHAPES = (
    Shape("GHCN-Daily, fixed columns", fixed_columns, None),
    Shape("GHCN-Daily, comma file", comma_file, None),
    Shape("export of daily summaries", daily_summaries, "degF"),
    Shape("date,low,high", own_table, "degC"),
)


@dataclass(frozen=True, slots=True)
class Load:
    """A shape's file, read: its size, the days found in it, and processor seconds."""

    name: str
    megabytes: float
    days: int
    cpu_s: float


def load(shape: Shape, years: int, folder: Path, repeat: int) -> Load:
    """Write a made-up record into `folder` and read it `repeat` times; the median counts."""
    path = folder / "weather.txt"
    path.write_text("\n".join(shape.write(made_up_days(years))) + "\n", encoding="utf-8")
    seconds, days = [], 0
    for _ in range(repeat):
        started = time.process_time()
        record = read_weather(PlanFile(path.name, path.read_bytes()), shape.unit)
        seconds.append(time.process_time() - started)
        if not isinstance(record, DailyWeather):
            raise RuntimeError("\n".join(map(str, record)))
        days = len(record.low_degc)
    return Load(shape.name, path.stat().st_size / 1e6, days, median(seconds))


def main() -> None:
    """Measure every shape and print the table."""
    parser = argparse.ArgumentParser(description="Processor time of reading weather files.")
    parser.add_argument("--years", type=int, default=90, help="years of the record (90)")
    parser.add_argument("--repeat", type=int, default=3, help="readings of each file (3)")
    wanted = parser.parse_args()
    print(f"{'shape':<26}  {'MB':>6}  {'days':>6}  {'CPU s':>6}")
    with tempfile.TemporaryDirectory() as folder:
        for shape in SHAPES:
            one = load(shape, wanted.years, Path(folder), wanted.repeat)
            print(f"{one.name:<26}  {one.megabytes:6.1f}  {one.days:6d}  {one.cpu_s:6.3f}")


if __name__ == "__main__":
    main()
