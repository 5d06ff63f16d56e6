"""The files of a plan as they come from the shell: a name and bytes, unread."""

from collections.abc import Callable
from dataclasses import dataclass

from planner.terms import Place, Problem

LARGEST_FILE_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class PlanFile:
    """One file of a plan folder."""

    name: str
    content: bytes


def _nothing_beside(name: str) -> Problem:
    wrong = f"There is no {name} beside garden.toml."
    return Problem("file-missing", Place(name), wrong, "put the file there, or correct the name.")


@dataclass(frozen=True, slots=True)
class PlanFiles:
    """What a plan folder holds: garden.toml always, crops.toml perhaps.

    `beside` gives a further file that garden.toml names, or the problem with it.
    """

    garden: PlanFile
    crops: PlanFile | None = None
    beside: Callable[[str], PlanFile | Problem] = _nothing_beside
