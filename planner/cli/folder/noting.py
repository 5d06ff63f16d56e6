"""Noting an entry in journal.csv: judged by what stands there, and added whole or not at all."""

from pathlib import Path

from planner.cli.folder.journal_append import append_line
from planner.cli.folder.plan_folder import JOURNAL, journal_file_in
from planner.reading import NamedSowings, NotedEntry, read_new_entry
from planner.terms import Problem


def note_entry(
    folder: Path, cells: tuple[str, ...], names: NamedSowings
) -> NotedEntry | tuple[Problem, ...]:
    """Add an entry of five cells to the journal, or tell why it cannot stand.

    Who calls it holds the journal meanwhile.
    """
    file = journal_file_in(folder)
    if isinstance(file, Problem):
        return (file,)
    read = read_new_entry(file, tuple(_plain(cell) for cell in cells), names)
    if not isinstance(read, NotedEntry):
        return read
    problem = append_line(folder / JOURNAL, read.appended)
    return (problem,) if problem is not None else read


def _plain(cell: str) -> str:
    """Words for one line, without what no screen can show."""
    return "".join(one if one.isprintable() else " " for one in cell).strip()
