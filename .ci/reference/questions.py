"""What the reader asks of a plan: its questions, heard while it reads.

The reader asks a table statement by statement, so its questions are its list of keys, with types
and bounds. Here it reads a few plans that between them state every key, and is listened to.
"""

import functools
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from inspect import signature
from typing import Any

from planner.reading import PlanFile, PlanFiles, read_garden
from planner.reading.toml_table import TomlTable
from planner.terms import Dimension

TablePath = tuple[str, ...]

# From the most telling question to the least; a key may be asked for in two ways.
_VERBS = (
    "month_day", "choice", "yes_or_no", "whole_number", "number", "day", "quantity",
    "quantity_from_zero", "range", "range_from_zero", "parts", "parts_if_any", "tables", "table",
    "items", "text",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Question:
    """How one key is asked for; bounds are of numbers, and of the reader's own units."""

    verb: str
    low: float | None = None
    high: float | None = None
    choices: tuple[str, ...] = ()
    dimension: Dimension | None = None
    example: str = ""


@dataclass(slots=True)
class AskedTable:
    """All questions to the tables under one heading.

    `known` are all words the reader looks for, among them words it knows only to refuse them.
    `needed` are asked for as necessary in every such table, whatever else it says.
    """

    questions: dict[str, Question] = field(default_factory=dict)
    known: set[str] = field(default_factory=set)
    needed: set[str] = field(default_factory=set)


@dataclass(slots=True)
class _Heard:
    """What is heard so far; `needs` are kept for each single table."""

    tables: dict[TablePath, AskedTable] = field(default_factory=lambda: defaultdict(AskedTable))
    needs: dict[tuple[Any, ...], set[str]] = field(default_factory=lambda: defaultdict(set))
    plans: int = 0
    depth: int = 0

    def note(self, table: TomlTable, verb: str, asked: dict[str, Any]) -> None:
        """Write down a question, unless it was asked better before."""
        where = _heading(table)
        heard = self.tables[where]
        heard.known.add(asked["key"])
        single = (where, self.plans, table.place())
        self.needs[single] |= {asked["key"]} if verb == "need" else set()
        if verb not in _VERBS:
            return
        before = heard.questions.get(asked["key"])
        if before is None or _VERBS.index(verb) < _VERBS.index(before.verb):
            words = {"low", "high", "dimension", "example"} & asked.keys()
            known = {word: asked[word] for word in words}
            choices = tuple(str(one) for one in asked.get("choices", ()))
            heard.questions[asked["key"]] = Question(verb, choices=choices, **known)

    def found(self) -> dict[TablePath, AskedTable]:
        """Every table heard of, with what is necessary in all tables of its kind."""
        for where, heard in self.tables.items():
            needs = [keys for (place, *_), keys in self.needs.items() if place == where]
            heard.needed = set.intersection(*needs) if needs else set()
        return dict(self.tables)


def _heading(table: TomlTable) -> TablePath:
    """Its file and where in it; names and numbers that tell tables of one kind apart become `*`."""
    file, path = table.place().file, table._path  # noqa: SLF001 - a listener sits close
    words = tuple(one for one in path if isinstance(one, str))
    return (file, "crop", "*") if words[:1] == ("crop",) and len(words) == 2 else (file, *words)


@contextmanager
def _listening(heard: _Heard) -> Iterator[None]:
    """Every question any table is asked, as long as this lasts; those it asks itself left out."""
    kept = {verb: getattr(TomlTable, verb) for verb in (*_VERBS, "need", "__contains__")}
    try:
        for verb, method in kept.items():
            setattr(TomlTable, verb, _overheard(verb, method, heard))
        yield
    finally:
        for verb, method in kept.items():
            setattr(TomlTable, verb, method)


def _overheard(verb: str, method: Callable[..., Any], heard: _Heard) -> Callable[..., Any]:
    names = signature(method)

    @functools.wraps(method)
    def ask(*words: Any, **named: Any) -> Any:
        if heard.depth == 0:
            asked = names.bind(*words, **named).arguments
            heard.note(asked.pop("self"), verb, asked)
        heard.depth += 1
        try:
            return method(*words, **named)
        finally:
            heard.depth -= 1

    return ask


def questions_of(plans: Iterable[tuple[str, str, str]]) -> dict[TablePath, AskedTable]:
    """What is asked of plans, each given as garden.toml, crops.toml and a weather file."""
    heard = _Heard()
    with _listening(heard):
        for garden, crops, weather in plans:
            heard.plans += 1
            record = PlanFile("weather.csv", weather.encode())
            files = PlanFiles(
                PlanFile("garden.toml", garden.encode()),
                PlanFile("crops.toml", crops.encode()),
                lambda _, record=record: record,  # type: ignore[misc] # a default binds it
            )
            read_garden(files)
    return heard.found()
