"""Saying problems and leaving: the same words and exit status in every command."""

import json
import sys
from collections.abc import Iterable
from datetime import date
from typing import Annotated, NoReturn

import typer

from planner.terms import Place, Problem

CANNOT_STAND = 2
SOMETHING_UNMET = 1
_FIRST_YEAR, _LAST_YEAR = 1900, 2200

FolderArgument = Annotated[str, typer.Argument(help="The plan folder.", show_default=False)]
# With "." as its default.
FolderOrHere = Annotated[
    str, typer.Argument(help="The plan folder, if not the one you are in.", show_default=False)
]
JsonOption = Annotated[bool, typer.Option("--json", help="Print JSON for another program.")]


def refuse(problems: Iterable[Problem]) -> NoReturn:
    """Print every problem on standard error and leave with status 2."""
    told = list(problems)
    print("\n\n".join(str(problem) for problem in told), file=sys.stderr)
    if len(told) > 1:
        print(f"\n{len(told)} problems in all.", file=sys.stderr)
    raise typer.Exit(CANNOT_STAND)


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
        if _FIRST_YEAR <= day.year <= _LAST_YEAR:
            return day
    except ValueError:
        day = None
    if day is not None:
        refuse(
            [
                Problem(
                    "bad-date",
                    Place(option),
                    f"The year {day.year} is out of reach.",
                    f"name a day between {_FIRST_YEAR} and {_LAST_YEAR}.",
                )
            ]
        )
    else:
        refuse(
            [
                Problem(
                    "bad-date",
                    Place(option),
                    f'"{written}" is not a date.',
                    "write year-month-day, such as 2027-05-01.",
                )
            ]
        )
