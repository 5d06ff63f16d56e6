"""Files as text, or a problem where they are not UTF-8; and a line as a message shows it."""

from codecs import BOM_UTF16_BE, BOM_UTF16_LE

from planner.reading.plan_files import PlanFile
from planner.terms import Place, Problem

_LONGEST_SHOWN = 300  # a whole line of a weather file; not more of a file without line ends


def text_of(file: PlanFile) -> str | Problem:
    """The text of a file, a mark of byte order at its start taken off."""
    try:
        return file.content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        return _not_utf_8(file, error.start)


def _not_utf_8(file: PlanFile, at: int) -> Problem:
    remedy = "save the file again with the encoding UTF-8."
    if file.content.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        return Problem("file-unreadable", Place(file.name), "It is UTF-16, not UTF-8.", remedy)
    number = file.content[:at].count(b"\n") + 1
    line = file.content.split(b"\n")[number - 1].decode("utf-8", errors="replace")
    wrong = "This line holds a byte that is not UTF-8 text."
    return Problem("file-unreadable", line_place(file.name, number, line), wrong, remedy)


def line_place(file: str, number: int, line: str) -> Place:
    """Where a line stands, with as much of it as a message can show."""
    text = line.strip()
    shown = text if len(text) <= _LONGEST_SHOWN else f"{text[:_LONGEST_SHOWN]}..."
    return Place(file, number, shown)
