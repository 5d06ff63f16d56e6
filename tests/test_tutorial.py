"""The tutorial and the how-tos do what they say: every command in them is run, in order."""

import re
import shlex
from pathlib import Path

import pytest

from tests.test_documents import NEED_A_NETWORK, ROOT, _planner

_GUIDES = [
    ROOT / "docs" / "tutorial.md",
    *(
        ROOT / "docs" / "how-to" / f"{name}.md"
        for name in ("own-crops", "missed-sowing", "two-gardens")
    ),
]
_STEP = re.compile(
    r"<!-- run in: (?P<before>.*?) -->|<!-- file: (?P<name>.*?) -->\n```\w+\n(?P<text>.*?)```"
    r"|```sh\n(?P<commands>.*?)```",
    flags=re.DOTALL,
)


@pytest.mark.parametrize("guide", _GUIDES, ids=lambda path: path.stem)
def test_every_command_of_a_guide_runs(guide: Path, tmp_path: Path) -> None:
    ran = 0
    for step in _STEP.finditer(guide.read_text(encoding="utf-8")):
        if step["name"]:
            (tmp_path / step["name"]).write_text(step["text"], encoding="utf-8")
        for line in (step["before"] or step["commands"] or "").splitlines():
            words = shlex.split(line, comments=True)
            assert words[0] == "planner"
            assert words[1] not in NEED_A_NETWORK
            done = _planner(words[1:], tmp_path)
            assert done.returncode == 0, (line, done.stdout, done.stderr)
            ran += 1
    assert ran >= 3


def test_the_tutorial_ends_with_a_calendar_and_a_mended_season(tmp_path: Path) -> None:
    text = _GUIDES[0].read_text(encoding="utf-8")
    commands = [line for block in re.findall(r"```sh\n(.*?)```", text, re.DOTALL)
                for line in block.splitlines()]  # fmt: skip
    told = [_planner(shlex.split(line)[1:], tmp_path).stdout for line in commands]
    season = tmp_path / "first-garden" / "season"
    assert {"calendar.ics", "season.html", "sheets.pdf"} <= {one.name for one in season.iterdir()}
    (revised,) = (one for one in told if "What changed:" in one)
    assert "Never begun, so let go: radish 2." in revised
    assert "New: radish" in revised
