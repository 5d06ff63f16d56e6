"""Lettering: how wide words are, and what of them fits in a space.

The font is whatever the reader's computer has for `sans-serif`, so widths are estimated on the
wide side: by class of letter, after the metrics of wide common fonts (from memory).
"""

import math
import unicodedata

# Px at natural size, which is what a phone shows: to be read at arm's length.
SMALL = 12.0
USUAL = 13.0
LARGE = 16.0
LINE_PX = 1.15
# How much wider the bold letters of a font are.
BOLD = 1.1
_LEAST_LETTERS = 3
_MOST_LINES = 3
_NARROW = frozenset("iIjl.,;:'|!()[]ftr ")
_WIDE = frozenset("mwMW@%+<=>^~#")
_EM_OF_CLASS = {
    "narrow": 0.42,
    "wide": 1.0,
    "full": 1.05,
    "sign": 1.75,
    "capital": 0.79,
    "other": 0.64,
}


def text_width(text: str, size: float) -> float:
    """About how many px a line of text takes up at most."""
    return size * math.fsum(_EM_OF_CLASS[_class_of(sign)] for sign in text if not _rides(sign))


def _rides(sign: str) -> bool:
    """Whether a sign stands on the one before it."""
    return unicodedata.category(sign) in {"Mn", "Me", "Cf"}


def _class_of(sign: str) -> str:
    if sign in _NARROW:
        return "narrow"
    if sign in _WIDE or unicodedata.category(sign) == "No":
        return "wide"
    if unicodedata.category(sign) == "So":
        return "sign"
    if ord(sign) > 0x2FF or unicodedata.east_asian_width(sign) in {"W", "F"}:
        return "full"
    return "capital" if sign.isupper() or sign == "&" else "other"


def fitted(text: str, size: float, room: float) -> str:
    """The text, or as much of it as the room holds with its last number; else nothing."""
    if text_width(text, size) <= room:
        return text
    head, _, tail = text.rpartition(" ")
    end = f"… {tail}" if head and tail.isdigit() else "…"
    kept = head if head and tail.isdigit() else text
    for letters in range(len(kept) - 1, _LEAST_LETTERS - 1, -1):
        short = f"{kept[:letters].rstrip()}{end}"
        if text_width(short, size) <= room:
            return short
    return ""


def lines_in(text: str, size: float, width: float, height: float) -> list[str]:
    """The text broken between words into lines that fit; none where it does not fit whole."""
    lines: list[str] = []
    for part in text.split():
        longer = f"{lines[-1]} {part}" if lines else part
        if lines and text_width(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(part)
    most = min(_MOST_LINES, int(height / (size * LINE_PX)))
    fits = len(lines) <= most and all(text_width(one, size) <= width for one in lines)
    return lines if fits else []
