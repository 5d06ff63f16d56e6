"""File names made of the grower's words, safe on every system and each but once."""

import re
import unicodedata
from collections.abc import Iterable

_LONGEST = 48
_NOT_PLAIN = re.compile("[^a-z0-9]+")


def file_names(words: Iterable[str], instead: str) -> list[str]:
    """A name for each of the words: small letters, digits and hyphens, no two the same.

    `instead` is the name of what has no letter or digit that can be told in them.
    """
    names: list[str] = []
    for one in words:
        plain = _plain(one) or instead
        name, number = plain, 2
        while name in names:
            name, number = f"{plain}-{number}", number + 1
        names.append(name)
    return names


def _plain(words: str) -> str:
    letters = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().lower()
    return _NOT_PLAIN.sub("-", letters)[:_LONGEST].strip("-")
