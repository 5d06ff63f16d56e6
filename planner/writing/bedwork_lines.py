"""Soil work for the week's sheet: a few short lines for each week."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from planner.bedwork import Turnover, fillings_of, manure_checks, turnovers_of
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.terms import Week, volume_words, week_of
from planner.writing.place_words import day_words, short_stretch_words, stretch_words
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
    """A line for each bed, week and depth; stretches that touch are told as one."""
    alike: dict[tuple[Week, str, float], list[Turnover]] = defaultdict(list)
    for one in turnovers_of(garden, sowings):
        if one.volume_l > 0 or one.held_back:
            alike[week_of(one.on), one.bed.name, one.depth_mm].append(one)
    for (week, _, depth_mm), found in alike.items():
        place = _place(found)
        if depth_mm > 0:
            yield week.monday, f"Top-dress {place}: {dressing_words(found)}."
        else:
            yield week.monday, f"No more compost this year on {place}."


def _place(found: Sequence[Turnover]) -> str:
    bed = found[0].bed
    joined: list[tuple[int, int]] = []
    for from_um, to_um in sorted((one.from_um, one.to_um) for one in found):
        if joined and from_um <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], to_um))
        else:
            joined.append((from_um, to_um))
    *others, last = joined
    words = [short_stretch_words(bed, *one) for one in others]
    return f"{bed.name}, {' and '.join([*words, stretch_words(bed, *last)])}"


def _wait(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    for check in manure_checks(garden, sowings):
        for one in check.too_early:
            until = f"before {day_words(one.from_on)}: raw manure on {check.manure.bed}"
            yield one.on, f"Do not pick {one.sowing} {until}."
