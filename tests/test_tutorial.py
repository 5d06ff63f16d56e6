"""The tutorial and the how-tos do what they say: every command in them is run, in order.

What a guide shows of an answer is what the command before it printed.
"""

import re
import shlex
from pathlib import Path

import pytest

from tests.plans import planner
from tests.season_runs import REPOSITORY
from tests.test_documents import NEED_A_NETWORK

_DOCS = REPOSITORY / "docs"
_HOW_TOS = ("own-crops", "missed-sowing", "two-gardens")
_STEP = re.compile(
    r"<!-- run in: (?P<before>.*?) -->|<!-- file: (?P<name>.*?) -->\n```\w+\n(?P<text>.*?)```"
    r"|```sh\n(?P<commands>.*?)```|```text\n(?P<shown>.*?)```",
    flags=re.DOTALL,
)


def _told_by(guide: Path, folder: Path) -> list[str]:
    """What each command of a guide prints, run one after the other as a reader would."""
    told: list[str] = []
    for step in _STEP.finditer(guide.read_text(encoding="utf-8")):
        if step["name"]:
            (folder / step["name"]).write_text(step["text"], encoding="utf-8")
        if step["shown"]:
            # A terminal folds lines elsewhere than the page.
            assert " ".join(step["shown"].split()) in " ".join(told[-1].split())
        for line in (step["before"] or step["commands"] or "").splitlines():
            words = shlex.split(line, comments=True)
            assert words[0] == "planner"
            assert words[1] not in NEED_A_NETWORK
            done = planner(*words[1:], folder=folder)
            assert done.returncode == 0, (line, done.stdout, done.stderr)
            told.append(done.stdout)
    return told


@pytest.mark.parametrize("name", _HOW_TOS)
def test_every_command_of_a_how_to_runs(name: str, tmp_path: Path) -> None:
    assert len(_told_by(_DOCS / "how-to" / f"{name}.md", tmp_path)) >= 3


def test_the_tutorial_runs_and_ends_with_a_calendar_and_a_mended_season(tmp_path: Path) -> None:
    told = _told_by(_DOCS / "tutorial.md", tmp_path)
    season = tmp_path / "first-garden" / "season"
    assert {"calendar.ics", "season.html", "sheets.pdf"} <= {one.name for one in season.iterdir()}
    (revised,) = (one for one in told if "What changed:" in one)
    assert "Never begun, so let go: radish 2." in revised
    assert "New: radish" in revised
