"""docs/files.md: every file of a plan folder and its season folder."""

from collections.abc import Iterator

from planner.almanac import FIGURE_KINDS
from planner.terms import UNITS, Dimension
from reference.key_note import KeyNote, TableNote
from reference.plan_notes import CROPS, GARDEN, NOTES
from reference.plan_schema import EVERY_KEY, asked, needed_in
from reference.printed_schemas import all_printed
from reference.questions import Question, TablePath
from reference.tables import Column, Table, other_names, tables
from reference.tables_of_text import rows, source_link

_YEAR = 9999  # numbers up to it are told as years are, without commas
_HEAD = """\
# Files

All that a plan folder holds, file by file. JSON Schemas (draft 2020-12) and metadata of tables
(W3C, CSV on the Web) lie in [schemas/](schemas/); both have every sentence of this page, for
editors and other programs.

| file | written by | what it is |
|---|---|---|"""

_FILES = {
    "garden.toml": ("you", "the plan: [below](#gardentoml)"),
    "crops.toml": ("you", "own crops, and figures you know better: [below](#cropstoml)"),
    "weather.csv": ("you", "daily temperatures, under any name: [below](#weathercsv)"),
    "journal.csv": ("you and the program", "what really happened: [below](#journalcsv)"),
    "season/season.json": (
        "the program", "the season, for other programs: [schema](season.schema.json)",
    ),
    "season/sowing-sheet.csv": ("the program", "every task: [below](#sowing-sheetcsv)"),
    "season/harvest.csv": ("the program", "each week and crop: [below](#harvestcsv)"),
    "season/season.xlsx": ("the program", "both tables for spreadsheets, same columns (ISO 29500)"),
    "season/season.html": ("the program", "one page for phone, desk and paper"),
    "season/calendar.ics": ("the program", "tasks and harvest windows (RFC 5545)"),
    "season/calendar-update.ics": ("the program", "the same with what was called off"),
    "season/sheets.pdf": ("the program", "a sheet for each week"),
    "season/labels.pdf": ("the program", "a label for each block"),
    "season/seed-starting.pdf": ("the program", "what is started indoors"),
    "season/pictures/garden.svg": ("the program", "the beds from above, to scale"),
    "season/pictures/year-BED.svg": ("the program", "a bed through the year"),
    "season/pictures/harvest-CROP.svg": ("the program", "a crop by week"),
    "season/written.txt": (
        "the program", "names of what it wrote; other files in that folder stay",
    ),
    ".published": ("planner publish", "what a calendar on a server took last; no password"),
    ".share-token": ("planner share", "the secret part of the shared page's address"),
}  # fmt: skip

_WRITING = """\
## How values are written

`garden.toml` and `crops.toml` are TOML 1.0 in UTF-8, at most 1 MB. A *quantity* is text with a
number and a unit, such as `"8 ft"`; a *range* has two numbers, `"6-8 weeks"`. A *day* has no
quotes: `2027-05-01`. A *month-day* has them: `"03-28"`. *Water in a time* is `"12 gal/h"`,
`"2 L per hour"`, `"1 gpm"`, or as measured `"3 gal in 15 min"`. Where a few words can stand, the
program takes them in any case, the schemas only as they are told here.

| what | units |
|---|---|"""

_SEES = """\
## What the schemas cannot see

A schema sees shape: keys that are unknown or missing, wrong types, numbers out of their bounds,
amounts without a unit or with one of another kind, words that are none of the few, keys that do
not go together. TOML days are text for it, so it does not notice quotes around one. It does not
know how large a quantity is, whether a crop, bed or station exists, whether names are given
twice, in which order days come, or what lies in another file. `planner check` sees all of it, and
[problems.md](problems.md) lists it."""


def files_text() -> str:
    """The page."""
    parts = [_HEAD, *(f"| `{name}` | {by} | {what} |" for name, (by, what) in _FILES.items()), ""]
    parts += [_WRITING, *_unit_rows(), ""]
    parts += _toml_part(GARDEN, "garden.toml.schema.json")
    parts += ["A plan that says nearly all of it; yours needs far less:", ""]
    parts += ["```toml", EVERY_KEY.strip(), "```", ""]
    parts += _toml_part(CROPS, "crops.toml.schema.json")
    parts += _own_crops()
    for table in tables().values():
        parts += _csv_part(table)
    parts += _printed_part()
    return "\n".join([*parts, _SEES, ""])


def _own_crops() -> list[str]:
    return [
        f"Beside these a crop may have each of the {len(FIGURE_KINDS)} figures listed in",
        "[figures.md](figures.md). Of a crop that is not `like` another, `planner check` names",
        "those that are lacking. Step by step: [a crop of your own](how-to/own-crops.md).",
        "",
        "```toml",
        "[crop.carrot]                # a correction",
        'soil_depth = "10-12 in"',
        "",
        '[crop."lane radish"]         # a crop of your own',
        'like = "radish"',
        'days_from_sowing = "45-55 days"',
        "```",
        "",
    ]


def _unit_rows() -> Iterator[str]:
    for dimension in Dimension:
        names = [name for name, unit in UNITS.items() if unit.dimension is dimension]
        yield f"| {dimension.value} | {', '.join(f'`{one}`' for one in names)} |"


def _toml_part(file: str, schema: str) -> list[str]:
    parts = [f"## {file}", "", f"Schema: [{schema}](schemas/{schema}).", ""]
    for path, note in NOTES.items():
        if path[0] == file and (note.heading or path == (GARDEN,)):
            parts += _table_part(path, note)
    return parts


def _table_part(path: TablePath, note: TableNote) -> list[str]:
    parts = [f"### {note.heading}", ""] if note.heading else []
    parts += [note.about, *note.rules_words, ""]
    cells = []
    for key, one in note.keys.items():
        question = asked()[path].questions.get(key) or next(iter(asked()[path].questions.values()))
        needed = key in needed_in(path)
        name = "any name" if key == "*" else f"`{key}`"
        cells.append((name, _form(question, one), _usual(one, needed=needed), one.about))
    return [*parts, *rows(("key", "written as", "without it", "what it says"), cells), ""]


def _form(question: Question, note: KeyNote) -> str:
    span = "" if note.schema else _span(question)
    if note.form:
        return f"{note.form}{f', {span}' if span else ''}"
    if question.choices:
        return " or ".join(f'`"{one}"`' for one in question.choices)
    quantity = "a weight or a count" if question.dimension is None else question.dimension.value
    above = "" if question.verb == "quantity_from_zero" else ", above zero"
    forms = {
        "number": f"number, {span}",
        "whole_number": f"whole number, {span}",
        "day": "day",
        "month_day": "month-day",
        "yes_or_no": "`true` or `false`",
        "quantity": f"{quantity}{above}",
        "quantity_from_zero": quantity,
        "parts": "a heading for each",
        "parts_if_any": "a heading for each",
        "tables": "a list of tables",
        "table": "a table",
    }
    return forms.get(question.verb, "text")


def _span(question: Question) -> str:
    if question.low is None or question.high is None:
        return ""
    low, high = (
        f"{one:,.12g}" if one > _YEAR else f"{one:g}" for one in (question.low, question.high)
    )
    return f"{low} to {high}"


def _usual(note: KeyNote, *, needed: bool) -> str:
    if needed:
        return "needed"
    usual = f"`{note.usual}`" if note.usual else note.usual_words
    return f"{usual} ({source_link(note.source)})" if note.source else usual


def _csv_part(table: Table) -> list[str]:
    about = table.about.replace("see weather.md", "see [weather.md](weather.md)")
    parts = [f"## {table.file}", "", about]
    if table.file != "weather.csv":
        name = f"{table.file}-metadata.json"
        parts.append(f"Metadata: [{name}](schemas/{name}).")
    cells = [_column(table.file, name, one) for name, one in table.columns.items()]
    head = ("column", "type", "unit", "empty when", "example", "what it says")
    return [*parts, "", *rows(head, cells), ""]


def _column(file: str, name: str, column: Column) -> tuple[str, ...]:
    others = ", ".join(f"`{one}`" for one in other_names(file, name))
    form = column.form if not column.pattern else _words(column.pattern)
    also = f" Other names: {others}." if others else ""
    return (f"`{name}`", form, column.unit, column.empty or "never", column.example,
            f"{column.about}{also}")  # fmt: skip


def _words(pattern: str) -> str:
    return "week" if "[" in pattern else ", ".join(f"`{one}`" for one in pattern.split("|"))


def _printed_part() -> list[str]:
    cells = [("`planner schedule`", "[season.schema.json](season.schema.json)",
              "The season, as in season.json.")]  # fmt: skip
    for command, schema in all_printed().items():
        link = f"[{schema['$id']}](schemas/{schema['$id']})"
        cells.append((f"`planner {command}`", link, schema["description"]))
    head = ("command", "schema", "what it prints")
    return ["## What commands print with --json", "", *rows(head, cells), ""]
