"""Each kind of problem has a folder here that provokes it, and the text told for it.

`python -m tests.test_problems` writes the expected texts anew; read what it changed.
"""

import shlex
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest

from planner.terms.problem_kinds import PROBLEM_KINDS
from tests.plans import contents, planner

FOLDERS = Path(__file__).parent / "problems"


def in_latin_1(plan: Path) -> None:
    """Save the plan as an old editor would."""
    file = plan / "garden.toml"
    file.write_bytes(file.read_text("utf-8").encode("latin-1"))


def beyond_a_megabyte(plan: Path) -> None:
    """Let the plan grow as a file of another kind would."""
    with (plan / "garden.toml").open("a", encoding="utf-8") as file:
        file.write("# and so on\n" * 90_000)


def read_only(plan: Path) -> None:
    """Take away the right to write in the plan folder."""
    plan.chmod(0o555)


# What no file in the folder can show by itself.
PROVOKED_BY: dict[str, Callable[[Path], None]] = {
    "file-unreadable": in_latin_1,
    "file-too-large": beyond_a_megabyte,
    "folder-unwritable": read_only,
}


@pytest.mark.parametrize("kind", PROBLEM_KINDS)
def test_each_kind_of_problem_is_told_in_its_words(kind: str, tmp_path: Path) -> None:
    plan = plan_of(kind, tmp_path)
    before = contents(plan) if plan.exists() else {}
    result = run_of(kind, plan)
    assert told(result, plan) == (FOLDERS / kind / "expected.txt").read_text("utf-8")
    assert result.returncode == 2
    assert result.stdout == ""
    assert (contents(plan) if plan.exists() else {}) == before


@pytest.mark.parametrize("kind", PROBLEM_KINDS)
def test_each_kind_of_problem_is_told_once_under_its_title(kind: str) -> None:
    expected = (FOLDERS / kind / "expected.txt").read_text("utf-8")
    first, *_ = expected.splitlines()
    assert first.endswith(f": {PROBLEM_KINDS[kind].title}")
    assert expected.count("What to do: ") == 1
    assert "Traceback" not in expected


def test_each_folder_of_problems_is_a_known_kind() -> None:
    folders = {path.name for path in FOLDERS.iterdir() if path.is_dir()}
    assert folders - set(PROBLEM_KINDS) == set()


def test_each_kind_of_problem_has_a_title_of_its_own() -> None:
    assert len({kind.title for kind in PROBLEM_KINDS.values()}) == len(PROBLEM_KINDS)


def plan_of(kind: str, folder: Path) -> Path:
    """A copy of the plan that provokes a kind; no folder where the kind needs none."""
    plan = folder / "plan"
    if (FOLDERS / kind / "plan").is_dir():
        shutil.copytree(FOLDERS / kind / "plan", plan)
        if kind in PROVOKED_BY:
            PROVOKED_BY[kind](plan)
    return plan


def run_of(kind: str, plan: Path) -> CompletedProcess[str]:
    """The run that provokes a kind."""
    (line,) = (FOLDERS / kind / "command.txt").read_text("utf-8").splitlines()
    words = (word.replace("{plan}", str(plan)) for word in shlex.split(line))
    return planner(*words, environment=environment_of(kind, plan))


def environment_of(kind: str, plan: Path) -> list[tuple[str, str]]:
    """What the run that provokes a kind is told by its environment, NAME=VALUE a line."""
    file = FOLDERS / kind / "environment.txt"
    lines = file.read_text("utf-8").splitlines() if file.exists() else []
    pairs = (line.replace("{plan}", str(plan)).partition("=") for line in lines)
    return [(name, value) for name, _, value in pairs]


def told(result: CompletedProcess[str], plan: Path) -> str:
    """What a run said, wherever the plan lay."""
    return result.stderr.replace(str(plan), "{plan}")


def renew() -> None:
    """Write down what is told now, kind by kind."""
    for kind in sorted(path.name for path in FOLDERS.iterdir()):
        with tempfile.TemporaryDirectory() as folder:
            plan = plan_of(kind, Path(folder))
            text = told(run_of(kind, plan), plan)
        (FOLDERS / kind / "expected.txt").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    renew()
