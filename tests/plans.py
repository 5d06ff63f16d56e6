"""A small plan, and how a test changes it, writes it, runs the program on it and reads it back."""

import ctypes
import os
import subprocess
import sys
from collections.abc import Callable, Iterable
from pathlib import Path

from tests.reference.schemas import printed_faults, season_faults

GARDEN = """\
plan = 1

[site]
name = "Quince Yard"
latitude = 47.6
last_spring_freeze = "03-28"
first_fall_freeze = "11-09"

[season]
from = 2027-02-01
to = 2027-12-31

[[bed]]
name = "Gate bed"
length = "8 ft"
width = "4 ft"
soil_depth = "12 in"
sun = "full"

[[bed]]
name = "Wall bed"
length = "6 ft"
width = "3 ft"
soil_depth = "10 in"
sun = "part"

[[target]]
crop = "radish"
each_week = "12 roots"
from = 2027-05-01
to = 2027-09-30

[[target]]
crop = "leaf lettuce"
each_week = "8 oz"
from = 2027-05-10
to = 2027-09-30
"""

# What a schedule is asked for where it need not be a good one.
QUICK = ("--effort", "0")
AS_OF = ("--as-of", "2027-01-15", *QUICK)
PROGRAM = (sys.executable, "-c", "from planner.cli import run; run()")
SEASON_FILES = frozenset(
    {
        "calendar-update.ics",
        "calendar.ics",
        "harvest.csv",
        "labels.pdf",
        "season.html",
        "season.json",
        "season.xlsx",
        "seed-starting.pdf",
        "sheets.pdf",
        "sowing-sheet.csv",
        "written.txt",
    }
)

# A child that dies, or may write little, must not leave half a compiled module behind.
_ENVIRONMENT = {"PYTHONDONTWRITEBYTECODE": "1", "PYTHONUTF8": "1", "COLUMNS": "100"}
_PR_CAPBSET_DROP = 24
_RIGHTS_OF_ROOT = (1, 2)  # CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH


def garden_toml(*changes: tuple[str, str]) -> str:
    """The small plan with some words changed, each where it stands first."""
    text = GARDEN
    for was, now in changes:
        if was not in text:
            message = f"the small plan does not say {was}"
            raise ValueError(message)
        text = text.replace(was, now, 1)
    return text


def write_plan(folder: Path, garden: str | bytes = GARDEN, crops: str | None = None) -> Path:
    """A plan folder with these files; text is written as it is, in UTF-8."""
    folder.mkdir()
    content = garden if isinstance(garden, bytes) else garden.encode()
    (folder / "garden.toml").write_bytes(content)
    if crops is not None:
        (folder / "crops.toml").write_bytes(crops.encode())
    return folder


def planner(
    *arguments: str | Path,
    folder: Path = Path(),
    bound: Callable[[], None] | None = None,
    environment: Iterable[tuple[str, str]] = (),
) -> subprocess.CompletedProcess[str]:
    """One run of the program in a folder, by a user whom a locked folder stops.

    What it prints with --json, and the season it writes, follow the schemas in docs/.
    """

    def before() -> None:
        obey_permissions()
        if bound is not None:
            bound()

    words = [str(one) for one in arguments]
    done = subprocess.run(
        [*PROGRAM, *words],
        capture_output=True,
        check=False,
        cwd=folder,
        encoding="utf-8",
        env={**os.environ, **_ENVIRONMENT, **dict(environment)},
        preexec_fn=before,  # limits are set between fork and exec; tests run no threads
        stdin=subprocess.DEVNULL,
        timeout=300,
    )
    assert printed_faults(words, done.stdout) == []
    if words[:1] == ["schedule"] and done.returncode == 0 and (folder / words[1]).is_dir():
        assert season_faults(folder / words[1]) == []
    return done


def obey_permissions() -> None:
    """Take from root, for the program begun next, the right to read and write what is locked."""
    if sys.platform == "linux" and os.geteuid() == 0:
        for right in _RIGHTS_OF_ROOT:
            ctypes.CDLL(None).prctl(_PR_CAPBSET_DROP, right, 0, 0, 0)


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder with its bytes; folders are there too, as empty ones."""
    return {
        str(path.relative_to(folder)): path.read_bytes() if path.is_file() else b""
        for path in sorted(folder.rglob("*"))
    }
