"""The shape of a journal file: its columns, what parts its cells, and how its lines end."""

import csv
from codecs import BOM_UTF8
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import StringIO

from planner.reading.plan_files import PlanFile
from planner.reading.text_file import line_place
from planner.terms import Place, Problem

COLUMNS = ("date", "event", "sowing", "amount", "note")
HEADER = ",".join(COLUMNS)
LARGEST_JOURNAL_BYTES = 5_000_000
_SEPARATORS = (",", ";")
# A new file begins so; a run that was killed may have left the beginning of it.
_WHOLE_HEADER = f"{HEADER}\n".encode()


@dataclass(frozen=True, slots=True)
class JournalRow:
    """A line of the journal below its first; `cells` are told, or why there are none."""

    place: Place
    cells: tuple[str, ...] | str


@dataclass(frozen=True, slots=True)
class JournalShape:
    """A journal whose first line is understood.

    `width`: how many columns it has; those beyond the fifth are the grower's own.
    """

    file: PlanFile
    separator: str = ","
    line_end: str = "\n"
    width: int = len(COLUMNS)

    def rows(self) -> Iterator[JournalRow]:
        """Every line below the first that is not blank, each read by itself.

        A cell does not go on over a line's end, so that a line cut short harms no other.
        """
        numbered = _numbered(self.file)
        next(numbered, None)
        for number, line in numbered:
            row = self._row(number, line)
            if isinstance(row.cells, str) or any(row.cells):
                yield row

    def _row(self, number: int, line: bytes) -> JournalRow:
        place = line_place(self.file.name, number, line.decode("utf-8", "replace"))
        return JournalRow(place, self._cells(line))

    def _cells(self, line: bytes) -> tuple[str, ...] | str:
        try:
            cells = _cells(line.decode("utf-8"), self.separator)
        except UnicodeDecodeError:
            return "It holds a byte that is not UTF-8 text."
        except csv.Error:
            return "Its double quotes do not come in pairs around a cell."
        if any(cells[self.width :]):
            return f"It has {len(cells)} cells, and the first line names {self.width} columns."
        return (*cells, *[""] * len(COLUMNS))[: len(COLUMNS)]

    def appended(self, cells: Sequence[str]) -> bytes:
        """What to write at the end of the file for one more line.

        A first line that is missing, and a line end that is missing, come before it.
        """
        text = StringIO()
        own_columns = [""] * (self.width - len(COLUMNS))
        write = csv.writer(text, delimiter=self.separator, lineterminator=self.line_end)
        write.writerow([*cells, *own_columns])
        return self._missing() + text.getvalue().encode()

    def _missing(self) -> bytes:
        content = self.file.content.removeprefix(BOM_UTF8)
        if _WHOLE_HEADER.startswith(content):
            return _WHOLE_HEADER[len(content) :]
        line_end = b"" if content.endswith((b"\n", b"\r")) else self.line_end.encode()
        return line_end if content.strip() else line_end + _WHOLE_HEADER


def shape_of(file: PlanFile) -> JournalShape | Problem:
    """The shape of a journal; an empty file, or the beginning of a first line, is a new one."""
    if len(file.content) > LARGEST_JOURNAL_BYTES:
        return Problem(
            "file-too-large",
            Place(file.name),
            f"It holds more than {LARGEST_JOURNAL_BYTES // 1_000_000} MB.",
            "see that it is your journal; lines of years past may be moved to another file.",
        )
    first = next(_numbered(file), None)
    if first is None or _WHOLE_HEADER.startswith(file.content.removeprefix(BOM_UTF8)):
        return JournalShape(file)
    number, line = first
    line_end = "\r\n" if b"\r\n" in file.content else "\n"
    text = line.decode("utf-8", "replace")
    for separator in _SEPARATORS:
        names = _names(text, separator)
        if names[: len(COLUMNS)] == COLUMNS:
            return JournalShape(file, separator, line_end, len(names))
    return _another_shape(line_place(file.name, number, text))


def _another_shape(place: Place) -> Problem:
    return Problem(
        "journal-shape",
        place,
        f"A journal begins with the line {HEADER}; columns of your own may follow those five.",
        "put that line first, and the columns in its order; or use the version of the program "
        "that wrote the file.",
    )


def _names(line: str, separator: str) -> tuple[str, ...]:
    try:
        names = tuple(name.casefold() for name in _cells(line, separator))
    except csv.Error:
        return ()
    while names and not names[-1]:
        names = names[:-1]
    return names


def _cells(line: str, separator: str) -> tuple[str, ...]:
    reader = csv.reader([line], delimiter=separator, strict=True, skipinitialspace=True)
    return tuple(cell.strip() for cell in next(reader, []))


def _numbered(file: PlanFile) -> Iterator[tuple[int, bytes]]:
    """Every line that is not blank, with its number counted from 1."""
    content = file.content.removeprefix(BOM_UTF8)
    lines = content.replace(b"\r\n", b"\n").replace(b"\r", b"\n").split(b"\n")
    for number, line in enumerate(lines, 1):
        if line.strip():
            yield number, line
