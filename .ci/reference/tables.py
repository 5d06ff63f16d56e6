"""The CSV files: their columns, and the same as metadata of the W3C's vocabulary for tables.

Vocabulary: Metadata Vocabulary for Tabular Data, W3C Recommendation, 17 December 2015.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from planner.journal import Event
from planner.reading.journal_shape import COLUMNS as JOURNAL_COLUMNS
from planner.reading.weather_table import _UNIT_OF_HIGH, _UNIT_OF_LOW, _UNIT_OF_RAIN
from planner.tasks import TaskKind
from planner.writing.harvest_sheet import COLUMNS as HARVEST_COLUMNS
from planner.writing.sowing_sheet import COLUMNS as SHEET_COLUMNS
from reference.printed_schemas import HARVEST_UNITS
from reference.shapes import MADE

_WEEK = r"[0-9]{4}-W[0-9]{2}"


@dataclass(frozen=True, slots=True)
class Column:
    """A column: what it says, its type, and what holds where its cell is empty.

    `pattern` is what words in it look like; `unit` is that of its numbers. Without `empty` no
    cell of it is empty.
    """

    about: str
    form: str = "words"
    unit: str = ""
    pattern: str = ""
    empty: str = ""
    example: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """A CSV file: what it holds, and its columns in their order."""

    file: str
    about: str
    columns: dict[str, Column]


def _any_of(words: Sequence[str]) -> str:
    return "|".join(words)


_JOURNAL = Table(
    "journal.csv",
    "What has really happened, a line for each event; lines are only added. It is written by "
    "planner log, by the shared page, by hand or with a spreadsheet. Cells may be parted by "
    "semicolons, and columns of your own may follow these.",
    {
        "date": Column("The day it happened.", "day", example="2027-06-09"),
        "event": Column("What happened.", pattern=_any_of(list(Event)), example="picked"),
        "sowing": Column("The name of the sowing.", example="radish 3"),
        "amount": Column(
            "How much was picked; how many plants were lost; how late it is.",
            "quantity",
            "in the cell, such as 25 roots, 6 plants, 10 days",
            empty="other events have none; lost without one is all of it",
            example="25 roots",
        ),
        "note": Column("Anything, up to 2,000 letters.", empty="nothing is noted", example="slugs"),
    },
)

_SHEET = Table(
    "sowing-sheet.csv",
    "Every task, a line each, in order of the day.",
    {
        "date": Column("The day to do it.", "day", example="2027-05-05"),
        "week": Column("The week of that day, as ISO 8601 counts.", pattern=_WEEK,
                       example="2027-W18"),
        "task": Column("What is done.", pattern=_any_of(list(TaskKind)), example="sow"),
        "crop": Column("The crop.", example="radish"),
        "sowing": Column("The name of the sowing.", example="radish 3"),
        "bed": Column("The bed, or beds with + between them.", example="North 1"),
        "place": Column(
            "Where in the bed, in the bed's unit of length.",
            example="2 ft to 3 ft from the marked end",
        ),
        "plants": Column("How many plants of it stand.", "whole number", "plants",
                         example="25"),
        "seeds": Column("How many are sown.", "whole number", "seeds, sets, cloves, tubers, slips",
                        empty="nothing is sown", example="28"),
        "depth": Column("How deep.", "length in words", "the first bed's",
                        empty="nothing is sown", example="1/2 in"),
        "spacing": Column("From plant to plant.", "length in words", "the first bed's",
                          empty="it does not matter for the task", example="3 in"),
        "note": Column("The task as a sentence.", example="Sow 28 seeds of radish, ..."),
        "done": Column("For you to tick.", empty="always, as it is written"),
    },
)  # fmt: skip

_HARVEST = Table(
    "harvest.csv",
    "A line for each week and crop of which something is wanted or expected.",
    {
        "week": Column("The week, as ISO 8601 counts.", pattern=_WEEK, example="2027-W23"),
        "crop": Column("The crop.", example="radish"),
        "wanted": Column("What the target wants.", "number", "as in `unit`", example="25"),
        "expected": Column("What comes by the likely dates.", "number", "as in `unit`",
                           example="26"),
        "low": Column("What nine years in ten give at least. Without past years: the least of "
                      "early, likely and late dates.", "number", "as in `unit`", example="18.5"),
        "high": Column("What one year in ten passes. Without past years: the most of early, "
                       "likely and late dates.", "number", "as in `unit`", example="30"),
        "unit": Column("The unit of these amounts.", pattern=_any_of(HARVEST_UNITS),
                       example="roots"),
        "unmet_reason": Column("Why less is expected than wanted.", empty="nothing is lacking",
                               example="no ground free: ..."),
    },
)  # fmt: skip

_WEATHER = Table(
    "weather.csv",
    "Daily temperatures of your own, in any order of days and columns; `weather` in `[site]` "
    "names the file. Published records are read too, see weather.md.",
    {
        "date": Column("The day.", "day", example="2024-01-31"),
        "low": Column("The lowest temperature of the day.", "number",
                      "`weather_unit`, or as in the column's name", empty="not measured",
                      example="28"),
        "high": Column("The highest temperature of the day.", "number",
                       "`weather_unit`, or as in the column's name", empty="not measured",
                       example="41"),
        "rain": Column("Rain of the day; the column may be left out.", "number",
                       "inches beside degF, mm beside degC, or as in the column's name",
                       empty="not measured", example="0.12"),
    },
)  # fmt: skip

_NAMES_OF_WEATHER = {"low": _UNIT_OF_LOW, "high": _UNIT_OF_HIGH, "rain": _UNIT_OF_RAIN}
_COLUMNS = {
    "journal.csv": JOURNAL_COLUMNS,
    "sowing-sheet.csv": SHEET_COLUMNS,
    "harvest.csv": HARVEST_COLUMNS,
    "weather.csv": ("date", *_NAMES_OF_WEATHER),
}


def tables() -> dict[str, Table]:
    """Every CSV file; columns that are not explained here, or not in the program, are told."""
    made = {one.file: one for one in (_JOURNAL, _SHEET, _HARVEST, _WEATHER)}
    for file, table in made.items():
        if tuple(table.columns) != _COLUMNS[file]:
            message = f"{file} has the columns {_COLUMNS[file]}, and {tuple(table.columns)} here"
            raise LookupError(message)
    return made


def other_names(file: str, column: str) -> list[str]:
    """The other names a column may have."""
    names = _NAMES_OF_WEATHER.get(column, ()) if file == "weather.csv" else ()
    return [name for name in names if name != column]


def table_metadata() -> dict[str, dict[str, Any]]:
    """Each table as metadata, by file; weather files have no one form and none."""
    return {name: _metadata(one) for name, one in tables().items() if name != "weather.csv"}


def _metadata(table: Table) -> dict[str, Any]:
    return {
        "@context": ["http://www.w3.org/ns/csvw", {"@language": "en"}],
        "rdfs:comment": MADE,
        "url": table.file,
        "dc:description": table.about,
        "dialect": {"encoding": "utf-8", "delimiter": ",", "header": True},
        "tableSchema": {"columns": [_column(*one) for one in table.columns.items()]},
    }


_BASES = {"day": "date", "number": "number", "whole number": "integer"}


def _column(name: str, column: Column) -> dict[str, Any]:
    base = _BASES.get(column.form, "string")
    datatype: dict[str, str] = {"base": base}
    if base == "date":
        datatype["format"] = "yyyy-MM-dd"
    if column.pattern:
        datatype["format"] = column.pattern
    told: dict[str, Any] = {"name": name, "titles": name, "datatype": datatype}
    told["required"] = not column.empty
    told["dc:description"] = column.about
    if column.unit and base != "string":
        told["schema:unitText"] = column.unit.replace("`", "")
    return told
