"""Paragraphs, folded to the width of a screen; what goes on over a line's end is set in."""

import textwrap
from collections.abc import Iterable, Sequence

_LEAST_WIDTH = 40


def paragraph(text: str, width: int, indent: str = "") -> str:
    """A text in lines of at most `width` columns, and never less than 40."""
    return textwrap.fill(
        text,
        max(_LEAST_WIDTH, width),
        initial_indent=indent,
        subsequent_indent=f"{indent}  ",
    )


def paragraphs(texts: Iterable[str], width: int, indent: str = "") -> str:
    """Texts one below the other."""
    return "\n".join(paragraph(one, width, indent) for one in texts)


def headed(lines: Sequence[str], width: int) -> str:
    """A first text, and below it the others set in."""
    head, *others = lines
    below = [paragraphs(others, width, "  ")] if others else []
    return "\n".join([paragraph(head, width), *below])
