"""Notes on the keys of a plan: sentences, usual values, and what must go together."""

from dataclasses import dataclass, field

from planner.almanac import usual_figures
from planner.terms import Dimension
from reference.shapes import Schema, many, quantity


@dataclass(frozen=True, slots=True)
class KeyNote:
    """A key: what it says; its usual value as TOML, or in words, and the source of that.

    `schema` and `form` tell how it is written where the reader's question does not say all of it.
    """

    about: str
    usual: str = ""
    usual_words: str = ""
    source: str = ""
    schema: Schema = field(default_factory=dict)
    form: str = ""


@dataclass(frozen=True, slots=True)
class TableNote:
    """A table of a plan: how it is headed, what it says, its keys, and what must go together."""

    heading: str
    about: str
    keys: dict[str, KeyNote]
    rules: tuple[Schema, ...] = ()
    rules_words: tuple[str, ...] = ()


def usual_number(about: str, table: str, figure: str) -> KeyNote:
    """A key that is a plain number, with the usual figure of a kind of bed work."""
    usual = usual_figures(table)[figure]
    return KeyNote(about, f"{usual.middle:g}", source=usual.source.key)


def usual_size(about: str, figure: str) -> KeyNote:
    """A key of soil work that is a size; of a range the low end is counted with."""
    usual = usual_figures("soil")[figure]
    return KeyNote(about, f'"{usual.low:g} {usual.unit}"', source=usual.source.key)


def twelve(dimension: Dimension, sign: str) -> Schema:
    """A value for each month."""
    one = quantity([dimension], sign, is_range=False)
    return many("", one, minItems=12, maxItems=12)


def none_of(*keys: str) -> Schema:
    """Where these keys have no place."""
    return {"properties": dict.fromkeys(keys, False)}


def both(one: str, other: str) -> Schema:
    """Two keys that go together."""
    return {"dependentRequired": {one: [other], other: [one]}}
