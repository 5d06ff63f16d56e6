"""A field: a space on paper, and the words that find room in it."""

from dataclasses import dataclass

from planner.pictures.lettering import LINE_PX, SMALL, fitted, lines_in, text_width
from planner.pictures.svg import rectangle, text_line

_PAD = 3.0


@dataclass(frozen=True, slots=True)
class Field:
    """An upright rectangle, px, y downwards."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.y + self.height

    @property
    def area(self) -> float:
        """Square px."""
        return self.width * self.height

    def beside(self, others: list["Field"]) -> list["Field"]:
        """What is left of it on the four sides of others that lie in it; itself if none do."""
        if not others:
            return [self]
        left, right = min(one.x for one in others), max(one.right for one in others)
        top, bottom = min(one.y for one in others), max(one.bottom for one in others)
        sides = [
            Field(self.x, self.y, left - self.x, self.height),
            Field(right, self.y, self.right - right, self.height),
            Field(self.x, self.y, self.width, top - self.y),
            Field(self.x, bottom, self.width, self.bottom - bottom),
        ]
        return sorted(sides, key=lambda one: -one.area)


def lettered(rooms: list[Field], words: str, ground: str) -> str:
    """Words in full on a plate of the colour `ground`, in the first field with room; or nothing."""
    for room in rooms:
        lines = lines_in(words, SMALL, room.width - 2 * _PAD, room.height)
        if lines:
            return _plate(room, lines, ground)
    return ""


def lettered_short(rooms: list[Field], words: str, ground: str) -> str:
    """As much of the words as the first field has room for in one line, or nothing."""
    for room in rooms:
        short = fitted(words, SMALL, room.width - 2 * _PAD)
        if short and room.height >= SMALL * LINE_PX:
            return _plate(room, [short], ground)
    return ""


def _plate(room: Field, lines: list[str], ground: str) -> str:
    """The words at the upper left of a field, in the middle of its height if it is low."""
    step = SMALL * LINE_PX
    height = step * len(lines)
    width = max(text_width(one, SMALL) for one in lines)
    top = room.y + min(_PAD, (room.height - height) / 2)
    plate = rectangle(room.x + 1.5, top + 0.5, width + 3, height - 1, fill=ground, class_="plate")
    return plate + "".join(
        text_line(room.x + _PAD, top + SMALL * 0.95 + place * step, one, SMALL)
        for place, one in enumerate(lines)
    )
