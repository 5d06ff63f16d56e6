"""Watering for the week's sheet: a few short lines for each week."""

from collections import defaultdict
from collections.abc import Iterator, Mapping

from planner.bedwork import Runs, Water, WeekWater
from planner.terms import Unit, Week
from planner.writing.water_words import run_words, water_words


def water_lines(water: Water) -> Mapping[Week, tuple[str, ...]]:
    """What to water in each week: minutes of each run, beds by hand, and seed not up yet."""
    unit = water.garden.beds[0].note.unit
    lines = {one.week: tuple(_lines(one, unit)) for one in water.weeks}
    return {week: told for week, told in lines.items() if told}


def _lines(week: WeekWater, unit: Unit) -> Iterator[str]:
    shared = {one.timer: one.runs for one in week.shared}
    runs: dict[int, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
    by_hand = []
    for one in week.beds:
        if one.volume_l <= 0:
            continue
        if isinstance(one.runs, Runs):
            run = shared.get(one.bed.timer, one.runs)
            runs[run.times][run_words(run.minutes, run.parts)].append(one.bed.name)
        else:
            by_hand.append(f"{one.bed.name} ({water_words(one.volume_l, unit)})")
    for times, beds in runs.items():
        told = "; ".join(f"{', '.join(named)} ({words})" for words, named in beds.items())
        yield f"Water {_times(times)} this week, unless it rains: {told}."
    if by_hand:
        yield f"Water by hand, over the week: {', '.join(by_hand)}."
    if week.seedbeds:
        yield f"Keep moist until it is up: {', '.join(week.seedbeds)}."


def _times(times: int) -> str:
    return {1: "once", 2: "twice"}.get(times, f"{times} times")
