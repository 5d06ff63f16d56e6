"""A picture as an XML reader sees it: its elements, its words with their boxes, and a day of it."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from xml.etree import ElementTree as ET

from tests.published import published_rows

_SVG = "{http://www.w3.org/2000/svg}"
_EM = 2048
# DejaVu Sans, wider than most fonts that stand for sans-serif.
_WIDTHS = {
    row["letter"]: (int(row["width"]) / _EM, int(row["bold_width"]) / _EM)
    for row in published_rows("letter_widths.csv")
}
_ABOVE, _BELOW = 0.76, 0.24  # how far letters reach from their foot, in ems


@dataclass(frozen=True)
class Box:
    """An upright rectangle, px."""

    left: float
    top: float
    right: float
    bottom: float

    def overlaps(self, other: "Box", by: float = 0.01) -> bool:
        return (
            self.left < other.right - by
            and other.left < self.right - by
            and self.top < other.bottom - by
            and other.top < self.bottom - by
        )

    def holds(self, other: "Box", by: float = 0.02) -> bool:
        return (
            self.left <= other.left + by
            and other.right <= self.right + by
            and self.top <= other.top + by
            and other.bottom <= self.bottom + by
        )


class Drawing:
    """An SVG document."""

    def __init__(self, text: str) -> None:
        self.root = ET.fromstring(text)  # noqa: S314 - written by the program under test

    def every(self, name: str, **attributes: str) -> Iterator[ET.Element]:
        """Elements of a name with these attributes; `class_` and `data_x` as in Python."""
        told = {key.rstrip("_").replace("_", "-"): value for key, value in attributes.items()}
        for one in self.root.iter(f"{_SVG}{name}"):
            if all(one.get(key) == value for key, value in told.items()):
                yield one

    def blocks(self) -> list[ET.Element]:
        return list(self.every("g", class_="block"))

    def text_of(self, name: str) -> str:
        """The picture's own title or desc."""
        return words_of(self.root.find(f"{_SVG}{name}"))

    @property
    def sheet(self) -> "Box":
        return Box(0, 0, *numbers(self.root, "width", "height"))

    def words(self, day: str = "") -> list[ET.Element]:
        """Every line of text that is on view; with a day, as a script shows that day."""
        return list(_on_view(self.root, day))


def _on_view(element: ET.Element, day: str) -> Iterator[ET.Element]:
    begin, end = element.get("data-from"), element.get("data-to")
    if day and begin and end:
        if not begin <= day < end:
            return
    elif element.get("display") == "none":
        return
    if element.tag == f"{_SVG}text":
        yield element
    for inside in element:
        yield from _on_view(inside, day)


def words_of(element: ET.Element | None) -> str:
    assert element is not None
    return element.text or ""


def title_of(element: ET.Element) -> str:
    """What an element says when it is pointed at."""
    return words_of(element.find(f"{_SVG}title"))


def numbers(element: ET.Element, *names: str) -> tuple[float, ...]:
    return tuple(float(element.get(name, "nan")) for name in names)


def width_of(text: str, *, bold: bool = False) -> float:
    """Ems a text takes up in DejaVu Sans; letters not in the table count as one em."""
    return sum(_WIDTHS.get(sign, (1.0, 1.0))[bold] for sign in text)


def box_of(text: ET.Element) -> Box:
    """The box around a line of text."""
    x, y, size = numbers(text, "x", "y", "font-size")
    width = size * width_of(words_of(text), bold=text.get("font-weight") == "bold")
    shift = {"start": 0.0, "middle": width / 2, "end": width}[text.get("text-anchor", "start")]
    return Box(x - shift, y - size * _ABOVE, x - shift + width, y + size * _BELOW)


def rectangle_of(rectangle: ET.Element) -> Box:
    x, y, width, height = numbers(rectangle, "x", "y", "width", "height")
    return Box(x, y, x + width, y + height)


def overlapping_words(words: list[ET.Element]) -> list[tuple[str, str]]:
    """Texts that lie on each other. Empty ones lie nowhere."""
    boxes = [(words_of(one), box_of(one)) for one in words]
    return [
        (first, second)
        for (first, one), (second, other) in combinations(boxes, 2)
        if one.overlaps(other, 0.5)
    ]
