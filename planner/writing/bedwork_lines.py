"""Soil work for the week's sheet: a few short lines for each week."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from planner.bedwork import fillings_of, manure_checks, turnovers_of
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.terms import Week, volume_words, week_of
from planner.writing.place_words import day_words, stretch_words
from planner.writing.turnover_text import dressing_words

# A new bed is filled this long before anything enters it, so that it can settle a little.
_FILL_BEFORE = timedelta(days=7)


def bedwork_lines(garden: Garden, sowings: Sequence[Sowing]) -> Mapping[Week, tuple[str, ...]]:
    """What soil work falls into each week: filling, compost, and what must not be picked yet."""
    lines: dict[Week, list[str]] = defaultdict(list)
    for day, line in (
        *_fill(garden, sowings),
        *_dress(garden, sowings),
        *_wait(garden, sowings),
    ):
        lines[week_of(day)].append(line)
    return {week: tuple(lines[week]) for week in sorted(lines)}


def _fill(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    for one in fillings_of(garden, sowings):
        if one.first_in is not None:
            volume = volume_words(one.volume_l, one.bed.note.unit)
            yield (
                one.first_in - _FILL_BEFORE,
                f"Fill {one.bed.name} with {volume} by {day_words(one.first_in)}.",
            )


def _dress(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    for one in turnovers_of(garden, sowings):
        place = f"{one.bed.name}, {stretch_words(one.bed, one.from_um, one.to_um)}"
        if one.volume_l > 0:
            yield one.on, f"Top-dress {place}, after {one.sowing}: {dressing_words(one)}."
        elif one.held_back:
            yield (
                one.on,
                f"No compost on {place}, after {one.sowing}: it has its share of the year.",
            )


def _wait(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    for check in manure_checks(garden, sowings):
        for one in check.too_early:
            until = f"before {day_words(one.from_on)}: raw manure on {check.manure.bed}"
            yield one.on, f"Do not pick {one.sowing} {until}."
