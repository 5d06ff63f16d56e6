"""What makes a value the record of a season: its format, and the form of what it holds."""

import re
from datetime import date
from typing import Any

from planner.terms import Place, Problem

FORMAT = 1
Record = dict[str, Any]
_TASK_WORDS = ("id", "kind", "sowing", "bed", "place", "text")
# A crop and its running number, as in "radish 3".
_NAME = re.compile(r"\S(.*\S)? [1-9][0-9]{0,8}")
_NO_SOWING = "a sowing in it is not what it should be"
_NO_TASK = "a task in it is not what it should be"


def season_unreadable(file: str, wrong: str) -> Problem:
    """The problem of a record that cannot be read; `wrong` is a sentence."""
    return Problem(
        "season-unreadable",
        Place(file),
        wrong,
        "put back a copy of it; or move the folder season away and schedule anew (sowings get "
        "new names, so replace the calendar too).",
    )


def what_is_wrong(record: object) -> str:
    """Why a value is no record of a season that can be shown; empty when it is one."""
    if not isinstance(record, dict):
        return "it holds no season"
    if record.get("format") != FORMAT:
        return f"it is of format {record.get('format')!r}, and this program reads {FORMAT}"
    try:
        if not all(_is_task(task) for task in record["tasks"]):
            return _NO_TASK
        if not all(_is_sowing(sowing) for sowing in record["sowings"]):
            return _NO_SOWING
    except (KeyError, TypeError, ValueError):
        return "its tasks or sowings are not what they should be"
    return ""


def _is_task(task: Record) -> bool:
    date.fromisoformat(task["on"])
    return all(isinstance(task[word], str) for word in _TASK_WORDS)


def _is_sowing(sowing: Record) -> bool:
    name = sowing["id"]
    return (
        isinstance(name, str)
        and _NAME.fullmatch(name) is not None
        and isinstance(sowing["why"], list)
    )
