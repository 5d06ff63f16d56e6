"""Does a season hold in years it was not planned from? And what does asking cost?

By hand: python -m tests.benchmarks.outlook_load [--series clemson] [--garden 0.75] [--effort 1]

Gardens are set down at places with a daily record (`daily_records`). A season is planned from
every other year of it and tried, kept as planned, in the years between; the rule of thumb beside
it, on the same beds, once by the packet's days and once by a grower who knows the season's. Gardens
are the sample of fourteen beds, which wants what it wants whatever the climate, and made-up ones of
fourteen beds and fifteen crops that can be had at the place, at a load (0.4 is slack, 0.75 tight).
From left to right:

- in, out: years planned from, and others tried in.
- likely: fill by the likely dates alone. inside: the same in the years planned from, which is what
  a season tells to be counted on. outside: in the others; worst: in the worst of those.
- weeks: share of weeks met in full, nothing: weeks with nothing in a year, spread: of harvest
  intervals, days; all three in the other years.
- short: the season's shortfall outside over the rule's.
- mend: the same of what could be had at all, in each year by the sowing that fits it best; what no
  sowing on any day reaches is nobody's fault.

Then the whole command is run on the whole record, and its processor time taken.
"""

import argparse
import os
import resource
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from statistics import fmean

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Room, Sowing, Thumb, rule_of_thumb
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.scheduling.starts.years import in_years
from planner.season import make_season
from planner.trial import TooFewPicks, Trial, TriedYears, trial_of, tried_years
from tests.benchmarks.daily_records import SERIES, Series, place_of
from tests.benchmarks.synthetic_gardens import RecordedPlace, garden_of, synthetic_garden

_PLAN = Path(__file__).resolve().parents[2] / "sample_plans" / "ferry_street" / "garden.toml"
_PROGRAM = (sys.executable, "-c", "from planner.cli import run; run()")
_AS_OF = date(2027, 1, 15)
_HALVES = ("even", "odd")
_SAMPLE = "sample"
_RULES = {Thumb.FIXED_DAYS: "packet's days", Thumb.KNOWS_SEASON: "season's days"}


@dataclass(frozen=True, slots=True)
class Case:
    """A garden at a place, planned from the even years (0) or the odd ones (1).

    `garden`: the sample, or the load of a made-up one, which `seed` tells from others.
    """

    series: str
    garden: str
    seed: int
    half: int

    @property
    def name(self) -> str:
        """As it stands in the table."""
        made = self.garden if self.garden == _SAMPLE else f"{self.garden} seed {self.seed}"
        return f"{self.series} {_HALVES[self.half]} {made}"


def sample_text(series: Series) -> str:
    """The sample garden set down at a place."""
    head, rest = _PLAN.read_text(encoding="utf-8").split("[site]", 1)
    season = rest[rest.index("[season]") :]
    return f'{head}[site]\nlatitude = {series.latitude}\nweather = "weather.csv"\n\n{season}'


def _plan_text(case: Case, place: RecordedPlace, beds: int, crops: int) -> str:
    if case.garden == _SAMPLE:
        return sample_text(SERIES[case.series])
    return synthetic_garden(beds, crops, float(case.garden), case.seed, place)


@dataclass(frozen=True, slots=True)
class Judged:
    """A plan's fill by likely dates, and its trial in years it was planned from and in others."""

    who: str
    likely: float
    inside: Trial
    outside: Trial


@dataclass(frozen=True, slots=True)
class Judgement:
    """The season first, then the rules of thumb; `reach`: the share that could be had outside."""

    plans: tuple[Judged, ...]
    reach: float

    def short(self, rule: Judged) -> float:
        """The season's shortfall over a rule's, in years neither was planned from."""
        return (1 - self.plans[0].outside.fill) / (1 - rule.outside.fill)

    def mend(self, rule: Judged) -> float:
        """The same, of what could be had in those years by a sowing on some day."""
        return (self.reach - self.plans[0].outside.fill) / (self.reach - rule.outside.fill)


def judged(case: Case, effort: int, beds: int = 14, crops: int = 15) -> Judgement:
    """The season and the rules of thumb, planned from the years of one half."""
    series = SERIES[case.series]
    known, others = (
        place_of(series, lambda year, half=half: year % 2 == half)  # type: ignore[misc]
        for half in (case.half, 1 - case.half)
    )
    text = _plan_text(case, known, beds, crops)
    garden, judging = garden_of(text, known), garden_of(text, others)
    climate = Climate(garden.site)
    inside = tried_years(garden, climate)
    outside = _years_of(inside, tried_years(judging, Climate(judging.site)))
    plans = tuple(
        Judged(who, likely, *(trial_of(sowings, years, _AS_OF) for years in (inside, outside)))
        for who, likely, sowings in _plans(garden, climate, effort)
    )
    return Judgement(plans, reach_of(garden, climate, outside))


def _plans(
    garden: Garden, climate: Climate, effort: int
) -> Iterator[tuple[str, float, tuple[Sowing, ...]]]:
    season = make_season(garden, _AS_OF, None, effort)
    yield "season", season.measures.fill, season.sowings
    for thumb, who in _RULES.items():
        rule = rule_of_thumb(garden, climate, _AS_OF, thumb, Room.LIMITED)
        yield who, rule.fill, rule.grown


def _years_of(planned: TriedYears, judging: TriedYears) -> TriedYears:
    """The years of one record, with what was thought usual by another."""
    crops = {
        name: replace(one, years=judging.crops[name].years) for name, one in planned.crops.items()
    }
    return replace(judging, garden=planned.garden, crops=crops)


def reach_of(garden: Garden, climate: Climate, tried: TriedYears) -> float:
    """The share of all wants that a sowing on some day reaches in its year, ground no object."""
    weights = garden.weights()
    reached = 0.0
    for found in crop_candidates(garden, climate, _AS_OF):
        name = found.about.crop.name
        by_start = [in_years(one, tried.crops[name]) for one in found.candidates]
        for year in range(tried.count):
            weeks = {week for start in by_start for week in start[year].days}
            reached += sum(share for week, share in weights[name].items() if week in weeks)
    return reached / tried.count


def command_s(series: Series, effort: int) -> tuple[float, float]:
    """Processor seconds of planner schedule and planner outlook on the whole record."""
    with tempfile.TemporaryDirectory() as folder:
        plan = Path(folder)
        (plan / "garden.toml").write_text(sample_text(series), encoding="utf-8")
        (plan / "weather.csv").write_bytes(place_of(series, lambda _: True).weather.content)
        options = ("--as-of", str(_AS_OF), "--effort", str(effort))
        return _cpu_s("schedule", folder, *options), _cpu_s("outlook", folder)


def _cpu_s(*words: str) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    environment = {**os.environ, "PYTHONUTF8": "1"}
    subprocess.run([*_PROGRAM, *words], check=True, capture_output=True, env=environment)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def lines_of(name: str, judgement: Judgement) -> Iterator[str]:
    """The lines of the table of one case."""
    for number, one in enumerate(judgement.plans):
        out = one.outside
        spread = out.interval_spread_days
        days = "-" if isinstance(spread, TooFewPicks) else f"{spread:.1f}"
        ratios = (
            f"{judgement.short(one):>7.2f}{judgement.mend(one):>6.2f}" if number else f"{'':>13}"
        )
        yield (
            f"{name:<32}{one.who:<14}{one.inside.years:>3}{out.years:>4}{one.likely:>8.3f}"
            f"{one.inside.fill:>8.3f}{out.fill:>8.3f}{min(out.fills):>8.3f}{out.weeks_met:>7.3f}"
            f"{out.weeks_with_nothing:>9.1f}{days:>8}{ratios}"
        )


HEAD = (
    f"{'planned from':<32}{'who':<14}{'in':>3}{'out':>4}{'likely':>8}{'inside':>8}{'outside':>8}"
    f"{'worst':>8}{'weeks':>7}{'nothing':>9}{'spread':>8}{'short':>7}{'mend':>6}"
)


def means_of(garden: str, judgements: list[Judgement]) -> str:
    """What comes of all cases of a garden together."""
    plans = list(zip(*(one.plans for one in judgements), strict=True))
    inside, outside = (
        [fmean(getattr(one, which).fill for one in each) for each in plans]
        for which in ("inside", "outside")
    )
    reach = fmean(one.reach for one in judgements)
    text = f"{garden}, all: season {inside[0]:.3f} promised, {outside[0]:.3f} outside"
    for each, rule in zip(plans[1:], outside[1:], strict=True):
        text += (
            f"; {each[0].who} {rule:.3f}, short {(1 - outside[0]) / (1 - rule):.2f},"
            f" mend {(reach - outside[0]) / (reach - rule):.2f}"
        )
    return text


def main() -> None:
    """Judge every garden asked for at every place, then take the command's time."""
    parser = argparse.ArgumentParser(description="Seasons judged by years they do not know.")
    parser.add_argument("--series", action="append", choices=[*SERIES], help="all of them")
    parser.add_argument(
        "--garden", action="append", help="sample, or a load of made-up gardens (all, 0.4, 0.75)"
    )
    parser.add_argument("--seeds", type=int, default=2, help="made-up gardens at a load (2)")
    parser.add_argument("--effort", type=int, default=1, help="of the schedule (1)")
    parser.add_argument("--halves", type=int, default=1, choices=(1, 2), help="2 is both ways (1)")
    wanted = parser.parse_args()
    names = wanted.series or [*SERIES]
    print(HEAD)
    means = []
    for garden in wanted.garden or [_SAMPLE, "0.4", "0.75"]:
        judgements = []
        for name in names:
            for seed in range(1, 2 if garden == _SAMPLE else 1 + wanted.seeds):
                for half in range(wanted.halves):
                    case = Case(name, garden, seed, half)
                    judgements.append(judged(case, wanted.effort))
                    print(*lines_of(case.name, judgements[-1]), sep="\n", flush=True)
        means.append(means_of(garden, judgements))
    print(*means, sep="\n")
    for name in names:
        schedule, outlook = command_s(SERIES[name], wanted.effort)
        print(f"{name}: planner schedule {schedule:.2f} s, planner outlook {outlook:.2f} s")


if __name__ == "__main__":
    main()
