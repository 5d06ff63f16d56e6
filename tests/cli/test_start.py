"""A new plan by options or by questions; wrong answers are asked again."""

import os
import pty
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from planner.cli.start_answers import usual_season

PROGRAM = [sys.executable, "-c", "from planner.cli import run; run()"]
OPTIONS = [
    "--name", "Quay garden", "--latitude", "47.6", "--last-spring-freeze", "03-28",
    "--first-fall-freeze", "11-09", "--from", "2027-02-01", "--to", "2027-12-31",
    "--garden-days", "Wed, Sat", "--bed", "North 1: 8 ft x 4 ft, 15 in deep, full",
    "--bed", "Barrel: 30 in round, 16 in deep", "--want", "radish: 25 roots",
]  # fmt: skip


def _run(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [*PROGRAM, *words],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


def _answer(folder: Path, answers: list[str]) -> tuple[int, str]:
    """Run `planner start` on a terminal and type the answers."""
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [*PROGRAM, "start", str(folder)],
        stdin=theirs,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    ) as process:
        os.close(theirs)
        os.write(ours, "".join(f"{answer}\n" for answer in answers).encode())
        output, _ = process.communicate(timeout=60)
        os.close(ours)
        return process.returncode, output


def test_options_make_a_plan_that_can_stand(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "garden"
    made = _run("start", str(folder), *OPTIONS)
    assert made.returncode == 0, made.stderr
    checked = _run("check", str(folder))
    assert checked.returncode == 0, checked.stderr
    assert "Quay garden: 2 beds" in checked.stdout


def test_a_plan_that_exists_is_never_overwritten(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    _run("start", str(folder), *OPTIONS)
    before = (folder / "garden.toml").read_bytes()
    again = _run("start", str(folder), *OPTIONS)
    assert again.returncode == 2
    assert "a plan is there already" in again.stderr
    assert (folder / "garden.toml").read_bytes() == before


def test_without_a_terminal_what_is_missing_is_told_and_nothing_written(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    made = _run("start", str(folder), "--latitude", "47.6")
    assert made.returncode == 2
    assert "no freeze dates" in made.stderr
    for option in ("--last-spring-freeze", "--station", "--bed", "--want"):
        assert option in made.stderr
    assert "garden.toml" not in made.stderr
    assert "Traceback" not in made.stderr
    assert not folder.exists()


def test_a_bed_that_cannot_be_understood_is_told(tmp_path: Path) -> None:
    made = _run("start", str(tmp_path / "garden"), "--bed", "eight by four")
    assert made.returncode == 2
    assert '"eight by four" cannot be understood' in made.stderr


def test_questions_forgive_wrong_answers(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        [
            "Quay garden",
            "north", "95", "34.7",  # latitude
            "7b", "?", "west", "-82.8", "USC00381770",  # freeze dates
            "soon", "2027-02-01", "2027-12-31",  # season
            "Sat",
            "a big bed", "North 1: 8 ft x 4 ft, 15 in deep, full", "",
            "raddish: 25 roots", "radish: 25 roots", "",
        ],
    )  # fmt: skip
    assert status == 0, output
    assert "CLEMSON" in output
    text = (folder / "garden.toml").read_text(encoding="utf-8")
    assert 'station = "USC00381770"' in text
    assert _run("check", str(folder)).returncode == 0


def test_what_the_plan_would_refuse_is_asked_again_at_once(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        [
            "Quay garden", "47.6",
            "04-15", "03-01", "04-15", "10-20",  # the fall freeze before the spring one
            "2027-12-31", "2027-02-01", "2027-02-01", "2027-12-31",  # an end before its beginning
            "Someday", "Sat",
            "North 1: 8 ft x 4 ft, 15 in deep, full", "north  1: 4 ft round, 15 in deep",
            "South: 8 ft x 4 ft, 15 parsecs deep", "",
            "radish: 3 lb", "radish: 25 roots", "radish: 5 roots", "",
        ],
    )  # fmt: skip
    assert status == 0, output
    assert 'already names the bed "North 1"' in output
    text = (folder / "garden.toml").read_text(encoding="utf-8")
    assert text.count("[[bed]]") == 1
    assert text.count("[[target]]") == 1
    assert _run("check", str(folder)).returncode == 0


def test_the_question_for_a_longitude_can_be_left(tmp_path: Path) -> None:
    status, output = _answer(
        tmp_path / "garden",
        [
            "Quay garden", "47.6", "?", "", "04-15", "10-20", "", "", "",
            "North 1: 8 ft x 4 ft, 15 in deep, full", "", "radish: 25 roots", "",
        ],
    )  # fmt: skip
    assert status == 0, output


def test_answers_that_cannot_be_written_are_shown(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    status, output = _answer(
        tmp_path / "file" / "garden",
        [
            "Quay garden", "47.6", "04-15", "10-20", "", "", "",
            "North 1: 8 ft x 4 ft, 15 in deep, full", "", "radish: 25 roots", "",
        ],
    )  # fmt: skip
    assert status == 2
    assert "folder cannot be written" in output
    assert 'name = "Quay garden"' in output
    assert 'each_week = "25 roots"' in output


@pytest.mark.parametrize(
    ("day", "latitude", "first", "last"),
    [
        ("2027-03-10", 47.6, "2027-03-10", "2027-12-31"),
        ("2027-09-01", 47.6, "2028-01-01", "2028-12-31"),
        ("2027-09-01", -34, "2027-09-01", "2028-06-30"),
        ("2028-02-10", -34, "2028-02-10", "2028-06-30"),
        ("2028-03-01", -34, "2028-07-01", "2029-06-30"),
    ],
)
def test_the_usual_season_runs_from_midwinter_to_midwinter(
    day: str, latitude: float, first: str, last: str
) -> None:
    usual = usual_season(date.fromisoformat(day), latitude)
    assert usual == (date.fromisoformat(first), date.fromisoformat(last))
