"""What is given away: a source archive and a wheel, built, installed and run outside the checkout.

Modules that later versions of Python removed: PEP 594 and PEP 632, and "What's New In Python"
3.12 and 3.13, section Removed.
"""

import ast
import io
import os
import subprocess
import sys
import tarfile
import tomllib
import warnings
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "planner"
MODULES = sorted([*PACKAGE.rglob("*.py"), *(ROOT / "tests").rglob("*.py")])
_REMOVED = {
    "aifc", "asynchat", "asyncore", "audioop", "cgi", "cgitb", "chunk", "crypt", "distutils",
    "imghdr", "imp", "lib2to3", "mailcap", "msilib", "nis", "nntplib", "ossaudiodev", "pipes",
    "pkg_resources", "smtpd", "sndhdr", "spwd", "sunau", "telnetlib", "uu", "xdrlib",
}  # fmt: skip
# Deprecated since 3.12.
_DEPRECATED = {"utcnow", "utcfromtimestamp"}
START = (
    "--name", "Quay garden", "--latitude", "47.6", "--last-spring-freeze", "28 March",
    "--first-fall-freeze", "9 November", "--from", "2027-02-01", "--to", "2027-12-31",
    "--bed", "North 1: 8 ft x 4 ft, 15 in deep, full", "--want", "radish: 12 roots",
)  # fmt: skip


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A source archive, and the wheel that is built from it, as whoever gives it away does."""
    place = tmp_path_factory.mktemp("built")
    command = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(place), str(ROOT)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return place


def _only(place: Path, pattern: str) -> Path:
    (found,) = place.glob(pattern)
    return found


def _wheel_files(wheel: Path | io.BytesIO) -> dict[str, bytes]:
    with zipfile.ZipFile(wheel) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def _kept(folder: Path) -> set[str]:
    """Files of the package that are part of the project, by their path below the checkout."""
    listed = subprocess.run(
        ["git", "ls-files", str(folder)], cwd=ROOT, capture_output=True, text=True, check=False
    )
    return set(listed.stdout.split("\n")) - {""}


def test_the_wheel_holds_every_module_and_every_file_of_figures(built: Path) -> None:
    held = {name for name in _wheel_files(_only(built, "*.whl")) if name.startswith("planner/")}
    on_disk = {
        str(path.relative_to(ROOT))
        for path in PACKAGE.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert "planner/almanac/data/crops.csv" in held
    assert held == on_disk


def test_the_source_archive_holds_the_tests_and_what_they_read(built: Path) -> None:
    with tarfile.open(_only(built, "*.tar.gz")) as archive:
        held = {name.split("/", 1)[1] for name in archive.getnames() if "/" in name}
    for name in ("README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", ".ci/check"):
        assert name in held
    for folder in ("planner", "tests", "sample_plans", "docs"):
        missing = {one for one in _kept(ROOT / folder) if (ROOT / one).exists()} - held
        assert missing == set()


def test_the_source_archive_builds_the_wheel_of_the_checkout(built: Path, tmp_path: Path) -> None:
    command = [sys.executable, "-m", "build", "--no-isolation", "--wheel", str(ROOT)]
    subprocess.run([*command, "--outdir", str(tmp_path)], capture_output=True, check=True)
    assert _wheel_files(_only(built, "*.whl")) == _wheel_files(_only(tmp_path, "*.whl"))


def test_the_wheel_runs_in_an_empty_folder_outside_the_checkout(
    built: Path, tmp_path: Path
) -> None:
    home, folder = tmp_path / "installed", tmp_path / "empty"
    folder.mkdir()
    pip = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index"]
    wheel = _only(built, "*.whl")
    subprocess.run([*pip, "--target", str(home), str(wheel)], check=True, capture_output=True)

    def run(*words: str) -> str:
        done = subprocess.run(
            [str(home / "bin" / "planner"), *words],
            cwd=folder, capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL,
            env={**os.environ, "PYTHONPATH": str(home), "PYTHONWARNINGS": "error"},
        )  # fmt: skip
        assert (done.returncode, done.stderr) == (0, "")
        return done.stdout

    where = "import planner; print(planner.__file__)"
    found = subprocess.run(
        [sys.executable, "-c", where],
        cwd=folder, capture_output=True, text=True, check=True,
        env={**os.environ, "PYTHONPATH": str(home)},
    )  # fmt: skip
    assert found.stdout.startswith(str(home))
    run("start", "my-garden", *START)
    assert "Quay garden: 1 bed" in run("check", "my-garden")
    run("schedule", "my-garden", "--as-of", "2027-01-15", "--effort", "0")
    assert (folder / "my-garden" / "season" / "calendar.ics").exists()
    assert "days to emerge" in run("crops", "radish")
    module = [sys.executable, "-m", "planner", "--version"]
    named = subprocess.run(
        module, cwd=folder, capture_output=True, text=True, check=True,
        env={**os.environ, "PYTHONPATH": str(home)},
    )  # fmt: skip
    assert named.stdout == run("--version")


# Versions of Python


def test_the_versions_named_are_the_ones_required() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    named = {one.rsplit(" ", 1)[1] for one in project["classifiers"] if "Python :: 3." in one}
    assert named == {"3.11", "3.12", "3.13"}
    assert project["requires-python"] == ">=3.11"


def test_nothing_that_later_versions_removed_is_used() -> None:
    used = {path.relative_to(ROOT): words for path in MODULES if (words := _gone(path))}
    assert used == {}


def _gone(path: Path) -> set[str]:
    """What a module uses that later versions of Python have not, or warn of."""
    with warnings.catch_warnings():
        # An escape that is none warns in 3.11, and louder in each version since.
        warnings.simplefilter("error")
        tree = ast.parse(path.read_text("utf-8"), str(path))
    words = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            words |= {one.name.split(".")[0] for one in node.names} & _REMOVED
        elif isinstance(node, ast.ImportFrom):
            words |= {(node.module or "").split(".")[0]} & _REMOVED
        elif isinstance(node, ast.Attribute):
            words |= {node.attr} & _DEPRECATED
    return words
