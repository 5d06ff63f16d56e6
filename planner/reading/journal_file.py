"""journal.csv becomes a Journal, or every problem in it; and a line is made to be added to it."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from planner.journal import Entry, Event, Journal
from planner.reading.journal_line import Fault, read_line, told
from planner.reading.journal_sense import what_makes_no_sense
from planner.reading.journal_shape import JournalRow, shape_of
from planner.reading.named_sowings import NamedSowings
from planner.reading.plan_files import PlanFile
from planner.terms import Place, Problem, guarded

_MEND_LINE = "keep each entry on one line of five cells, and a note with commas in double quotes."
NEW_ENTRY = Place("the new entry")


@dataclass(frozen=True, slots=True)
class NotedEntry:
    """An entry that can stand: what to write at the end of the file for it.

    `takes_back` is the entry that an undoing takes back. `damaged` are the problems the file has
    without the new entry.
    """

    entry: Entry
    takes_back: Entry | None
    appended: bytes
    damaged: tuple[Problem, ...]


def read_journal(file: PlanFile, known: NamedSowings) -> Journal | tuple[Problem, ...]:
    """What a journal tells of sowings that are known, or every problem in it, line by line."""
    shape = shape_of(file)
    if isinstance(shape, Problem):
        return (shape,)
    rows = tuple(shape.rows())
    if rows and not known.names_given:
        return (_no_names(file.name),)
    entries, problems = _read(rows, known)
    return problems or Journal(entries)


def read_sound_entries(file: PlanFile, known: NamedSowings) -> tuple[Journal, tuple[Problem, ...]]:
    """What a journal tells in those of its lines that can stand, and the problems of the others."""
    shape = shape_of(file)
    if isinstance(shape, Problem):
        return Journal(), (shape,)
    entries, problems = _read(shape.rows(), known)
    wrong = {one.place for one in problems}
    return Journal(tuple(one for one in entries if one.place not in wrong)), problems


def read_new_entry(
    file: PlanFile, cells: Sequence[str], known: NamedSowings
) -> NotedEntry | tuple[Problem, ...]:
    """One more entry, told in five cells, judged after all that stands in the journal before."""
    shape = shape_of(file)
    if isinstance(shape, Problem):
        return (shape,)
    day, event, sowing, amount, note = (" ".join(cell.split()) for cell in cells)
    # A journal is also opened in spreadsheet programs, and a note may be by another's hand.
    told_so = (day, event, guarded(sowing), amount, guarded(note))
    entries, problems = _read((*shape.rows(), JournalRow(NEW_ENTRY, told_so)), known)
    if against := tuple(one for one in problems if one.place == NEW_ENTRY):
        return against
    entry = entries[-1]
    written = (str(entry.day), str(entry.event), guarded(entry.sowing), *told_so[3:])
    before = Journal(entries[:-1]).last_written(entry.sowing)
    takes_back = before if entry.event is Event.UNDONE else None
    return NotedEntry(entry, takes_back, shape.appended(written), problems)


def _read(
    rows: Iterable[JournalRow], known: NamedSowings
) -> tuple[tuple[Entry, ...], tuple[Problem, ...]]:
    """The entries in the order they are written, and the problems in the order of lines."""
    entries: list[Entry] = []
    problems: list[Problem] = []
    doubtful: set[str] = set()
    for row in rows:
        read = _line(row, known)
        if isinstance(read, Entry):
            entries.append(read)
        else:
            problems.append(read)
            doubtful |= _meant(row, known)
    problems += what_makes_no_sense(entries, known, doubtful)
    return tuple(entries), tuple(sorted(problems, key=lambda one: one.order))


def _line(row: JournalRow, known: NamedSowings) -> Entry | Problem:
    if isinstance(row.cells, str):
        return told([Fault("journal-line", row.cells, _MEND_LINE)], row.place)
    return read_line(row.cells, row.place, known)


def _meant(row: JournalRow, known: NamedSowings) -> set[str]:
    """The sowings a line that cannot be read may have told of."""
    if isinstance(row.cells, str):
        return {name for name in known.planned if name in row.place.text.casefold()}
    name = known.named(row.cells[2]) or known.nearest(row.cells[2])
    return {name} if name else set()


def _no_names(file: str) -> Problem:
    return Problem(
        "season-gone",
        Place(file),
        "It tells of sowings, and there is no season/season.json that names them.",
        "put the folder season back; or move the journal away and begin anew.",
    )
