"""The frame every picture stands in, with its text alternative."""

from collections.abc import Sequence

from planner.pictures.lettering import BOLD, LARGE, USUAL, fitted
from planner.pictures.svg import PAPER, named, number, rectangle, tag, text_line

MARGIN = 16.0


def framed(
    prefix: str,
    told: tuple[str, str],
    size: tuple[float, float],
    marks: Sequence[str],
    *inside: str,
) -> str:
    """A whole SVG document of a size in px at natural size.

    `told` is its title and description; `marks` its definitions, whose ids begin with `prefix`,
    which no other picture of a page may have.
    """
    title, text = told
    width, height = size
    return (
        tag(
            "svg",
            named("title", title, id=f"{prefix}-title"),
            named("desc", text, id=f"{prefix}-desc"),
            tag("defs", *marks),
            rectangle(0, 0, width, height, fill=PAPER),
            *inside,
            xmlns="http://www.w3.org/2000/svg",
            role="img",
            aria_labelledby=f"{prefix}-title {prefix}-desc",
            viewBox=f"0 0 {number(width)} {number(height)}",
            width=width,
            height=height,
            font_family="sans-serif",
        )
        + "\n"
    )


def heading(text: str, below: str, width: float) -> str:
    """A picture's title and the line under it, at the top of a frame so wide."""
    room = width - 2 * MARGIN
    return text_line(
        MARGIN, 26, fitted(text, LARGE * BOLD, room), LARGE, font_weight="bold"
    ) + text_line(MARGIN, 42, fitted(below, USUAL, room), USUAL)
