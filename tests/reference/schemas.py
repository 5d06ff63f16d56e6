"""The schemas in docs/, and what in a value does not follow one."""

import json
import tomllib
from collections.abc import Iterator, Sequence
from datetime import date, datetime, time
from functools import cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

DOCS = Path(__file__).resolve().parent.parent.parent / "docs"
SEASON = DOCS / "season.schema.json"
GARDEN = DOCS / "schemas" / "garden.toml.schema.json"
CROPS = DOCS / "schemas" / "crops.toml.schema.json"
SCHEMA_FILES = (SEASON, *sorted((DOCS / "schemas").glob("*.schema.json")))


def printed_by(command: str) -> Path:
    """The schema of what a command prints with --json."""
    if command == "schedule":
        return SEASON
    return DOCS / "schemas" / f"planner-{command}.schema.json"


@cache
def schema_in(file: Path) -> dict[str, Any]:
    """A schema as it stands in a file."""
    read = json.loads(file.read_bytes())
    assert isinstance(read, dict)
    return read


@cache
def _validator(file: Path) -> Draft202012Validator:
    return Draft202012Validator(schema_in(file))


def faults(file: Path, value: Any) -> list[str]:
    """Where a value does not follow a schema, and why."""
    return [f"{one.json_path}: {one.message}" for one in _validator(file).iter_errors(value)]


def plan_faults(garden: str, crops: str = "") -> list[str]:
    """What the schemas find wrong in the text of a plan and of its crops."""
    return [
        *faults(GARDEN, as_json(tomllib.loads(garden))),
        *faults(CROPS, as_json(tomllib.loads(crops))),
    ]


def as_json(value: Any) -> Any:
    """A value of TOML as JSON can hold it: days as text, numbers JSON does not have as null."""
    if isinstance(value, dict):
        return {key: as_json(one) for key, one in value.items()}
    if isinstance(value, list):
        return [as_json(one) for one in value]
    if isinstance(value, date | datetime | time):
        return value.isoformat()
    return None if isinstance(value, float) and value - value != 0 else value


def printed_faults(arguments: Sequence[str], printed: str) -> list[str]:
    """What a run with --json printed, against the schema of its command."""
    if "--json" not in arguments or not printed:
        return []
    return faults(printed_by(arguments[0]), json.loads(printed))


def season_faults(plan: Path) -> list[str]:
    """What its schema finds wrong in the season of a plan folder, where there is one."""
    season = plan / "season" / "season.json"
    return faults(SEASON, json.loads(season.read_bytes())) if season.exists() else []


def unseen(file: Path, values: Sequence[Any]) -> set[str]:
    """Keys of a schema that none of these values have, each with where it stands."""
    schema = schema_in(file)
    wanted = set(_keys(schema, schema, ""))
    for value in values:
        wanted -= set(_keys_of(value, ""))
    return wanted


def _keys(part: Any, whole: dict[str, Any], where: str) -> Iterator[str]:
    if not isinstance(part, dict):
        return
    if "$ref" in part:
        name = part["$ref"].removeprefix("#/$defs/")
        yield from _keys(whole["$defs"][name], whole, where)
    for key, one in part.get("properties", {}).items():
        yield f"{where}.{key}"
        yield from _keys(one, whole, f"{where}.{key}")
    yield from _keys(part.get("items"), whole, f"{where}[]")
    for one in part.get("anyOf", ()):
        yield from _keys(one, whole, where)


def _keys_of(value: Any, where: str) -> Iterator[str]:
    if isinstance(value, dict):
        for key, one in value.items():
            yield f"{where}.{key}"
            yield from _keys_of(one, f"{where}.{key}")
    if isinstance(value, list):
        for one in value:
            yield from _keys_of(one, f"{where}[]")
