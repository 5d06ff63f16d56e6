"""The season of a plan folder as it was written: its record, season/season.json, read again."""

import json
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from planner.cli.folder.disk import unreadable
from planner.cli.folder.season_folder import SEASON, recover
from planner.cli.shell import command_line, refuse
from planner.garden import Crop, Garden
from planner.reading import NamedSowings, named_sowings
from planner.season import EarlierSeason, read_record, season_unreadable, what_is_wrong
from planner.terms import Place, Problem

RECORD = f"{SEASON}/season.json"


def record_in(folder: Path) -> dict[str, Any] | Problem | None:
    """The record of the season in a folder, None when there is none, or why it cannot be read."""
    try:
        recover(folder)
        path = folder / RECORD
        if not path.exists():
            return None
        record = json.loads(path.read_bytes())
    except OSError as error:
        return unreadable(RECORD, error)
    except json.JSONDecodeError as error:
        return _damaged(f"it cannot be understood from line {error.lineno} on")
    except (ValueError, RecursionError):
        return _damaged("it cannot be understood")
    wrong = what_is_wrong(record)
    return _damaged(wrong) if wrong else dict(record)


def no_season(folder: Path, name: str = RECORD) -> Problem:
    """There is no season in a folder yet: it lacks the file of that name."""
    return Problem(
        "season-gone",
        Place(str(folder)),
        f"There is no {name} in it.",
        f"make one with: {command_line('schedule', folder)}",
    )


def planned_on(record: Mapping[str, Any]) -> date:
    """The day a recorded season was planned as seen on; or leave when it does not say."""
    try:
        return date.fromisoformat(record["as_of"])
    except (KeyError, TypeError, ValueError):
        refuse(season_unreadable(RECORD, "It has no readable as_of."))


def earlier_season_in(folder: Path, garden: Garden, as_of: date) -> EarlierSeason | Problem | None:
    """The season made before, as far as one made on a day keeps it, or why it cannot be read."""
    record = record_in(folder)
    if record is None or isinstance(record, Problem):
        return record
    return read_record(record, garden, as_of, RECORD)


def names_of(
    record: dict[str, Any], crops: Mapping[str, Crop] | None = None
) -> NamedSowings | Problem:
    """The names of sowings in a record, or why they cannot be read; `crops` are the plan's."""
    try:
        return named_sowings(record, crops or {})
    except (KeyError, TypeError, ValueError, AttributeError):
        return _damaged("names or days of sowings in it are not readable")


def _damaged(words: str) -> Problem:
    return season_unreadable(RECORD, f"It is damaged: {words}.")
