"""How evenly harvests follow each other in real years: a plan kept, and a plan revised.

By hand: python -m tests.benchmarks.harvest_intervals [--years 14]

Calabrese is wanted every week from late July to early October. For each year of a daily record
(Northumberland, in the package aquacrop) a season is planned from the other years only. Kept, its
sowings are made as planned; revised, the season is scheduled again every fortnight with that
year's weather so far. Then the year's own temperatures say when each sowing is really ready, and
the intervals between them are taken. Their spread is the standard deviation, in days.

Published beside it (Corvet calabrese, a weekly target, 14 years of weather, eastern Scotland):
2.5 days for fixed sowing dates, 1.8 for dates computed anew from the current year's weather.
Other place, other years, other variety: an anchor, not a like for like. Since sowings are weighed
in several years (rules §40) reserves stand between the weekly ones, and intervals are shorter and
less even than harvests are.
"""

import argparse
from collections.abc import Callable
from datetime import date, timedelta
from functools import partial
from importlib.metadata import distribution
from itertools import pairwise
from pathlib import Path
from statistics import fmean, pstdev

from planner.climate import Climate
from planner.garden import Garden
from planner.growth import begun_course
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.season import EarlierSeason, Season, make_season

_FORTNIGHT = timedelta(days=14)
_CROPS = b"""
[crop.calabrese]
like = "broccoli"
hold_days = "3 days"
"""
_GARDEN = """
plan = 1

[site]
latitude = 55.2
weather = "weather.csv"

[season]
from = {year}-02-15
to = {year}-10-31
garden_days = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]

[[bed]]
name = "Strip"
length = "40 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[target]]
crop = "calabrese"
each_week = "4 heads"
from = {year}-07-26
to = {year}-10-03
"""
_Day = tuple[date, str]


def days_on_record() -> list[_Day]:
    """Every day of Northumberland's record, with its line of a weather file."""
    path = distribution("aquacrop").locate_file("aquacrop/data/northumberland_climate.txt")
    rows = [line.split() for line in Path(str(path)).read_text(encoding="utf-8").splitlines()[1:]]
    return [
        (date(int(y), int(m), int(d)), f"{y}-{m:0>2}-{d:0>2},{low},{high}")
        for d, m, y, low, high, *_ in rows
    ]


def garden_of(days: list[_Day], year: int, known: Callable[[date], bool]) -> Garden:
    """The garden in a year, with those days of the record that are known."""
    lines = ["date,low_degc,high_degc", *(line for day, line in days if known(day))]
    weather = PlanFile("weather.csv", "\n".join(lines).encode())
    garden = read_garden(
        PlanFiles(
            PlanFile("garden.toml", _GARDEN.format(year=year).encode()),
            PlanFile("crops.toml", _CROPS),
            lambda _: weather,
        )
    )
    assert isinstance(garden, Garden), "\n".join(map(str, garden))
    return garden


def kept(days: list[_Day], year: int) -> Season:
    """The season planned from the other years."""
    garden = garden_of(days, year, lambda day: day.year != year)
    return make_season(garden, garden.wish.first, None)


def revised(days: list[_Day], year: int, season: Season) -> Season:
    """The season scheduled again each fortnight, by the weather so far."""
    day = season.as_of + _FORTNIGHT
    while day < season.garden.wish.last:
        garden = garden_of(days, year, partial(_is_known, year, day))
        earlier = EarlierSeason(season.plan_id, season.sowings, season.names_given, season.basis)
        season = make_season(garden, day, earlier)
        day += _FORTNIGHT
    return season


def _is_known(year: int, until: date, day: date) -> bool:
    return day.year != year or day < until


def intervals(season: Season, truth: Garden) -> list[int]:
    """Days from one sowing's being really ready to the next one's."""
    (found,) = crop_candidates(truth, Climate(truth.site), truth.wish.first)
    about = found.about
    (way,) = about.crop.ways
    ready = sorted(
        begun_course(about.crop, way, one.sow_on, one.set_out_on, about.conditions).ripe.likely
        for one in season.sowings
    )
    return [(after - before).days for before, after in pairwise(ready)]


def spreads(days: list[_Day], year: int) -> tuple[float, float]:
    """The spread of a year's intervals, its plan kept and revised."""
    truth = garden_of(days, year, lambda _: True)
    season = kept(days, year)
    as_planned = pstdev(intervals(season, truth))
    return as_planned, pstdev(intervals(revised(days, year, season), truth))


def main() -> None:
    """Try every year asked for, printing each as it is done, then the means."""
    parser = argparse.ArgumentParser(description="Spread of harvest intervals in real years.")
    parser.add_argument("--years", type=int, default=14, help="how many, the last on record")
    arguments = parser.parse_args()
    days = days_on_record()
    last = days[-1][0].year
    found = []
    print("year     kept  revised")
    for year in range(last - arguments.years + 1, last + 1):
        found.append(spreads(days, year))
        print(f"{year} {found[-1][0]:8.2f} {found[-1][1]:8.2f}", flush=True)
    print(f"mean {fmean(a for a, _ in found):8.2f} {fmean(b for _, b in found):8.2f}")
    print("published 2.5 and 1.8, eastern Scotland")


if __name__ == "__main__":
    main()
