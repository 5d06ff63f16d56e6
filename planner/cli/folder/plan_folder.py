"""The files of a plan, read: garden.toml and what it names, crops.toml, journal.csv."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from planner.cli.folder.disk import unreadable
from planner.cli.folder.season_folder import SEASON
from planner.cli.folder.season_record import names_of, no_season, record_in
from planner.cli.shell import command_line, need, refuse
from planner.garden import Crop, Garden, Portion
from planner.journal import Journal
from planner.reading import (
    LARGEST_FILE_BYTES,
    LARGEST_JOURNAL_BYTES,
    LARGEST_WEATHER_BYTES,
    NamedSowings,
    PlanFile,
    PlanFiles,
    read_garden,
    read_journal,
    read_portions,
)
from planner.terms import Place, Problem

GARDEN = "garden.toml"
CROPS = "crops.toml"
JOURNAL = "journal.csv"
_MOST_NAMED = 3


def garden_in(folder: Path) -> Garden | tuple[Problem, ...]:
    """The garden of a plan folder, or every problem of its files."""
    garden, crops = _file(folder, GARDEN) or missing_plan(folder), _file(folder, CROPS)
    problems = tuple(one for one in (garden, crops) if isinstance(one, Problem))
    if isinstance(garden, Problem):
        return problems
    own_crops = crops if isinstance(crops, PlanFile) else None
    read = read_garden(PlanFiles(garden, own_crops, lambda name: _beside(folder, name)))
    if problems:
        return (*problems, *(read if isinstance(read, tuple) else ()))
    return read


def journal_in(folder: Path, crops: Mapping[str, Crop]) -> Journal | tuple[Problem, ...]:
    """The journal of a plan folder, empty where there is none, or every problem in it.

    `crops` are the plan's, in whose units amounts are counted.
    """
    file = _file(folder, JOURNAL, LARGEST_JOURNAL_BYTES)
    if file is None:
        return Journal()
    names = _names_in(folder, crops)
    if isinstance(file, Problem) or isinstance(names, Problem):
        return tuple(one for one in (file, names) if isinstance(one, Problem))[:1]
    return read_journal(file, names)


def _names_in(folder: Path, crops: Mapping[str, Crop]) -> NamedSowings | Problem:
    """The names of sowings a journal may speak of; none where there is no season yet."""
    record = record_in(folder)
    if record is None:
        return NamedSowings({}, {})
    return record if isinstance(record, Problem) else names_of(record, crops)


def journal_file_in(folder: Path) -> PlanFile | Problem:
    """The journal unread, empty where there is none, or why it cannot be opened."""
    return _file(folder, JOURNAL, LARGEST_JOURNAL_BYTES) or PlanFile(JOURNAL, b"")


def portions_in(folder: Path) -> tuple[Portion, ...]:
    """What a person eats of each crop, with the plan's own crops and corrections."""
    crops = _file(folder, CROPS)
    return read_portions(crops if isinstance(crops, PlanFile) else None)


def need_record(folder: Path) -> dict[str, Any]:
    """The record of the season in a folder; or leave after telling why there is none."""
    need_plan(folder)
    return need(record_in(folder) or no_season(folder))


def need_plan(folder: Path) -> None:
    """Leave after telling that there is neither a plan nor a season, where there is none."""
    try:
        is_there = (folder / GARDEN).exists() or (folder / SEASON).exists()
    except OSError:
        is_there = False
    if not is_there:
        refuse(missing_plan(folder))


def missing_plan(folder: Path) -> Problem:
    """Why there is no plan in a folder."""
    if folder.name == GARDEN and folder.is_file():
        return Problem(
            "file-missing",
            Place(GARDEN),
            "A command takes the folder of a plan, not the file in it.",
            f"name the folder: {folder.parent}",
        )
    is_here = folder == Path()
    remedy = f"make a plan there with: {command_line('start', folder)}"
    if not is_folder(folder):
        wrong = f"There is no folder {folder}."
    else:
        wrong = f"There is no {GARDEN} in {'the folder you are in' if is_here else folder}."
        if below := _plans_below(folder):
            remedy = f"name the plan's folder: {', '.join(below)}"
        elif is_here:
            remedy = "name the plan's folder, or make a plan: planner start my-garden"
    return Problem("file-missing", Place(GARDEN), wrong, remedy)


def _plans_below(folder: Path) -> list[str]:
    """A few folders in a folder that hold a plan."""
    try:
        found = sorted(str(path.parent) for path in folder.glob(f"*/{GARDEN}"))
    except OSError:
        return []
    return found[:_MOST_NAMED]


def _beside(folder: Path, name: str) -> PlanFile | Problem:
    """A further file of the plan, such as a weather record."""
    return _file(folder, name, LARGEST_WEATHER_BYTES) or Problem(
        "file-missing",
        Place(name),
        f"There is no {name} in {folder}.",
        "put the file there, or correct its name in garden.toml.",
    )


def is_folder(path: Path) -> bool:
    """Whether a path leads to a folder; a name no disk can hold leads nowhere."""
    try:
        return path.is_dir()
    except OSError:
        return False


def _file(
    folder: Path, name: str, largest_bytes: int = LARGEST_FILE_BYTES
) -> PlanFile | Problem | None:
    """A file of the plan, None where there is none, or why it cannot be read."""
    path = folder / name
    try:
        if not path.exists():
            return None
        with path.open("rb") as file:
            # One byte beyond the limit is enough to know that a file is too large.
            return PlanFile(name, file.read(largest_bytes + 1))
    except OSError as error:
        return unreadable(name, error)
