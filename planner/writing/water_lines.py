"""Watering for the week's sheet: a few short lines for each week."""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from planner.bedwork import BedWater, Runs, Water, WeekWater
from planner.garden import NoDrip
from planner.terms import Unit, Week
from planner.writing.water_words import run_words, water_words


def water_lines(water: Water) -> Mapping[Week, tuple[str, ...]]:
    """What to water in each week: minutes of each run, beds by hand, and seed not up yet."""
    unit = water.garden.unit
    lines = {one.week: tuple(_lines(one, unit)) for one in water.weeks}
    return {week: told for week, told in lines.items() if told}


def runs_in(week: WeekWater, one: BedWater) -> Runs | NoDrip:
    """A bed's runs in a week: those of its timer, where other beds hang on it too."""
    if isinstance(one.runs, NoDrip):
        return one.runs
    shared = {each.timer: each.runs for each in week.shared}
    return shared.get(one.bed.timer, one.runs)


def _lines(week: WeekWater, unit: Unit) -> Iterator[str]:
    runs: dict[int, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
    by_hand = []
    for one in week.beds:
        if one.volume_l <= 0:
            continue
        run = runs_in(week, one)
        if isinstance(run, Runs):
            runs[run.times][run_words(run.minutes, run.parts)].append(one.bed.name)
        else:
            by_hand.append(f"{one.bed.name} ({water_words(one.volume_l, unit)})")
    for times, beds in runs.items():
        told = "; ".join(f"{', '.join(named)} ({words})" for words, named in beds.items())
        yield f"Water {times_words(times)} this week, unless it rains: {told}."
    if by_hand:
        yield f"Water by hand over the week, less after rain: {', '.join(by_hand)}."
    if week.seedbeds:
        yield f"Keep moist until it is up: {', '.join(week.seedbeds)}."


def times_words(times: int) -> str:
    """So many times: "once", "twice", "3 times"."""
    return {1: "once", 2: "twice"}.get(times, f"{times} times")
