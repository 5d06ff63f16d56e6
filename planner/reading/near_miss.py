"""Near misses: names that differ in nothing that matters, and the word a misspelt one meant."""

from collections.abc import Iterable
from difflib import get_close_matches

# Two letters in the wrong order in a word of four are still it; another word is not.
_LIKE = 0.75


def folded(name: str) -> str:
    """A name as it is looked up: capitals and spaces do not make two names different."""
    return " ".join(name.casefold().split())


def nearest_word(word: str, known: Iterable[str]) -> str | None:
    """The known word most like `word`; None when none is like it."""
    spellings = {one.casefold(): one for one in known}
    close = get_close_matches(word.casefold(), spellings, n=1, cutoff=_LIKE)
    return spellings[close[0]] if close else None
