"""The key under a picture: what its hatches and signs stand for."""

from collections.abc import Iterable
from dataclasses import dataclass

from planner.pictures.lettering import USUAL, text_width
from planner.pictures.svg import tag, text_line

SWATCH_WIDTH = 26.0
SWATCH_HEIGHT = 13.0
_ROW_PX = 20.0
_APART_PX = 18.0


@dataclass(frozen=True, slots=True)
class Foot:
    """What stands below a picture, as drawn, and how tall it came out, px."""

    drawn: str
    height: float


def key(items: Iterable[tuple[str, str]], left: float, top: float, right: float) -> Foot:
    """Swatches (SVG drawn from 0, 0) with their words, in rows between left and right."""
    drawn = []
    x, y = left, top
    for swatch, words in items:
        width = SWATCH_WIDTH + 6 + text_width(words, USUAL)
        if x > left and x + width > right:
            x, y = left, y + _ROW_PX
        drawn.append(tag("g", swatch, transform=f"translate({x:.2f} {y:.2f})"))
        drawn.append(text_line(x + SWATCH_WIDTH + 6, y + 10, words, USUAL))
        x += width + _APART_PX
    return Foot("".join(drawn), y + _ROW_PX - top)
