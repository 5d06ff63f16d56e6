"""The season and the journal of a plan folder, as the shared page shows them."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from planner.cli.folder import RECORD, journal_file_in, names_of, no_season, record_in
from planner.reading import NamedSowings, read_sound_entries
from planner.season import season_unreadable
from planner.tasks import TaskKind
from planner.terms import Problem

if TYPE_CHECKING:
    from planner.page import SharedWork


@dataclass(frozen=True, slots=True)
class SharedSeason:
    """Tasks and journal, the names a journal may speak of, and lines of it that cannot stand."""

    work: "SharedWork"
    names: NamedSowings
    damaged: tuple[Problem, ...]


def shared_season(folder: Path) -> SharedSeason | tuple[Problem, ...]:
    """What there is now, or why it cannot be read."""
    from planner.page import SharedTask, SharedWork  # noqa: PLC0415 - heavy, only for shared pages

    record = record_in(folder)
    if record is None:
        return (no_season(folder),)
    if isinstance(record, Problem):
        return (record,)
    names, file = names_of(record), journal_file_in(folder)
    if isinstance(names, Problem) or isinstance(file, Problem):
        return tuple(one for one in (names, file) if isinstance(one, Problem))
    try:
        tasks = [
            SharedTask(
                str(one["id"]), date.fromisoformat(one["on"]), TaskKind(one["kind"]), one["sowing"]
            )
            for one in record["tasks"]
        ]
    except (KeyError, TypeError, ValueError):
        return (season_unreadable(RECORD, "It is damaged: its tasks."),)
    journal, damaged = read_sound_entries(file, names)
    units = {name: planned.unit.name for name, planned in names.planned.items()}
    return SharedSeason(SharedWork({one.id: one for one in tasks}, journal, units), names, damaged)


def sentences(problems: Iterable[Problem]) -> list[str]:
    """Each problem in one line: where it is, what is wrong, what to do."""
    return [f"{one.place}: {one.wrong} What to do: {one.remedy}" for one in problems]
