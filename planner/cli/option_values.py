"""Numbers on the command line: read, or told to be none that can be."""

import re
from collections.abc import Callable

import typer

from planner.cli.shell import refuse
from planner.terms import Place, Problem

_FEWEST_PEOPLE, _MOST_PEOPLE = 0.5, 5000.0


def whole_number(least: int, most: int) -> Callable[[str], int]:
    """What reads an option that is a whole number between two, both included."""

    def read(words: str) -> int:
        number = int(words) if re.fullmatch(r"[0-9]{1,9}", str(words)) else -1
        if least <= number <= most:
            return number
        message = f"{words} is no whole number from {least} to {most}."
        raise typer.BadParameter(message)

    return read


def need_people(people: float) -> float:
    """A number a household, or a market's customers, could have; or leave, telling why not."""
    if _FEWEST_PEOPLE <= people <= _MOST_PEOPLE:
        return people
    refuse(
        Problem(
            "out-of-range",
            Place("--people"),
            f"{people:g} people cannot be fed from beds.",
            f"name a number between {_FEWEST_PEOPLE:g} and {_MOST_PEOPLE:g}: --people 4",
        )
    )
