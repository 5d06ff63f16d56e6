"""JSON Schemas of garden.toml and crops.toml, as the object that TOML parses to."""

import tomllib
from collections.abc import Callable, Mapping
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

from planner.almanac import FIGURE_KINDS, FigureKind
from planner.terms import Dimension
from reference.key_note import KeyNote, TableNote
from reference.plan_notes import CROPS, GARDEN, NOTES
from reference.questions import AskedTable, Question, TablePath, questions_of
from reference.shapes import (
    HARVEST,
    Schema,
    count,
    day,
    many,
    month_day,
    number,
    quantity,
    text,
    whole,
    word,
    yes_or_no,
)

_HERE = Path(__file__).parent
EVERY_KEY = (_HERE / "every_key.toml").read_text(encoding="utf-8")
# Words the reader looks for only to say why they cannot stand.
REFUSED = {"zone", "hardiness_zone", "usda_zone", "climate_zone"}
_RECORD = "date,low,high\n2020-01-01,30,40\n"
_SIGNS = {"quantity": "above zero", "range": "above zero"}


def example_of(kind: FigureKind) -> str:
    """A figure as crops.toml may state it."""
    return kind.choices[0] if kind.choices else kind.example


@cache
def asked() -> dict[TablePath, AskedTable]:
    """All that is asked of plans; a word that nobody explains here, or nobody asks for, is told."""
    figures = "\n".join(f'{name} = "{example_of(kind)}"' for name, kind in FIGURE_KINDS.items())
    crops = f'[crop.mine]\nlike = "radish"\nlabel = "Mine"\n{figures}\n'
    site = EVERY_KEY.index("last_spring_freeze"), EVERY_KEY.index("paper =")
    elsewhere = 'station = "USC00381770"\nweather = "weather.csv"\nweather_unit = "degF"\n'
    other_site = EVERY_KEY[: site[0]] + elsewhere + EVERY_KEY[site[1] :]
    heard = questions_of([(EVERY_KEY, crops, ""), (other_site, crops, _RECORD)])
    if heard.keys() != NOTES.keys():
        message = f"tables that are asked for and those explained differ: {heard.keys()}"
        raise LookupError(message)
    for path, table in heard.items():
        _compare(path, table)
    return heard


def _compare(path: TablePath, table: AskedTable) -> None:
    explained = set(NOTES[path].keys)
    if explained == {"*"}:
        return
    if path == (CROPS, "crop", "*"):
        explained |= set(FIGURE_KINDS)
    if table.known - REFUSED != explained or table.questions.keys() != explained:
        differ = (table.known - REFUSED) ^ explained | (table.questions.keys() ^ explained)
        message = f"{path}: asked for but not explained and stated here, or the other way: {differ}"
        raise LookupError(message)


def garden_schema() -> Schema:
    """What garden.toml may say."""
    about = (
        "garden.toml, as the object that TOML parses to, with days as text (2027-05-01). "
        "It sees shape: keys, types, bounds of numbers, units, and which keys go together. It "
        "cannot see how large a quantity is, whether a crop, a bed or a station is known, or "
        "whether days are in order; planner check does."
    )
    return whole("A plan", about, "garden.toml.schema.json", _table((GARDEN,)))


def crops_schema() -> Schema:
    """What crops.toml may say."""
    about = (
        "crops.toml, as the object that TOML parses to: crops of the grower's own, and figures "
        "known better than the almanac's. It cannot see how large a quantity is, nor whether "
        "temperatures are in order; planner check does."
    )
    return whole("Crops of one's own", about, "crops.toml.schema.json", _table((CROPS,)))


def _table(path: TablePath) -> Schema:
    note, table = NOTES[path], asked()[path]
    if set(note.keys) == {"*"}:
        return _open_table(path, note, table)
    order = [*note.keys, *(key for key in table.questions if key not in note.keys)]
    keys = {key: _key(path, key) for key in order}
    schema: Schema = {"type": "object", "additionalProperties": False}
    if needed := needed_in(path):
        schema["required"] = [key for key in order if key in needed]
    schema["properties"] = keys
    if len(note.rules) > 1:
        schema["allOf"] = list(note.rules)
    return schema | (note.rules[0] if len(note.rules) == 1 else {})


def needed_in(path: TablePath) -> set[str]:
    """The keys that every table of this kind must have."""
    table = asked()[path]
    return table.needed | {key for key, one in table.questions.items() if one.verb == "parts"}


def _open_table(path: TablePath, note: TableNote, table: AskedTable) -> Schema:
    """A table whose keys are names that the grower gives."""
    one = next(iter(table.questions.values()))
    inner = _table((*path, "*")) if one.verb == "table" else written(one, note.keys["*"])
    named: Schema = {"type": "object", "propertyNames": {"pattern": r"\S"}}
    least = {} if one.verb == "table" else {"minProperties": 1}
    return named | least | {"additionalProperties": inner}


def _key(path: TablePath, key: str) -> Schema:
    kind = FIGURE_KINDS.get(key) if path == (CROPS, "crop", "*") else None
    if kind is not None:
        about = f"{kind.meaning[0].upper()}{kind.meaning[1:]}."
        return {"description": about, **figure_schema(kind), "examples": [example_of(kind)]}
    note, question = NOTES[path].keys[key], asked()[path].questions[key]
    usual: Schema = {"default": _plain(note.usual)} if note.usual else {}
    if question.verb in {"parts", "parts_if_any", "tables"}:
        least = {"minItems": 1} if question.verb == "parts" else {}
        return many(note.about, _table((*path, key)), **least) | usual
    if question.verb == "table":
        return {"description": note.about, **_table((*path, key))}
    example = examples().get((*path, key))
    shown = {} if example is None else {"examples": [example]}
    return {"description": note.about, **written(question, note), **usual, **shown}


def written(question: Question, note: KeyNote) -> Schema:
    """How a value is written, as the reader asks for it or as its note knows better."""
    if note.schema:
        return note.schema
    if question.verb in {"quantity", "quantity_from_zero"}:
        return _quantity(question.dimension, question.verb)
    bounds = (question.low, question.high)
    shapes: dict[str, Callable[[], Schema]] = {
        "text": text,
        "number": lambda: number("", *bounds),
        "whole_number": lambda: count("", *bounds),
        "day": day,
        "month_day": month_day,
        "yes_or_no": yes_or_no,
        "choice": lambda: word("", question.choices),
    }
    return shapes[question.verb]()


def _quantity(dimension: Dimension | None, verb: str) -> Schema:
    dimensions = HARVEST if dimension is None else (dimension,)
    return quantity(dimensions, _SIGNS.get(verb, "from zero"), is_range=False)


def figure_schema(kind: FigureKind) -> Schema:
    """How a figure of a crop is written."""
    if kind.choices:
        return word("", kind.choices)
    if kind.dimension is None and not kind.harvest:
        return text()
    dimensions = HARVEST if kind.dimension is None else (kind.dimension,)
    sign = "from zero" if kind.may_be_zero else "above zero"
    sign = "any" if kind.dimension is Dimension.TEMPERATURE else sign
    return quantity(dimensions, sign, is_range=True)


@cache
def examples() -> Mapping[TablePath, Any]:
    """What every_key.toml says under each key, by its path."""
    return dict(_walk((GARDEN,), tomllib.loads(EVERY_KEY)))


def _walk(path: TablePath, value: Any) -> list[tuple[TablePath, Any]]:
    if isinstance(value, dict):
        return [one for key, inner in value.items() for one in _walk((*path, key), inner)]
    if isinstance(value, list) and value and isinstance(value[0], dict):
        return [one for inner in reversed(value) for one in _walk(path, inner)]
    return [(path, _json(value))]


def _plain(usual: str) -> Any:
    return _json(tomllib.loads(f"usual = {usual}")["usual"])


def _json(value: Any) -> Any:
    return value.isoformat() if isinstance(value, date) else value
