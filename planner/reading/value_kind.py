"""Kinds of value in a plan, and what to tell a grower who wrote one as another.

Most often quotes were put where none belong, or left out: then the grower's own value is shown as
it is to be written.
"""

import math
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

_WORDS: dict[type, str] = {
    str: "text in quotes",
    float: "a number without quotes",
    int: "a whole number without quotes",
    bool: "true or false, without quotes",
    date: "a date without quotes",
    list: "a list in square brackets",
    dict: "a table in curly brackets",
}


def kind_words(kind: type) -> str:
    """What values of a kind are called, such as "a date without quotes"."""
    return _WORDS[kind]


def quoted(value: Any) -> str:
    """A number or date in quotes, as it is where any text can stand; else an example of a text."""
    is_bare = isinstance(value, int | float | date) and not isinstance(value, bool)
    return f'"{value}"' if is_bare else '"North 1"'


def rewritten(value: Any, kind: type) -> str | None:
    """The grower's value as one of another kind, in TOML; None where it cannot be one."""
    if kind is date and isinstance(value, datetime):
        return str(value.date())
    read = _READ.get(kind) if isinstance(value, str) else None
    try:
        return read(value.strip()) if read else None
    except (KeyError, ValueError):
        return None


def _number(written: str) -> str:
    number = float(written)
    if not math.isfinite(number):
        raise ValueError
    return str(number).removesuffix(".0")


_TRUTHS = {"true": "true", "yes": "true", "false": "false", "no": "false"}
_READ: dict[type, Callable[[str], str]] = {
    bool: lambda written: _TRUTHS[written.casefold()],
    date: lambda written: str(date.fromisoformat(written)),
    float: _number,
    int: lambda written: str(int(written)),
}
