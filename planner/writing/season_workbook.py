"""season.xlsx: the sowing sheet and the harvest for spreadsheet programs (ISO/IEC 29500).

Dates are dates and numbers numbers, whatever language the program speaks; words are never
formulas. There is a column to tick off, and each sheet prints across one page.
"""

import textwrap
from collections.abc import Iterable, Sequence
from datetime import date, datetime, time
from io import BytesIO
from typing import TYPE_CHECKING
from zipfile import ZIP_STORED, ZipFile, ZipInfo

from planner.garden import Paper
from planner.season import Season
from planner.writing.harvest_sheet import COLUMNS as HARVEST_COLUMNS
from planner.writing.harvest_sheet import harvest_rows
from planner.writing.sowing_sheet import COLUMNS as TASK_COLUMNS
from planner.writing.sowing_sheet import task_rows

if TYPE_CHECKING:
    from xlsxwriter import Workbook
    from xlsxwriter.worksheet import Worksheet

_WIDEST = 42
_MARGIN_INCHES = 0.4
_LINE_POINTS = 15
_DONE = "x"
_PAPER_NUMBERS = {Paper.LETTER: 1, Paper.A4: 9}
# The first day a ZIP archive can tell: equal seasons give equal bytes.
_NO_DAY = (1980, 1, 1, 0, 0, 0)
Cell = date | str | float


def write_season_workbook(season: Season) -> bytes:
    """The workbook: a sheet of tasks and one of the harvest by week."""
    from xlsxwriter import Workbook  # noqa: PLC0415 - heavy, and only this file needs it

    file = BytesIO()
    with Workbook(file, {"in_memory": True}) as book:
        book.set_properties({"created": datetime.combine(season.as_of, time())})
        tasks = _sheet(book, season, "sowing sheet", TASK_COLUMNS, task_rows(season))
        _tick_column(tasks, TASK_COLUMNS.index("done"), len(season.tasks))
        _sheet(book, season, "harvest", HARVEST_COLUMNS, harvest_rows(season))
    return _stored(file)


def _sheet(
    book: "Workbook",
    season: Season,
    name: str,
    columns: Sequence[str],
    rows: Iterable[Sequence[Cell]],
) -> "Worksheet":
    """A sheet whose head stays in view and is printed on every page."""
    sheet = book.add_worksheet(name)
    head = book.add_format({"bold": True, "bottom": 1})
    day = book.add_format({"num_format": "yyyy-mm-dd", "align": "left", "valign": "top"})
    number = book.add_format({"align": "center", "valign": "top"})
    words = book.add_format({"text_wrap": True, "valign": "top"})
    table = list(rows)
    for column, title in enumerate(columns):
        sheet.write_string(0, column, title, head)
        cells = [row[column] for row in table]
        longest = max((len(str(cell)) for cell in cells), default=0)
        sheet.set_column(column, column, min(_WIDEST, max(len(title), longest) + 2))
        for place, cell in enumerate(cells, 1):
            if isinstance(cell, date):
                sheet.write_datetime(place, column, datetime.combine(cell, time()), day)
            elif not isinstance(cell, str):
                sheet.write_number(place, column, cell, number)
            elif cell:
                sheet.write_string(place, column, cell, words)
    for place, row in enumerate(table, 1):
        sheet.set_row(place, _LINE_POINTS * max(_lines(cell) for cell in row))
    sheet.freeze_panes(1, 0)
    sheet.autofilter(0, 0, len(table), len(columns) - 1)
    sheet.repeat_rows(0)
    sheet.set_landscape()
    sheet.set_paper(_PAPER_NUMBERS[season.garden.paper])
    sheet.set_margins(*[_MARGIN_INCHES] * 4)
    sheet.fit_to_pages(1, 0)
    sheet.hide_gridlines(0)
    return sheet


def _lines(cell: Cell) -> int:
    """How many lines a cell takes up in the widest column."""
    return max(1, len(textwrap.wrap(str(cell), _WIDEST)))


def _tick_column(sheet: "Worksheet", column: int, rows: int) -> None:
    """A column that takes a mark or nothing."""
    if rows:
        choice = {"validate": "list", "source": [_DONE]}
        sheet.data_validation(1, column, rows, column, choice)


def _stored(file: BytesIO) -> bytes:
    """The same archive without compression, which differs from one machine to another."""
    packed = BytesIO()
    with ZipFile(file) as made, ZipFile(packed, "w", ZIP_STORED) as kept:
        for one in made.infolist():
            kept.writestr(ZipInfo(one.filename, _NO_DAY), made.read(one))
    return packed.getvalue()
