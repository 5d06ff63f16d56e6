"""A week's tasks as the grower reads them in the morning."""

import textwrap
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from planner.tasks import TaskKind
from planner.terms import Week, date_words, day_words

# What is done elsewhere than at the bed.
_INDOORS = {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF}


@dataclass(frozen=True, slots=True)
class TaskLine:
    """A task as the season's record keeps it."""

    on: date
    kind: str
    sowing: str
    bed: str
    place: str
    text: str


def week_text(week: Week, tasks: Iterable[TaskLine], width: int) -> str:
    """The tasks of a week, by day, each with a box as on paper."""
    head = f"Week {week}, {day_words(week.monday)} to {date_words(week.sunday)}"
    days = groupby(tasks, key=lambda one: one.on)
    parts = [
        f"{day:%A} {day_words(day)}\n" + "\n".join(_line(line, width) for line in lines)
        for day, lines in days
    ]
    return "\n\n".join([head, *(parts or ["Nothing to do this week."])])


def _line(task: TaskLine, width: int) -> str:
    text = textwrap.fill(
        f"{task.sowing}: {task.text}",
        width,
        initial_indent="  [ ] ",
        subsequent_indent="      ",
    )
    where = "" if task.kind in _INDOORS else f"\n      {task.bed}, {task.place}"
    return f"{text}{where}"
