"""A table of the grower's file, asked statement by statement.

Each question either gives a value or adds a problem and gives None; what was never asked for
is an unknown word. So one run gathers every problem of a file.
"""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from typing import Any, TypeVar

from planner.reading.near_miss import nearest_word
from planner.reading.toml_text import Path, TomlText
from planner.reading.value_kind import kind_words, quoted, rewritten
from planner.terms import (
    Dimension,
    MonthDay,
    Place,
    Problem,
    Quantity,
    QuantityRange,
    Source,
    read_month_day,
    read_range,
)

T = TypeVar("T")

_HUGE = 10**15


class TomlTable:
    """One table: `what` names it where a message begins ("A bed")."""

    def __init__(
        self, text: TomlText, path: Path, values: dict[str, Any], what: str, problems: list[Problem]
    ) -> None:
        self.what = what
        self._text = text
        self._path = path
        self._values = values
        self._problems = problems
        self._asked: set[str] = set()
        self.has_problems = False

    def __contains__(self, key: str) -> bool:
        self._asked.add(key)
        return key in self._values

    @property
    def keys(self) -> tuple[str, ...]:
        """Every word stated here."""
        return tuple(self._values)

    def place(self, *path: str | int) -> Place:
        """Where a statement of this table stands."""
        return self._text.place((*self._path, *path))

    def source(self, *path: str | int) -> Source:
        """The grower's own words as the source of a figure."""
        return Source("plan", self.place(*path))

    def report(self, kind: str, path: str | tuple[str | int, ...], wrong: str, remedy: str) -> None:
        """Add a problem at a statement; an empty path means the table itself."""
        where = (path,) if isinstance(path, str) else path
        if path == "" and "" not in self._values:
            where = ()
        self.has_problems = True
        self._problems.append(Problem(kind, self.place(*where), wrong, remedy))

    def need(self, key: str, example: str) -> bool:
        """Whether a statement is there; a problem when it is not."""
        if key in self:
            return True
        self.report("missing-key", "", f'{self.what} needs "{key}".', f"add a line: {example}")
        return False

    def _typed(self, key: str, kind: type[T], example: str, remedy: str = "") -> T | None:
        """A value of a kind; else how to write it, or the `remedy` where no example fits."""
        if key not in self:
            return None
        value = self._values[key]
        if kind is float and isinstance(value, int) and not isinstance(value, bool):
            value = float(max(-_HUGE, min(_HUGE, value)))
        right = isinstance(value, kind) and (kind is bool or not isinstance(value, bool | datetime))
        if right:
            return value  # type: ignore[no-any-return] # checked the line above
        meant = rewritten(value, kind)
        if meant is not None or not remedy:
            remedy = f"write it like: {key} = {meant or example}"
        self.report("wrong-type", key, f'"{key}" must be {kind_words(kind)}.', remedy)
        return None

    def text(self, key: str, example: str = "") -> str | None:
        """A text statement; `example` shows one where not just any text can be right."""
        value = self._typed(key, str, example or quoted(self._values.get(key)))
        if value is not None and not value.strip():
            self.report("missing-key", key, f'"{key}" is empty.', "write something there.")
            return None
        return value.strip() if value is not None else None

    def number(self, key: str, low: float, high: float) -> float | None:
        """A number between two bounds."""
        value = self._typed(key, float, "", f"write a number from {low:g} to {high:g}.")
        if value is not None and not low <= value <= high:
            self.report(
                "out-of-range",
                key,
                f'"{key}" is {value:g}; it must lie between {low:g} and {high:g}.',
                "correct the number.",
            )
            return None
        return value

    def whole_number(self, key: str, low: int, high: int) -> int | None:
        """A whole number between two bounds."""
        remedy = f"write a whole number from {low} to {high}."
        if self._typed(key, int, "", remedy) is None:
            return None
        value = self.number(key, low, high)
        return None if value is None else int(value)

    def day(self, key: str) -> date | None:
        """A date."""
        return self._typed(key, date, "2027-05-01")

    def month_day(self, key: str) -> MonthDay | None:
        """A month-day such as "03-28"."""
        written = self.text(key, '"03-28"')
        if written is None:
            return None
        day = read_month_day(written)
        if day is None:
            self.report(
                "bad-month-day",
                key,
                f'"{written}" is not a day of the year.',
                'write month-day, such as "03-28" for 28 March.',
            )
        return day

    def yes_or_no(self, key: str) -> bool | None:
        """True or false."""
        return self._typed(key, bool, "false")

    def choice(self, key: str, choices: Iterable[str]) -> str | None:
        """One of a few words."""
        options = list(choices)
        written = self.text(key, f'"{options[0]}"')
        if written is None:
            return None
        spellings = {option.casefold(): option for option in options}
        if written.casefold() in spellings:
            return spellings[written.casefold()]
        near = nearest_word(written, options)
        self.report(
            "not-a-choice",
            key,
            f'"{key}" cannot be "{written}".',
            f'write "{near}".' if near else f"write one of: {', '.join(options)}.",
        )
        return None

    def range(self, key: str, dimension: Dimension | None, example: str) -> QuantityRange | None:
        """A quantity or a range of one dimension, above zero; None stands for any dimension."""
        span = self.range_from_zero(key, dimension, example)
        if span is not None and span.low <= 0 and dimension is not Dimension.TEMPERATURE:
            wrong = f'"{self.text(key)}" is not above zero.'
            self.report("out-of-range", key, wrong, "correct the number.")
            return None
        return span

    def range_from_zero(
        self, key: str, dimension: Dimension | None, example: str
    ) -> QuantityRange | None:
        """A quantity or a range of one dimension that may be zero, or below for a temperature."""
        written = self.text(key, f'"{example}"')
        if written is None:
            return None
        span = read_range(written)
        if span is not None and span.low < 0 and dimension is not Dimension.TEMPERATURE:
            self.report("out-of-range", key, f'"{written}" is below zero.', "correct the number.")
            return None
        if span is None:
            self.report(
                "bad-quantity",
                key,
                f'"{written}" is not an amount with a unit.',
                f'write it like "{example}".',
            )
            return None
        if dimension is not None and span.unit.dimension is not dimension:
            self.report(
                "wrong-unit",
                key,
                f'"{key}" is {dimension.value}; "{span.unit.name}" is {span.unit.dimension.value}.',
                f'write it like "{example}".',
            )
            return None
        return span

    def quantity(self, key: str, dimension: Dimension | None, example: str) -> Quantity | None:
        """One quantity of one dimension, above zero."""
        return self._single(key, self.range(key, dimension, example), example)

    def quantity_from_zero(
        self, key: str, dimension: Dimension | None, example: str
    ) -> Quantity | None:
        """One quantity of one dimension that may be zero."""
        return self._single(key, self.range_from_zero(key, dimension, example), example)

    def _single(self, key: str, span: QuantityRange | None, example: str) -> Quantity | None:
        if span is None:
            return None
        if span.low != span.high:
            self.report(
                "bad-quantity", key, f'"{key}" is one amount, not a range.', f'write "{example}".'
            )
            return None
        return Quantity(span.low, span.unit)

    def items(self, key: str, remedy: str) -> list[Any] | None:
        """A list; None when it is not there or not a list."""
        return self._typed(key, list, "", remedy)

    def parts(self, key: str, what: str, remedy: str) -> "list[TomlTable]":
        """The tables under headings in double brackets; a problem when there is none."""
        found = self.parts_if_any(key, what)
        if not found and self._values.get(key, []) == []:
            self.report("empty-season", "", f"The plan has no {key}.", remedy)
        return found

    def parts_if_any(self, key: str, what: str) -> "list[TomlTable]":
        """The tables under headings in double brackets."""
        written = self._values.get(key, []) if key in self else []
        if isinstance(written, list) and all(isinstance(one, dict) for one in written):
            return list(self.tables(key, what, ""))
        wrong = f"{what} stands under a heading in double brackets."
        self.report("wrong-type", key, wrong, f"write the line [[{key}]] above what belongs to it.")
        return []

    def table(self, key: str, what: str, example: str = "") -> "TomlTable | None":
        """A table within this one, under a heading unless an `example` shows it on one line."""
        if key in self and not example and not isinstance(self._values[key], dict):
            heading = ".".join((*map(str, self._path), key))
            wrong = f"{what} stands under a heading in brackets."
            remedy = f"write the line [{heading}] above what belongs to it."
            self.report("wrong-type", key, wrong, remedy)
            return None
        values = self._typed(key, dict, example)
        if values is None:
            return None
        return TomlTable(self._text, (*self._path, key), values, what, self._problems)

    def tables(self, key: str, what: str, example: str) -> Iterator["TomlTable"]:
        """Each table of a list of tables; `example` shows one."""
        remedy = f"write it like: {key} = [{example}]"
        for index, values in enumerate(self.items(key, remedy) or []):
            if isinstance(values, dict):
                path = (*self._path, key, index)
                yield TomlTable(self._text, path, values, what, self._problems)
            else:
                wrong = f"{what} is {kind_words(dict)}."
                self.report("wrong-type", (key, index), wrong, f"write it like: {example}")

    def refuse_unknown(self) -> None:
        """A problem for every word that nobody asked for."""
        for key in self._values:
            if key in self._asked:
                continue
            near = nearest_word(key, self._asked - set(self._values)) or nearest_word(
                key, self._asked
            )
            known = ", ".join(sorted(self._asked))
            self.report(
                "unknown-key",
                key,
                f'{self.what} has no "{key}".',
                f'write "{near}".' if near else f"it may have: {known}.",
            )
