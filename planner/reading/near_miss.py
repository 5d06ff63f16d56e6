"""Near misses: names that differ in nothing that matters, and the word a misspelt one meant."""

from collections.abc import Iterable
from difflib import get_close_matches


def folded(name: str) -> str:
    """A name as it is looked up: capitals and spaces do not make two names different."""
    return " ".join(name.casefold().split())


def nearest_word(word: str, known: Iterable[str]) -> str | None:
    """The known word most like `word`; None when none is like it."""
    spellings = {one.casefold(): one for one in known}
    close = get_close_matches(word.casefold(), spellings, n=1, cutoff=0.6)
    return spellings[close[0]] if close else None
