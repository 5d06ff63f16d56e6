"""A plan that states nearly every key, as values to change and as the text of a file."""

import copy
import json
import tomllib
from collections.abc import Iterator
from datetime import date
from pathlib import Path as FilePath
from typing import Any

from planner.almanac import FIGURE_KINDS
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Problem
from tests.reference.schemas import DOCS, schema_in

Path = tuple[str | int, ...]
_FILES_PAGE = (DOCS / "files.md").read_text(encoding="utf-8")
# The plan shown in files.md.
EVERY_KEY: str = _FILES_PAGE.split("```toml\n", maxsplit=1)[1].split("```", maxsplit=1)[0]

# crops.toml with every figure a crop can have.
EVERY_FIGURE: str = "".join(
    [
        '[crop.mine]\nlike = "radish"\nlabel = "Mine"\n',
        *(
            f'{name} = "{kind.choices[0] if kind.choices else kind.example}"\n'
            for name, kind in FIGURE_KINDS.items()
        ),
    ]
)


def problems_of(garden: str, crops: str = "") -> tuple[Problem, ...]:
    """What the reader finds wrong in a plan."""
    own = PlanFile("crops.toml", crops.encode()) if crops else None
    read = read_garden(PlanFiles(PlanFile("garden.toml", garden.encode()), own))
    return () if isinstance(read, Garden) else read


def every_key() -> dict[str, Any]:
    """The plan as values."""
    return tomllib.loads(EVERY_KEY)


def leaves(value: Any, path: Path = ()) -> Iterator[Path]:
    """Where each statement of a plan stands; a list of values is one statement."""
    if isinstance(value, dict):
        for key, one in value.items():
            yield from leaves(one, (*path, key))
    elif isinstance(value, list) and value and isinstance(value[0], dict):
        for number, one in enumerate(value):
            yield from leaves(one, (*path, number))
    else:
        yield path


def with_value(plan: dict[str, Any], path: Path, value: Any) -> dict[str, Any]:
    """The plan with one statement changed or added."""
    changed = copy.deepcopy(plan)
    _around(changed, path)[path[-1]] = value
    return changed


def without(plan: dict[str, Any], path: Path) -> dict[str, Any]:
    """The plan with one statement taken out."""
    changed = copy.deepcopy(plan)
    _around(changed, path).pop(path[-1], None)
    return changed


def _around(plan: Any, path: Path) -> Any:
    for word in path[:-1]:
        plan = plan[word]
    return plan


def toml_text(plan: dict[str, Any]) -> str:
    """A plan as a file says it."""
    return "".join(f"{_word(key)} = {_written(value)}\n" for key, value in plan.items())


def _written(value: Any) -> str:
    if isinstance(value, dict):
        return (
            "{ " + ", ".join(f"{_word(key)} = {_written(one)}" for key, one in value.items()) + " }"
        )
    if isinstance(value, list):
        return f"[{', '.join(map(_written, value))}]"
    if isinstance(value, date):
        return value.isoformat()
    return json.dumps(value, ensure_ascii=False)


def _word(key: str) -> str:
    return json.dumps(key, ensure_ascii=False)


def tables_in(file: FilePath) -> dict[Path, dict[str, Any]]:
    """Each table of a schema that has keys of its own, with them."""
    return dict(_tables(schema_in(file), ()))


def _tables(part: dict[str, Any], path: Path) -> Iterator[tuple[Path, dict[str, Any]]]:
    if "items" in part:
        yield from _tables(part["items"], (*path, 0))
    if isinstance(part.get("additionalProperties"), dict):
        yield from _tables(part["additionalProperties"], (*path, "mine"))
    if "properties" in part:
        yield path, part["properties"]
        for key, one in part["properties"].items():
            yield from _tables(one, (*path, key))
