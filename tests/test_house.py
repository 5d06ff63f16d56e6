"""The house keeps its own rules: rooms by their door, small modules, honest names."""

import ast
import re
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "planner"
MODULES = sorted(PACKAGE.rglob("*.py"))
LONGEST_LINES = 300
NAMES_WITHOUT_A_ROOM = {"utils", "helpers", "common", "misc", "base", "manager", "handler"}


def _imports(path: Path) -> list[str]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return [node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)] + [
        name.name for node in ast.walk(tree) if isinstance(node, ast.Import) for name in node.names
    ]


def _is_behind_a_door(name: str, path: Path) -> bool:
    """Whether a module lies in a room, or a room within one, that the importing file is not in."""
    rooms = (
        PACKAGE.parent.joinpath(*name.split(".")[:depth]) for depth in range(2, name.count(".") + 1)
    )
    return any(room not in path.parents for room in rooms)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_other_rooms_are_entered_by_their_door(path: Path) -> None:
    own = [name for name in _imports(path) if name.startswith("planner.")]
    assert [name for name in own if _is_behind_a_door(name, path)] == []


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_module_is_small_and_bears_the_name_of_a_noun(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) <= LONGEST_LINES
    assert path.stem not in NAMES_WITHOUT_A_ROOM


def test_the_top_level_holds_nothing_but_the_design_card() -> None:
    root = PACKAGE.parent
    allowed = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "LICENSE",
        "planner",
        "tests",
        "sample_plans",
        "docs",
    }
    # What a build or an editor leaves is not part of the project.
    found = {entry.name for entry in root.iterdir() if not entry.name.startswith(".")}
    assert found - {"dist", "build", "planner.egg-info"} == allowed


def test_every_rule_that_is_cited_is_written_down() -> None:
    rules = (PACKAGE.parent / "docs" / "rules.md").read_text(encoding="utf-8")
    written = set(re.findall(r"^\*\*§(\d+) ", rules, flags=re.MULTILINE))
    cited = {
        number
        for path in MODULES
        for number in re.findall(r"§(\d+)", path.read_text(encoding="utf-8"))
    }
    assert cited
    assert cited <= written
