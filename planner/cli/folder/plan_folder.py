"""A plan folder on disk: reading what is there."""

import json
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from planner.cli.folder.season_folder import SEASON, recover
from planner.cli.shell import refuse
from planner.garden import Crop, Garden, Portion
from planner.journal import Journal
from planner.reading import (
    LARGEST_FILE_BYTES,
    LARGEST_JOURNAL_BYTES,
    LARGEST_WEATHER_BYTES,
    NamedSowings,
    PlanFile,
    PlanFiles,
    named_sowings,
    read_garden,
    read_journal,
    read_portions,
)
from planner.season import EarlierSeason, read_record, season_unreadable, what_is_wrong
from planner.terms import Place, Problem

GARDEN = "garden.toml"
CROPS = "crops.toml"
JOURNAL = "journal.csv"
RECORD = "season.json"
_MOST_NAMED = 3


def garden_in(folder: Path) -> Garden | tuple[Problem, ...]:
    """The garden of a plan folder, or every problem of its files."""
    problems: list[Problem] = []
    garden = _file(folder, GARDEN, problems)
    if garden is None and not problems:
        problems.append(missing_plan(folder))
    crops = _file(folder, CROPS, problems)
    if garden is None:
        return tuple(problems)
    read = read_garden(PlanFiles(garden, crops, lambda name: _beside(folder, name)))
    if problems:
        return (*problems, *(read if isinstance(read, tuple) else ()))
    return read


def need_garden(folder: Path) -> Garden:
    """The garden, or leave after telling why there is none."""
    garden = garden_in(folder)
    if isinstance(garden, Garden):
        return garden
    refuse(garden)


def portions_in(folder: Path) -> tuple[Portion, ...]:
    """What a person eats of each crop, with the plan's own crops and corrections."""
    return read_portions(_file(folder, CROPS, []))


def need_plan(folder: Path) -> None:
    """Leave after telling that there is neither a plan nor a season, where there is none."""
    try:
        is_there = (folder / GARDEN).exists() or (folder / SEASON).exists()
    except OSError:
        is_there = False
    if not is_there:
        refuse([missing_plan(folder)])


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
    remedy = f"make a plan there with: planner start {folder}"
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
    problems: list[Problem] = []
    file = _file(folder, name, problems, LARGEST_WEATHER_BYTES)
    if file is not None:
        return file
    missing = Problem(
        "file-missing",
        Place(name),
        f"There is no {name} in {folder}.",
        "put the file there, or correct its name in garden.toml.",
    )
    return problems[0] if problems else missing


def is_folder(path: Path) -> bool:
    """Whether a path leads to a folder; a name no disk can hold leads nowhere."""
    try:
        return path.is_dir()
    except OSError:
        return False


def _file(
    folder: Path, name: str, problems: list[Problem], largest_bytes: int = LARGEST_FILE_BYTES
) -> PlanFile | None:
    path = folder / name
    try:
        if not path.exists():
            return None
        with path.open("rb") as file:
            # One byte beyond the limit is enough to know that a file is too large.
            content = file.read(largest_bytes + 1)
    except OSError as error:
        problems.append(_unreadable(name, error))
        return None
    return PlanFile(name, content)


def _unreadable(name: str, error: OSError) -> Problem:
    return Problem(
        "file-unreadable",
        Place(name),
        f"The computer says: {error.strerror}.",
        "see that it is a plain file you may read.",
    )


def season_record(folder: Path) -> dict[str, Any] | None:
    """The record of the season in a folder; None when there is none yet. Or leave, telling why."""
    record = record_in(folder)
    if isinstance(record, Problem):
        refuse([record])
    return record


def need_record(folder: Path, named: str) -> dict[str, Any]:
    """The season's record, or leave after telling that there is none."""
    need_plan(folder)
    record = season_record(folder)
    if record is None:
        refuse(
            [
                Problem(
                    "season-gone",
                    Place(str(folder)),
                    "There is no season/season.json in it.",
                    f"make one with: planner schedule {named}",
                )
            ]
        )
    return record


def record_in(folder: Path) -> dict[str, Any] | Problem | None:
    """The record of the season in a folder, None when there is none, or why it cannot be read."""
    name = f"{SEASON}/{RECORD}"
    try:
        recover(folder)
        path = folder / SEASON / RECORD
        if not path.exists():
            return None
        record = json.loads(path.read_bytes())
    except OSError as error:
        return _unreadable(name, error)
    except json.JSONDecodeError as error:
        return _damaged(name, f"it cannot be understood from line {error.lineno} on")
    except (ValueError, RecursionError):
        return _damaged(name, "it cannot be understood")
    wrong = what_is_wrong(record)
    return _damaged(name, wrong) if wrong else dict(record)


def _damaged(name: str, words: str) -> Problem:
    return season_unreadable(name, f"It is damaged: {words}.")


def earlier_season(folder: Path, garden: Garden, as_of: date) -> EarlierSeason | None:
    """The season made before, as far as a new one keeps it; or leave, telling what is wrong."""
    earlier = earlier_season_in(folder, garden, as_of)
    if isinstance(earlier, Problem):
        refuse([earlier])
    return earlier


def earlier_season_in(folder: Path, garden: Garden, as_of: date) -> EarlierSeason | Problem | None:
    """The season made before, as far as a new one keeps it, or why it cannot be read."""
    record = record_in(folder)
    if record is None or isinstance(record, Problem):
        return record
    return read_record(record, garden, as_of, f"{SEASON}/{RECORD}")


def journal_in(folder: Path, garden: Garden) -> Journal:
    """The journal, empty where there is none; or leave after telling what is wrong with it."""
    journal = read_journal_in(folder, garden.crops)
    if isinstance(journal, Journal):
        return journal
    refuse(journal)


def read_journal_in(folder: Path, crops: Mapping[str, Crop]) -> Journal | tuple[Problem, ...]:
    """The journal of a plan folder, empty where there is none, or every problem in it."""
    problems: list[Problem] = []
    file = _file(folder, JOURNAL, problems, LARGEST_JOURNAL_BYTES)
    if file is None:
        return tuple(problems) or Journal()
    names = _names(record_in(folder), crops)
    return (names,) if isinstance(names, Problem) else read_journal(file, names)


def journal_file_in(folder: Path) -> PlanFile | Problem:
    """The journal unread, empty where there is none, or why it cannot be opened."""
    problems: list[Problem] = []
    file = _file(folder, JOURNAL, problems, LARGEST_JOURNAL_BYTES)
    return problems[0] if problems else file or PlanFile(JOURNAL, b"")


def names_in(record: dict[str, Any]) -> NamedSowings:
    """The names of sowings in the record of a season; or leave when they cannot be read."""
    names = names_of(record)
    if isinstance(names, Problem):
        refuse([names])
    return names


def names_of(record: dict[str, Any]) -> NamedSowings | Problem:
    """The names of sowings in the record of a season, or why they cannot be read."""
    return _names(record, {})


def _names(
    record: dict[str, Any] | Problem | None, crops: Mapping[str, Crop]
) -> NamedSowings | Problem:
    if isinstance(record, Problem):
        return record
    if record is None:
        return NamedSowings({}, {})
    try:
        return named_sowings(record, crops)
    except (KeyError, TypeError, ValueError, AttributeError):
        return _damaged(f"{SEASON}/{RECORD}", "names or days of sowings in it are not readable")
