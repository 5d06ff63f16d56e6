"""Make the generated documents, or check that they are fresh.

    python .ci/documents.py            write them in place
    python .ci/documents.py --check    fail when one is stale

What is generated stands in docs/ and begins with a line that says so.
"""

import ast
import inspect
import json
import sys
from collections.abc import Callable
from datetime import date
from functools import cache
from pathlib import Path

from reference.crops_page import crops_text
from reference.figures_page import figures_text
from reference.files_page import files_text
from reference.plan_schema import crops_schema, garden_schema
from reference.printed_schemas import all_printed
from reference.tables import table_metadata
from reference.tables_of_text import source_anchor
from typer.main import get_command

from planner.almanac import bibliography
from planner.cli.app import app
from planner.cli.folder import garden_in
from planner.cli.shell import need
from planner.pictures import bed_year, harvest_weeks
from planner.season import Season, make_season
from planner.terms import PROBLEM_KINDS

ROOT = Path(__file__).resolve().parent.parent
DOCS = ROOT / "docs"
ROOMS = (
    "terms", "garden", "journal", "climate", "growth", "solver", "ground", "scheduling",
    "scheduling/starts", "scheduling/standing", "scheduling/thumb", "scheduling/unfed",
    "scheduling/offers", "scheduling/ideal", "scheduling/arranging",
    "tasks", "bedwork", "trial", "almanac", "season", "writing", "pictures", "page", "sheets",
    "reading", "cli", "cli/folder", "cli/start", "cli/share", "cli/publish",
)  # fmt: skip


def commands_text() -> str:
    """Every command with its arguments and options, from the program itself."""
    commands = get_command(app).commands  # type: ignore[attr-defined] # a group has commands
    parts = ["# Commands", "", "`planner COMMAND --help` says the same at the keyboard.", ""]
    for name, command in commands.items():
        parts += [f"## planner {name}", "", *_paragraphs(command.help or ""), ""]
        for one in command.params:
            words = " ".join(str(getattr(one, "help", None) or "").split())
            shown = ", ".join(f"`{spelling}`" for spelling in one.opts)
            if one.param_type_name == "argument":
                shown = f"`{one.name.upper()}`"
            parts.append(f"- {shown}: {words}")
        parts.append("")
    status = (
        "Every command leaves with status 0 when it is done, 2 when its input cannot stand, 130 "
        "after Ctrl-C, and 1 when what it shows cannot be written; `schedule --strict` leaves with "
        "1 when something is unmet, too."
    )
    return "\n".join([*parts, status, ""])


def _paragraphs(text: str) -> list[str]:
    return inspect.cleandoc(text).splitlines()


def problems_text() -> str:
    """The catalogue of problems, each with the text the program prints for an example."""
    parts = [
        "# Problems",
        "",
        "What the program can find wrong with its input. Each has an example in",
        "`tests/problems`, a plan that provokes it.",
        "",
    ]
    for name, kind in sorted(PROBLEM_KINDS.items()):
        parts += [f"## {name}", "", f"*{kind.title}*", "", kind.explanation, ""]
        expected = ROOT / "tests" / "problems" / name / "expected.txt"
        if expected.exists():
            text = expected.read_text(encoding="utf-8").strip()
            parts += ["```text", text, "```", ""]
    return "\n".join(parts)


def rooms_text() -> str:
    """The map of the house: each room's sentence and door."""
    parts = [
        "# Rooms",
        "",
        "The package in the order its data flows. A room imports only rooms above it, by their",
        "door (the names listed); `lint-imports` and `tests/test_house.py` hold it to that.",
        "",
    ]
    for room in ROOMS:
        tree = ast.parse((ROOT / "planner" / room / "__init__.py").read_text(encoding="utf-8"))
        door = [
            str(element.value)
            for node in tree.body
            if isinstance(node, ast.Assign) and isinstance(node.value, ast.List)
            for element in node.value.elts
            if isinstance(element, ast.Constant)
        ]
        names = ", ".join(f"`{one}`" for one in door)
        parts += [f"## {room}", "", ast.get_docstring(tree) or "", "", f"Door: {names}.", ""]
    return "\n".join(parts)


def bibliography_text() -> str:
    """The one bibliography."""
    parts = [
        "# Bibliography",
        "",
        "Every figure of the almanac names one of these. The grade says how the source was seen:",
        "A or P the publisher's own page or a standard, A2, S or B the same through a copy or",
        "quotation, C a grower or the trade.",
        "",
        "| key | source | grade |",
        "|---|---|---|",
    ]
    for entry in sorted(bibliography().values(), key=lambda one: one.key):
        words = ", ".join(filter(None, (entry.title, entry.publisher, entry.year)))
        key = f'<a id="{source_anchor(entry.key)}"></a>{entry.key}'
        parts.append(f"| {key} | {words.replace('|', '/')} | {entry.grade} |")
    return "\n".join([*parts, ""])


@cache
def _sample() -> Season:
    """The season of a sample plan, as the README makes it."""
    garden = need(garden_in(ROOT / "sample_plans" / "ferry_street"))
    return make_season(garden, date(2027, 1, 15), None)


def bed_picture() -> str:
    """A bed of the sample plan through the year."""
    return bed_year(_sample(), "Shed side 1")


def harvest_picture() -> str:
    """What the sample plan wants of radishes and expects, week by week."""
    return harvest_weeks(_sample(), "radish")


DOCUMENTS: dict[str, Callable[[], str]] = {
    "commands.md": commands_text,
    "problems.md": problems_text,
    "rooms.md": rooms_text,
    "bibliography.md": bibliography_text,
    "figures.md": figures_text,
    "files.md": files_text,
    "crops.md": crops_text,
    "pictures/bed.svg": bed_picture,
    "pictures/harvest.svg": harvest_picture,
}


def schema_files() -> dict[str, str]:
    """Schemas and metadata of tables, by file below docs/."""
    schemas = [garden_schema(), crops_schema(), *all_printed().values()]
    values = {schema["$id"]: schema for schema in schemas}
    values |= {f"{name}-metadata.json": one for name, one in table_metadata().items()}
    return {
        f"schemas/{name}": json.dumps(value, indent=2, ensure_ascii=False) + "\n"
        for name, value in values.items()
    }


MARK = "<!-- Generated by .ci/documents.py; change what it is made from. -->\n"


def main(arguments: list[str]) -> int:
    """Write all, or name the stale ones."""
    made = {name: MARK + make() for name, make in DOCUMENTS.items()} | schema_files()
    stale = [
        path.name for path in (DOCS / "schemas").glob("*") if f"schemas/{path.name}" not in made
    ]
    for name, text in made.items():
        path = DOCS / name
        if path.exists() and path.read_text(encoding="utf-8") == text:
            continue
        stale.append(name)
        if "--check" not in arguments:
            path.parent.mkdir(exist_ok=True)
            path.write_text(text, encoding="utf-8")
    if "--check" in arguments and stale:
        sys.stderr.write(f"stale in docs/: {', '.join(stale)}; run python .ci/documents.py\n")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
