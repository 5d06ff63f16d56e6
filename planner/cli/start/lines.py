"""A bed or a wish told on one line, as options have them and a practised hand writes them."""

import re

from planner.cli.start.answers import NewBed, NewWant
from planner.cli.start.words import read_amount, read_length, read_size, read_sun

BED_EXAMPLE = "North 1: 8 ft x 4 ft, 15 in deep, full"
WANT_EXAMPLE = "radish: 25 roots"
_NAMED = re.compile(r"\s*(?P<name>[^:]+?)\s*:\s*(?P<rest>.+)")


def read_bed_line(line: str) -> NewBed | None:
    """Read "North 1: 8 ft x 4 ft, 15 in deep, full"; without a last word the sun is full."""
    named = _NAMED.fullmatch(line)
    parts = [one.strip() for one in named["rest"].split(",")] if named else []
    if named is None or len(parts) not in {2, 3}:
        return None
    size, depth = read_size(parts[0]), read_length(parts[1])
    sun = read_sun(parts[2]) if len(parts) == 3 else "full"
    if size is None or depth is None or sun is None:
        return None
    return NewBed(named["name"], size, depth, sun)


def read_want_line(line: str) -> NewWant | None:
    """Read "radish: 25 roots"; None when it is no crop with an amount."""
    named = _NAMED.fullmatch(line)
    if named is None or read_amount(named["rest"]) is None:
        return None
    amount = re.sub(r"\s+\w+\s+week$", "", named["rest"].strip())
    return NewWant(named["name"].lower(), amount=amount)


def read_eaten(words: str, people: float) -> list[NewWant]:
    """Read "radish, lettuce and carrots": what so many people eat of each."""
    names = (one.strip().lower() for one in re.split(r"[,;\n]|\band\b", words))
    return [NewWant(name, people=people) for name in dict.fromkeys(names) if name]
