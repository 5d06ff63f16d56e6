"""A new plan by options or by questions; wrong answers are asked again."""

import os
import pty
import subprocess
import sys
from pathlib import Path

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
