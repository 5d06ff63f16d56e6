"""Printed sheets read back by pdfplumber: pages, words with their boxes, marks and bookmarks."""

import io
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import pdfplumber

POINTS_PER_MM = 72 / 25.4
# ISO 216: A4 is 210 by 297 mm. ANSI/ASME Y14.1: letter (A) is 8.5 by 11 in.
SIZES_MM = {"A4": (210.0, 297.0), "letter": (8.5 * 25.4, 11 * 25.4)}
# What is left white on each side; common printers leave about 6 mm (common practice, no source).
LEAST_MARGIN_MM = 8


@dataclass(frozen=True)
class Word:
    """A word with its box, in points from the top left; the box is that of the letters' bodies."""

    text: str
    left: float
    right: float
    top: float
    bottom: float


class ReadPdf:
    """A PDF as its reader sees it."""

    def __init__(self, content: bytes) -> None:
        self.pdf = pdfplumber.open(io.BytesIO(content))

    @property
    def pages(self) -> list[Any]:
        """Every page."""
        return self.pdf.pages

    @cached_property
    def texts(self) -> list[str]:
        """The text of each page, lines joined by a space."""
        return [told(page) for page in self.pages]

    @property
    def bookmarks(self) -> list[str]:
        """The titles of the outline."""
        return [one[1] for one in self.pdf.doc.get_outlines()]

    def weeks(self) -> Iterator[tuple[str, list[Any]]]:
        """Each week's title with its pages, told by the head of each page."""
        pages: dict[str, list[Any]] = {}
        for page in self.pages:
            text = told(page)
            head = re.match(r"(Week \d+),? (Mon .*? \d{4})", text)
            assert head, text
            pages.setdefault(f"{head[1]} {head[2]}", []).append(page)
        yield from pages.items()


def told(page: Any, from_mm: float = 0.0) -> str:
    """The text of a page right of a line, its own lines joined by a space."""
    part = page.crop((from_mm * POINTS_PER_MM, 0, page.width, page.height))
    return joined(part.extract_text())


def joined(text: str) -> str:
    """Text on one line; where a word was let break, nothing shows it."""
    return " ".join(text.replace("\u200b", "").split())


def words(page: Any) -> list[Word]:
    """Every word with its box."""
    return [
        Word(one["text"], one["x0"], one["x1"], one["top"], one["bottom"])
        for one in page.extract_words(keep_blank_chars=False)
    ]


def overlaps(found: Iterable[Word]) -> list[tuple[str, str]]:
    """Pairs of words that lie on each other by more than their lines' touching bodies."""
    ordered = sorted(found, key=lambda one: one.top)
    pairs = []
    for number, first in enumerate(ordered):
        for second in ordered[number + 1 :]:
            if second.top >= first.bottom:
                break
            across = min(first.right, second.right) - max(first.left, second.left)
            down = min(first.bottom, second.bottom) - max(first.top, second.top)
            height = min(first.bottom - first.top, second.bottom - second.top)
            if across > 0.5 and down > 0.35 * height:
                pairs.append((first.text, second.text))
    return pairs


def tick_boxes(page: Any) -> list[Any]:
    """Squares that are drawn and not filled, of the size of a box to tick."""
    return [
        one
        for one in (*page.rects, *page.curves)
        if not one["fill"]
        and abs(one["width"] - one["height"]) < 0.1
        and one["width"] < 8 * POINTS_PER_MM
    ]


def faults_of(page: Any, smallest_pt: float) -> list[str]:
    """What is wrong with a page for who reads it outdoors, and for a plain printer."""
    edge = LEAST_MARGIN_MM * POINTS_PER_MM
    found = []
    for letter in page.chars:
        inside = edge <= letter["x0"] and letter["x1"] <= page.width - edge
        if not inside or letter["top"] < edge or letter["bottom"] > page.height - edge:
            found.append(f"{letter['text']} stands in the margin")
        if letter["size"] < smallest_pt - 0.01:
            found.append(f"{letter['text']} is {letter['size']:.1f} pt")
        if not _is_black(letter["non_stroking_color"]):
            found.append(f"{letter['text']} is not black")
    for mark in (*page.rects, *page.lines, *page.curves):
        if mark["stroke"] and not _is_black(mark["stroking_color"]):
            found.append(f"a line is {mark['stroking_color']}")
        if mark["fill"] and not _is_black(mark["non_stroking_color"]):
            found.append(f"a filling is {mark['non_stroking_color']}")
    if page.images:
        found.append("an image")
    found.extend(f"{one} lies on {other}" for one, other in overlaps(words(page)))
    return [*found, *(f"a line goes through {one}" for one in struck(page))]


def struck(page: Any) -> list[str]:
    """Words that a line goes through."""
    return [word.text for word in words(page) for line in page.lines if _goes_through(line, word)]


def _goes_through(line: Any, word: Word) -> bool:
    """Whether a line crosses a word's body, leaving out what a descender or the leading takes."""
    quarter = (word.bottom - word.top) / 4
    across = min(line["x1"], word.right - 0.5) > max(line["x0"], word.left + 0.5)
    if line["height"] < line["width"]:
        return bool(across and word.top + quarter < line["top"] < word.bottom - quarter)
    inside = word.left + 0.5 < line["x0"] < word.right - 0.5
    beside = min(line["bottom"], word.bottom) - max(line["top"], word.top)
    return bool(inside and beside > quarter)


def _is_black(colour: Any) -> bool:
    parts = colour if isinstance(colour, tuple) else (colour,)
    return all(part == 0 for part in parts)
