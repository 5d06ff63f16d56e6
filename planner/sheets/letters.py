"""Letters: what the typefaces of the sheets can show, and what stands for all else."""

import csv
from functools import cache
from importlib.resources import files
from unicodedata import bidirectional, category, normalize

STAND_IN = "□"
# What is read from the right keeps to itself (Unicode Standard Annex 9, 2.4).
_ISOLATED, _ISOLATED_END = "\N{FIRST STRONG ISOLATE}", "\N{POP DIRECTIONAL ISOLATE}"
_FROM_RIGHT = {"R", "AL"}
_BREAK = "\N{ZERO WIDTH SPACE}"
_LONGEST_WORD = 16
# What shows nothing by itself. An accent that is no letter of its own with what stands before it
# is left out, because no typeface may have the two together.
_DROPPED = {"Cf", "Mn", "Mc", "Me"}


def shown(text: str, longest: int = 600) -> str:
    """Text as a sheet can show it, on one line.

    A letter that no typeface of ours has becomes a box. What is longer than `longest` letters is
    cut, with an ellipsis. Long words may break anywhere, so that none runs off the paper.
    """
    plain = " ".join(normalize("NFC", text).split())
    if len(plain) > longest:
        plain = f"{plain[: longest - 1]}…"
    words = " ".join(_breakable(word) for word in _letters(plain).split(" "))
    return f"{_ISOLATED}{words}{_ISOLATED_END}" if _is_from_right(words) else words


def has_stand_in(text: str) -> bool:
    """Whether a letter of a text is shown as a box."""
    return STAND_IN in shown(text)


def _is_from_right(text: str) -> bool:
    return any(bidirectional(letter) in _FROM_RIGHT for letter in text)


def _letters(text: str) -> str:
    known = _known()
    return "".join(
        letter if letter in known else "" if category(letter) in _DROPPED else STAND_IN
        for letter in text
    )


def _breakable(word: str) -> str:
    if len(word) <= _LONGEST_WORD:
        return word
    half = _LONGEST_WORD // 2
    return _BREAK.join(word[first : first + half] for first in range(0, len(word), half))


@cache
def _known() -> frozenset[str]:
    """Every letter that both weights of some typeface have."""
    table = files(__package__).joinpath("letters.csv").read_text("ascii")
    return frozenset(
        chr(number)
        for row in csv.DictReader(table.splitlines())
        for number in range(int(row["first"], 16), int(row["last"], 16) + 1)
    )
