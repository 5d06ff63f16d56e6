"""What a revision changed, why, and what it brings or costs the weeks to come."""

import math
from collections import defaultdict
from collections.abc import Iterator

from planner.scheduling import Sowing
from planner.season import Changed, Season, WeekChange
from planner.terms import amount_words, count_words, day_words
from planner.writing.paragraph import paragraphs
from planner.writing.place_words import beds_words
from planner.writing.week_words import span_words

_MOST_NAMED = 8
_MOST_CROPS = 4


def changes_text(season: Season, width: int) -> str:
    """A line for every kind of change; empty for a first season."""
    changes = season.changes
    lines = [
        *(_begun(one) for one in changes.begun),
        *_named("Never begun, so let go", [one.id for one in changes.missed]),
        *_named("Lost; its ground is free", [one.id for one in changes.lost]),
        *_named("New", [_begins(one) for one in changes.added]),
        *(_moved(one) for one in changes.moved),
        *_named("Elsewhere, larger or smaller", [one.now.id for one in changes.resized]),
        *_named("Dropped, not yet begun", [one.id for one in changes.dropped]),
        *_weeks(season),
    ]
    if not lines and season.changes.compared:
        lines = ["Nothing; all goes on as it was planned."]
    return paragraphs(lines, width)


def _begun(one: Changed) -> str:
    was, now = one.was, one.now
    told = [f"ripe about {day_words(now.ripe.likely)}, not {day_words(was.ripe.likely)}"]
    if now.ripe.likely == was.ripe.likely:
        told = []
    if now.set_out_on != was.set_out_on and now.set_out_on and was.set_out_on:
        told.append(f"set out on {day_words(now.set_out_on)}, not {day_words(was.set_out_on)}")
    if now.sow_on != was.sow_on:
        told.append(f"sown on {day_words(now.sow_on)}, not {day_words(was.sow_on)}")
    if now.clear_on != was.clear_on:
        told.append(f"cleared on {day_words(now.clear_on)}, not {day_words(was.clear_on)}")
    return f"Stands: {now.id}, {', '.join(told)}."


def _moved(one: Changed) -> str:
    was, now = one.was, one.now
    told = []
    if now.sow_on != was.sow_on:
        told.append(f"begun on {day_words(now.sow_on)}, not {day_words(was.sow_on)}")
    elif now.set_out_on != was.set_out_on and now.set_out_on and was.set_out_on:
        told.append(f"set out on {day_words(now.set_out_on)}, not {day_words(was.set_out_on)}")
    if now.clear_on != was.clear_on:
        told.append(f"cleared on {day_words(now.clear_on)}, not {day_words(was.clear_on)}")
    return f"Moved: {now.id}, {', '.join(told)}."


def _begins(one: Sowing) -> str:
    beds = beds_words(one)
    where = f"indoors, then in {beds}" if one.set_out_on else f"in {beds}"
    return f"{one.id} on {day_words(one.sow_on)} {where}"


def _named(what: str, told: list[str]) -> Iterator[str]:
    if told:
        yield f"{what}: {_listed(told, _MOST_NAMED, 'more sowing')}."


def _listed(told: list[str], most: int, others: str) -> str:
    """The first of them, and how many more there are."""
    more = len(told) - most
    return ", ".join([*told[:most], *([f"and {count_words(more, others)}"] if more > 0 else [])])


def _weeks(season: Season) -> Iterator[str]:
    less = [one for one in season.changes.weeks if one.amount < 0]
    more = [one for one in season.changes.weeks if one.amount > 0]
    if less:
        yield f"The weeks to come have less: {_by_crop(season, less)}."
    if more:
        yield f"The weeks to come have more: {_by_crop(season, more)}."


def _by_crop(season: Season, weeks: list[WeekChange]) -> str:
    units = {one.crop.name: one.crop.unit for one in season.outlooks}
    by_crop: dict[str, list[WeekChange]] = defaultdict(list)
    for one in weeks:
        by_crop[one.crop].append(one)
    told = [
        f"{amount_words(math.fsum(abs(one.amount) for one in mine), units[crop])} of {crop} in "
        f"{_span(mine)}"
        for crop, mine in by_crop.items()
    ]
    return _listed(told, _MOST_CROPS, "more crop")


def _span(weeks: list[WeekChange]) -> str:
    return span_words(min(one.week for one in weeks), max(one.week for one in weeks))
