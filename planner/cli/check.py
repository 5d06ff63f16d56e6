"""`planner check`: whether a plan can stand."""

import math
from pathlib import Path

import typer

from planner.cli.folder import garden_in, is_folder, journal_in
from planner.cli.shell import FolderOrHere, JsonOption, need, print_json, refuse
from planner.cli.status import CANNOT_STAND
from planner.garden import Garden
from planner.terms import M2_PER_SQ_FT, Problem, count_words


def check(folder: FolderOrHere = ".", json: JsonOption = False) -> None:
    """Read a plan and its journal and tell every problem in them, with line and remedy.

    Example: planner check my-garden
    """
    garden, problems = _read(Path(folder))
    if json:
        print_json([_as_json(problem) for problem in problems])
        raise typer.Exit(CANNOT_STAND if problems else 0)
    if problems:
        refuse(*problems)
    _show(need(garden))


def _read(folder: Path) -> tuple[Garden | tuple[Problem, ...], tuple[Problem, ...]]:
    """The garden, and every problem of the plan and its journal."""
    garden = garden_in(folder)
    wrong = garden if isinstance(garden, tuple) else ()
    if not is_folder(folder):
        return garden, wrong
    journal = journal_in(folder, garden.crops if isinstance(garden, Garden) else {})
    return garden, (*wrong, *(journal if isinstance(journal, tuple) else ()))


def _show(garden: Garden) -> None:
    from planner.writing import ground_text, site_text  # noqa: PLC0415 - heavy, only needed here

    area_m2 = math.fsum(bed.area_m2 for bed in garden.beds)
    beds, targets = count_words(len(garden.beds), "bed"), count_words(len(garden.targets), "target")
    print(
        f"{garden.site.name}: {beds} with {area_m2:.1f} square metres "
        f"({area_m2 / M2_PER_SQ_FT:.0f} sq ft), {targets}. Nothing wrong."
    )
    print(site_text(garden))
    if ground := ground_text(garden):
        print(ground)


def _as_json(problem: Problem) -> dict[str, object]:
    return {
        "kind": problem.kind,
        "file": problem.place.file,
        "line": problem.place.line,
        "wrong": problem.wrong,
        "remedy": problem.remedy,
    }
