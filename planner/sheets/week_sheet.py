"""The week's sheet (§43): what is to do, day by day and bed by bed, with boxes to tick."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby

from planner.scheduling import Block, Sowing
from planner.sheets.bed_drawing import BedDrawing, bed_drawing, bed_words
from planner.sheets.day_words import begun_date, day_words, week_words
from planner.sheets.letters import shown
from planner.sheets.next_week import NextWeek, away_words, next_week
from planner.sheets.work import Work
from planner.tasks import Task
from planner.terms import Week, amount_words, week_of
from planner.writing import WeekBedwork, bed_by_bed

_LONGEST_NAME = 50
# What a sentence begins with, where that is more than one word.
_VERBS = ("Begin to harden off", "Set out", "Lift and cure", "Do not harvest")
# More beds than these are told in words alone.
_MOST_DRAWINGS = 6


@dataclass(frozen=True, slots=True)
class Step:
    """One task with its box to tick: what its sentence begins with, and the rest of it."""

    verb: str
    text: str


@dataclass(frozen=True, slots=True)
class Row:
    """What is to do for one sowing on one day; indoors without drawings and place.

    `beds` is empty where the row above is of the same beds.
    """

    beds: str
    drawings: tuple[BedDrawing, ...]
    sowing: str
    place: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Day:
    """A day's rows, indoors first, then along the beds."""

    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class WeekSheet:
    """A week on paper.

    `not_yet`: what must not be picked though it is ripe. `bedwork`: lines to tick off. `idle`: the
    weeks before in which nothing is to do. `begun_date` is what its days have in common, written
    the journal's way.
    """

    name: str
    title: str
    away: str
    picking: str
    not_yet: tuple[str, ...]
    days: tuple[Day, ...]
    bedwork: tuple[str, ...]
    next: NextWeek
    begun_date: str
    idle: tuple[str, ...]


def week_sheet(work: Work, week: Week, bedwork: WeekBedwork, idle: Iterable[Week]) -> WeekSheet:
    """The sheet of one week, told of the `idle` weeks before it."""
    tasks = work.weeks.get(week, ())
    return WeekSheet(
        name=week_name(week),
        title=week_words(week),
        away=away_words(work.garden.wish, week),
        picking=_picking(work, week),
        not_yet=tuple(shown(line) for line in bedwork.not_yet),
        days=tuple(
            Day(day_words(day), tuple(_rows(work, tuple(of_day))))
            for day, of_day in groupby(tasks, key=lambda one: one.on)
        ),
        bedwork=tuple(shown(line) for line in bedwork.work),
        next=next_week(work, week.after(1)),
        begun_date=begun_date(week),
        idle=tuple(f"{week_name(one)}, {week_words(one)}" for one in idle),
    )


def week_name(week: Week) -> str:
    """A week as it is spoken of: "Week 18"."""
    return f"Week {week.number}"


def _picking(work: Work, week: Week) -> str:
    """What the week brings of each crop and may be picked."""
    words = []
    for crop in work.garden.crops.values():
        amount = math.fsum(
            taken.amount
            for sowing in work.sowings
            if sowing.crop.name == crop.name
            for taken in sowing.harvest
            if week_of(taken.day) == week and (sowing.id, taken.day) not in work.too_early
        )
        if amount > 0:
            words.append(f"{shown(crop.name, _LONGEST_NAME)} {amount_words(amount, crop.unit)}")
    return ", ".join(words)


def _rows(work: Work, tasks: tuple[Task, ...]) -> Iterator[Row]:
    """The rows of one day: indoors; then bed by bed."""
    above = ""
    for (sowing, indoors), steps in groupby(
        bed_by_bed(work.garden, work.sowings, tasks),
        key=lambda one: (one.sowing, one.kind.is_indoors),
    ):
        make = _indoor_row if indoors else _bed_row
        row = make(work, work.named[sowing], tuple(map(_step, steps)))
        yield replace(row, beds="") if row.beds == above else row
        above = row.beds


def _indoor_row(_: Work, sowing: Sowing, steps: tuple[Step, ...]) -> Row:
    return Row("Indoors", (), shown(sowing.id, _LONGEST_NAME), "", steps)


def _bed_row(work: Work, sowing: Sowing, steps: tuple[Step, ...]) -> Row:
    drawn = sowing.blocks[:_MOST_DRAWINGS]
    return Row(
        beds=_beds(work, sowing),
        drawings=tuple(bed_drawing(work.beds[block.bed], block) for block in drawn),
        sowing=shown(sowing.id, _LONGEST_NAME),
        place=shown(_place(work, sowing.blocks)),
        steps=steps,
    )


def _place(work: Work, blocks: tuple[Block, ...]) -> str:
    """Stretches from the mark, such as "2 ft to 4 ft"; in several beds each with its bed."""
    several = len({block.bed for block in blocks}) > 1
    return "; ".join(
        f"{f'{one.bed}: ' if several else ''}"
        f"{work.beds[one.bed].stretch_words(one.from_um, one.to_um)}"
        f"{f', under {one.under}' if one.under else ''}"
        for one in blocks
    )


def _beds(work: Work, sowing: Sowing) -> str:
    """The beds of a sowing; one whose name cannot be shown has its number in the plan."""
    names = dict.fromkeys(block.bed for block in sowing.blocks)
    return " + ".join(bed_words(name, work.number_of(name), _LONGEST_NAME) for name in names)


def _step(task: Task) -> Step:
    text = shown(task.text)
    verb = next((one for one in _VERBS if text.startswith(one)), text.partition(" ")[0])
    return Step(verb, text.removeprefix(verb).lstrip())
