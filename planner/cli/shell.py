"""Saying problems and leaving: the same words and exit status in every command."""

import json
import shlex
import sys
from datetime import date
from pathlib import Path
from typing import Annotated, NoReturn, TypeVar

import typer

from planner.cli.status import CANNOT_STAND
from planner.terms import FIRST_YEAR, LAST_YEAR, Place, Problem

T = TypeVar("T")

FolderArgument = Annotated[str, typer.Argument(help="The plan folder.", show_default=False)]
# With "." as its default.
FolderOrHere = Annotated[
    str, typer.Argument(help="The plan folder, if not the one you are in.", show_default=False)
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON for another program.")]


def refuse(*problems: Problem) -> NoReturn:
    """Print every problem on standard error and leave with status 2."""
    print("\n\n".join(str(problem) for problem in problems), file=sys.stderr)
    if len(problems) > 1:
        print(f"\n{len(problems)} problems in all.", file=sys.stderr)
    raise typer.Exit(CANNOT_STAND)


def need(found: T | Problem | tuple[Problem, ...]) -> T:
    """What was found; or leave after telling why it was not."""
    if isinstance(found, Problem):
        refuse(found)
    if isinstance(found, tuple):
        refuse(*found)
    return found


def command_line(command: str, folder: Path | str) -> str:
    """A command of this program on a folder, as it can be pasted."""
    return f"planner {command} {shlex.quote(str(folder))}"


def print_json(value: object) -> None:
    """Print a value as JSON."""
    screen = getattr(sys.stdout, "unfolded", sys.stdout)
    # A screen that lacks signs shows question marks; JSON has a way to write every sign.
    is_unicode = (getattr(screen, "encoding", "") or "").lower().replace("-", "") == "utf8"
    print(json.dumps(value, indent=1, ensure_ascii=not is_unicode), file=screen)


def today() -> date:
    """The calendar day where the grower is."""
    return date.today()  # noqa: DTZ011 - the grower's own day is what is meant


def read_day(written: str | None, option: str) -> date:
    """A day from the command line; today when none is given."""
    if written is None:
        return today()
    try:
        day = date.fromisoformat(written)
    except ValueError:
        wrong, remedy = f'"{written}" is not a date.', "write year-month-day, such as 2027-05-01."
    else:
        if FIRST_YEAR <= day.year <= LAST_YEAR:
            return day
        wrong = f"The year {day.year} is out of reach."
        remedy = f"name a day between {FIRST_YEAR} and {LAST_YEAR}."
    refuse(Problem("bad-date", Place(option), wrong, remedy))
