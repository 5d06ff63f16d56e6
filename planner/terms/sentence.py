"""Counts and lists, as a sentence has them."""

from collections.abc import Sequence


def count_words(count: int, noun: str) -> str:
    """A count with its noun: "1 bed", "2 beds"."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def listed_words(words: Sequence[str]) -> str:
    """Words one after the other: "radish 1", "radish 1, beet 2 and beet 3"; empty for none."""
    *others, last = words or [""]
    return f"{', '.join(others)} and {last}" if others else last
