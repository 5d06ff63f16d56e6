"""Documents stay true: links resolve, keys are in the bibliography, examples run."""

import re
import shlex
import shutil
from pathlib import Path

import pytest

from planner.almanac import bibliography
from tests.plans import planner
from tests.season_runs import REPOSITORY

DOCUMENTS = sorted(
    [REPOSITORY / "README.md", REPOSITORY / "DEVELOPERS.md", *(REPOSITORY / "docs").rglob("*.md")]
)
README = (REPOSITORY / "README.md").read_text(encoding="utf-8")
# A key has parts (VCE-FALL), or letters and a number (ZALOM83, FAO56); W18 is a week.
_PARTED_KEY = r"[A-Z][A-Z0-9]*(?:[-_][A-Z0-9]+)+"
_NUMBERED_KEY = r"[A-Z]{3,}\d+"
NEED_A_NETWORK = {"publish", "share"}  # run in tests/calendar


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: str(path.relative_to(REPOSITORY)))
def test_every_link_leads_to_a_file(path: Path) -> None:
    targets = re.findall(r"\]\(([^)#]+)\)", path.read_text(encoding="utf-8"))
    missing = [target for target in targets if not (path.parent / target).exists()]
    assert missing == []


def test_every_key_in_the_rules_is_in_the_bibliography() -> None:
    text = (REPOSITORY / "docs" / "rules.md").read_text(encoding="utf-8")
    keys = set(re.findall(rf"\b(?:{_PARTED_KEY}|{_NUMBERED_KEY})\b", text))
    assert {"VCE-FALL", "ZALOM83"} <= keys
    # ZALOM83/DEGDAY is a work and where it was seen; a rule may name the work alone.
    known = {part for key in bibliography() for part in (key, *key.split("/"))}
    assert keys - known - {"ISO-8601"} == set()


def _blocks(language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)```", README, flags=re.DOTALL)


def test_the_first_command_of_the_readme_plans_a_sample_garden(tmp_path: Path) -> None:
    """The part after setting up; a run from nothing is for continuous integration."""
    shutil.copytree(
        REPOSITORY / "sample_plans",
        tmp_path / "sample_plans",
        ignore=shutil.ignore_patterns("season"),
    )
    command = _blocks("sh")[0].strip().split(" && ")[-1]
    assert command.startswith(".venv/bin/planner ")
    done = planner(*shlex.split(command)[1:], folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "sample_plans" / "ferry_street" / "season" / "calendar.ics").exists()


def test_the_garden_in_the_readme_can_stand(tmp_path: Path) -> None:
    folder = tmp_path / "my-garden"
    folder.mkdir()
    (folder / "garden.toml").write_text(_blocks("toml")[0], encoding="utf-8")
    done = planner("check", "my-garden", folder=tmp_path)
    assert done.returncode == 0, done.stderr


def test_the_commands_of_the_readme_run_on_the_garden_in_the_readme(tmp_path: Path) -> None:
    folder = tmp_path / "my-garden"
    folder.mkdir()
    (folder / "garden.toml").write_text(_blocks("toml")[0], encoding="utf-8")
    lines = [line for block in _blocks("sh") for line in block.splitlines()]
    commands = [
        shlex.split(line, comments=True)[1:]
        for line in lines
        if line.startswith(".venv/bin/planner ")
    ]
    names = [words[0] for words in commands]
    assert names == [
        "start",
        "check",
        "schedule",
        "week",
        "outlook",
        "bedwork",
        "publish",
        "share",
        "why",
        "log",
        "crops",
        "stations",
    ]
    for words in commands[1:]:
        if words[0] in NEED_A_NETWORK:
            continue
        dated = [*words, "--as-of", "2027-01-15"] if words[0] == "schedule" else words
        done = planner(*dated, folder=tmp_path)
        assert done.returncode == 0, (words, done.stderr)
        assert done.stdout.strip()
