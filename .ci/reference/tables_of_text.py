"""Tables of a page, and links from a figure to where it is from."""

import re
from collections.abc import Iterable, Iterator, Sequence


def rows(head: Sequence[str], cells: Iterable[Sequence[str]]) -> Iterator[str]:
    """A table, line by line; a bar in a cell is kept from ending it."""
    yield f"| {' | '.join(head)} |"
    yield f"|{'---|' * len(head)}"
    for one in cells:
        yield f"| {' | '.join(cell.replace('|', chr(92) + '|') for cell in one)} |"


def source_anchor(key: str) -> str:
    """The name under which a page can point at a work in the bibliography."""
    return re.sub(r"[^a-z0-9]+", "-", key.casefold()).strip("-")


def source_link(key: str) -> str:
    """A key that leads to its work; what is from memory says so."""
    return key if key == "memory" else f"[{key}](bibliography.md#{source_anchor(key)})"
