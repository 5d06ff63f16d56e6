"""sowing-sheet.csv: every task, one row each, with room to tick it off."""

from collections.abc import Iterator
from datetime import date

from planner.season import Season
from planner.terms import week_of
from planner.writing.csv_text import csv_bytes

COLUMNS = (
    "date", "week", "task", "crop", "sowing", "bed", "place", "plants", "seeds", "depth",
    "spacing", "note", "done",
)  # fmt: skip


def write_sowing_sheet(season: Season) -> bytes:
    """The sheet in order of the day."""
    return csv_bytes(COLUMNS, task_rows(season))


def task_rows(season: Season) -> Iterator[tuple[date | str | int, ...]]:
    """A row for each task in order of the day."""
    for task in season.tasks:
        yield (
            task.on,
            str(week_of(task.on)),
            task.kind.value,
            task.crop,
            task.sowing,
            task.bed,
            task.place,
            task.plants if task.plants is not None else "",
            task.seeds if task.seeds is not None else "",
            task.depth,
            task.spacing,
            task.text,
            "",
        )
