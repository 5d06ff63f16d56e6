"""SVG as text: elements, numbers, and words that any XML reader takes (SVG 1.1, XML 1.0)."""

import re
from xml.sax.saxutils import escape, quoteattr

# What XML 1.0 (production 2, Char) does not allow in a document.
_FORBIDDEN = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
INK = "#222222"
FAINT_INK = "#595959"
PAPER = "#ffffff"


def tag(name: str, *inside: str, **attributes: str | float) -> str:
    """An element; `data_from` is written data-from, `class_` class. `inside` is SVG already."""
    told = "".join(
        f" {key.rstrip('_').replace('_', '-')}={quoteattr(_value(value))}"
        for key, value in attributes.items()
    )
    return f"<{name}{told}>{''.join(inside)}</{name}>" if inside else f"<{name}{told}/>"


def _value(value: str | float) -> str:
    return clean(value) if isinstance(value, str) else number(value)


def number(value: float) -> str:
    """A number to a hundredth, as short as it can be written."""
    told = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if told == "-0" else told


def clean(text: str) -> str:
    """Text in one line, without what XML forbids."""
    return " ".join(_FORBIDDEN.sub("", text).split())


def words(text: str) -> str:
    """Text as it stands between two tags."""
    return escape(clean(text))


def text_line(x: float, y: float, text: str, size: float, **attributes: str | float) -> str:
    """A line of text whose foot stands at `y`; starts at `x` unless `text_anchor` says else."""
    return tag("text", words(text), x=x, y=y, font_size=size, **{"fill": INK, **attributes})


def rectangle(x: float, y: float, width: float, height: float, **attributes: str | float) -> str:
    """An upright rectangle."""
    return tag("rect", x=x, y=y, width=width, height=height, **attributes)


def line(x1: float, y1: float, x2: float, y2: float, **attributes: str | float) -> str:
    """A straight line, in ink unless `stroke` says else."""
    return tag("line", x1=x1, y1=y1, x2=x2, y2=y2, **{"stroke": INK, **attributes})


def named(name: str, text: str, **attributes: str) -> str:
    """A title or desc element, the text alternative of what it stands in."""
    return tag(name, words(text), **attributes)
