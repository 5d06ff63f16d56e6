"""`planner bedwork` run on a plan folder with a season."""

import json
from pathlib import Path
from typing import Any

from tests.plans import AS_OF, planner, write_plan


def scheduled(folder: Path, plan: str) -> Path:
    """The folder with a plan and its season."""
    written = write_plan(folder, plan)
    done = planner("schedule", written, *AS_OF)
    assert done.returncode == 0, done.stderr
    return written


def bedwork_text(*arguments: str | Path) -> str:
    """What it prints, having found nothing wrong."""
    done = planner("bedwork", *arguments)
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    return done.stdout


def bedwork_record(*arguments: str | Path) -> dict[str, Any]:
    """What it gives another program."""
    found = json.loads(bedwork_text(*arguments, "--json"))
    assert isinstance(found, dict)
    return found
