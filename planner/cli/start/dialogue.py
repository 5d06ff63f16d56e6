"""Asking on a terminal: a question is explained with ?, and left with < for the one before."""

import textwrap
from collections.abc import Callable
from typing import TypeVar

import typer

from planner.cli.screen import help_columns
from planner.cli.status import INTERRUPTED

T = TypeVar("T")

_BACK = {"<", "back"}
_MARK = "> "


class GoBack(Exception):  # noqa: N818 - no error: the grower wants the question before
    """The grower wants the question before."""


def say(text: str, indent: str = "") -> None:
    """Show text, each line of it folded to the width there is."""
    width = help_columns()
    for line in text.split("\n"):
        before = indent + " " * (len(line) - len(line.lstrip()))
        after = f"{before}   " if line[:1].isdigit() else before
        print(textwrap.fill(line.strip(), width, initial_indent=before, subsequent_indent=after))


def ask(
    question: str,
    read: Callable[[str], T | None],
    expected: str,
    *,
    usual: str | None = None,
    explained: str = "",
) -> T:
    """Ask until the answer can be read; `expected` says what is, `usual` is what Enter takes."""
    say(question)
    while True:
        words = _typed(usual, expected)
        if words == "?":
            say(explained or expected, "  ")
            continue
        value = read(words)
        if value is not None:
            return value
        say(f"That is not {expected}. Please try again, or ? for help.", "  ")


def _typed(usual: str | None, expected: str) -> str:
    """What was typed, or what Enter takes; GoBack when the question before is wanted."""
    shown = f"  [{usual}] {_MARK}" if usual else f"  {_MARK}"
    while True:
        words = "".join(one for one in _line(shown) if one.isprintable()).strip()
        if words.lower() in _BACK:
            raise GoBack
        if words or usual is not None:
            return words or usual or ""
        say(f"Please type {expected}; ? explains, < goes back.", "  ")


def _line(shown: str) -> str:
    """A line from the terminal; or leave, as after Ctrl-C, when nobody answers any more."""
    try:
        return input(shown)
    except EOFError:
        raise typer.Exit(INTERRUPTED) from None
