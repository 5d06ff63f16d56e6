"""Bed shapes: a bed seen from above, and where on it a stand lies.

A round bed is divided like a cake: its line is its rim, counted clockwise from the mark at the
top (rules §41), so a block is a slice. A guest is drawn in a part of its host's ground only, so
that both can be seen; along the line it lies where it is.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from planner.garden import Bed
from planner.pictures.block_marks import HARVEST_PX
from planner.pictures.field import Field
from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH
from planner.pictures.lettering import LINE_PX, SMALL
from planner.pictures.stands import Stand
from planner.pictures.svg import FAINT_INK, INK, PAPER, line, number, rectangle, tag
from planner.pictures.tape import Tape

_GUEST_FROM = 0.52
_GUEST_TO = 0.97
_ROOM_HEIGHTS_PX = tuple(lines * SMALL * LINE_PX + 0.5 for lines in (1, 2, 3))
_RADII = tuple(place / 20 for place in range(18, 3, -1))
_TICK_PX = 4.0
BAR_SWATCH = rectangle(SWATCH_WIDTH - HARVEST_PX, 0, HARVEST_PX, SWATCH_HEIGHT, fill=INK)


@dataclass(frozen=True, slots=True)
class StraightShape:
    """A rectangular bed, its marked end at the top."""

    bed: Bed
    tape: Tape
    x: float
    y: float

    @property
    def width(self) -> float:
        """Px across."""
        return self.tape.px(self.bed.width_um)

    @property
    def height(self) -> float:
        """Px from end to end."""
        return self.tape.px(self.bed.line_um)

    def empty(self) -> str:
        """The bed with nothing in it."""
        ticks = (
            line(self.x - _TICK_PX, self.y + at, self.x, self.y + at, stroke=FAINT_INK)
            for at, _ in self.tape.marks(self.bed.line_um)
        )
        ground = rectangle(
            self.x, self.y, self.width, self.height, fill=PAPER, stroke=INK, class_="bed"
        )
        marked = line(self.x, self.y, self.x + self.width, self.y, stroke_width=4)
        return "".join((*ticks, ground, marked))

    def ground(self, stand: Stand, **attributes: str | float) -> str:
        """The outline of a stand."""
        field = self._field(stand)
        return rectangle(field.x, field.y, field.width, field.height, **attributes)

    def bar(self, stand: Stand) -> str:
        """The bar at the side of a stand while it is harvested."""
        field = self._field(stand)
        return rectangle(field.right - HARVEST_PX, field.y, HARVEST_PX, field.height, fill=INK)

    def rooms(self, stand: Stand, guests: list[Stand]) -> list[Field]:
        """Where the words of a stand may stand, clear of its bar and its guests."""
        field = self._field(stand)
        free = Field(field.x, field.y, field.width - HARVEST_PX, field.height)
        return free.beside([self._field(one) for one in guests])

    def _field(self, stand: Stand) -> Field:
        top, bottom = self.tape.px(stand.from_um), self.tape.px(stand.to_um)
        left, right = (_GUEST_FROM, _GUEST_TO) if stand.host else (0.0, 1.0)
        return Field(
            self.x + left * self.width, self.y + top, (right - left) * self.width, bottom - top
        )


@dataclass(frozen=True, slots=True)
class RoundShape:
    """A round bed, its mark at the top."""

    bed: Bed
    tape: Tape
    x: float
    y: float

    @property
    def width(self) -> float:
        """Px across: the diameter."""
        return self.tape.px(self.bed.width_um * 4)

    @property
    def height(self) -> float:
        """The same from top to bottom."""
        return self.width

    @property
    def radius(self) -> float:
        """Half of it."""
        return self.width / 2

    def empty(self) -> str:
        """The bed with nothing in it."""
        ticks = (
            self._spoke(self.tape.length_um(at), self.radius, self.radius + _TICK_PX)
            for at, _ in self.tape.marks(self.bed.line_um)
        )
        x, y = self._point(0, 0)
        ground = tag(
            "circle", cx=x, cy=y, r=self.radius, fill=PAPER, stroke=INK, stroke_width=1,
            class_="bed",
        )  # fmt: skip
        mark = line(x, self.y - 6, x, self.y + 6, stroke_width=4)
        return "".join((*ticks, ground, mark))

    def ground(self, stand: Stand, **attributes: str | float) -> str:
        """The outline of a stand: a slice, or a piece of one for a guest."""
        inner, outer = self._radii(stand)
        if stand.to_um - stand.from_um >= self.bed.line_um:
            x, y = self._point(0, 0)
            return tag("circle", cx=x, cy=y, r=outer, **attributes)
        path = (
            f"M{self._told(stand.from_um, inner)}L{self._told(stand.from_um, outer)}"
            f"{self._arc(stand, outer)}L{self._told(stand.to_um, inner)}"
            f"{self._arc_back(stand, inner) if inner else ''}Z"
        )
        return tag("path", d=path, **attributes)

    def bar(self, stand: Stand) -> str:
        """The bar along the rim of a stand while it is harvested."""
        _, outer = self._radii(stand)
        along = outer - HARVEST_PX / 2
        if stand.to_um - stand.from_um >= self.bed.line_um:
            x, y = self._point(0, 0)
            return tag(
                "circle", cx=x, cy=y, r=along, fill="none", stroke=INK, stroke_width=HARVEST_PX
            )
        path = f"M{self._told(stand.from_um, along)}{self._arc(stand, along)}"
        return tag("path", d=path, fill="none", stroke=INK, stroke_width=HARVEST_PX)

    def rooms(self, stand: Stand, guests: list[Stand]) -> list[Field]:
        """Where the words of a stand may stand: the widest place for one, two and three lines."""
        inner, outer = self._radii(stand)
        if guests:
            outer = self._radii(guests[0])[0]
        found = (
            self._widest(stand, (inner, outer - HARVEST_PX), height) for height in _ROOM_HEIGHTS_PX
        )
        return [one for one in found if one is not None]

    def _radii(self, stand: Stand) -> tuple[float, float]:
        if stand.host:
            return _GUEST_FROM * self.radius, _GUEST_TO * self.radius
        return 0.0, self.radius

    def _widest(self, stand: Stand, radii: tuple[float, float], height: float) -> Field | None:
        middle_um = (stand.from_um + stand.to_um) / 2
        widest = None
        for share in _RADII:
            x, y = self._point(middle_um, share * self.radius)
            width = widest.width + 4 if widest else 8.0
            while self._holds(stand, radii, Field(x - width / 2, y - height / 2, width, height)):
                widest = Field(x - width / 2, y - height / 2, width, height)
                width += 4
        return widest

    def _holds(self, stand: Stand, radii: tuple[float, float], field: Field) -> bool:
        """Whether a field lies within a slice, by points all along its edge."""
        return all(self._is_in(stand, radii, x, y) for x, y in _edge_points(field))

    def _is_in(self, stand: Stand, radii: tuple[float, float], x: float, y: float) -> bool:
        across, down = x - self.x - self.radius, y - self.y - self.radius
        turn = math.atan2(across, -down) / (2 * math.pi) % 1.0
        along_um = turn * self.bed.line_um
        return (
            radii[0] <= math.hypot(across, down) <= radii[1]
            and stand.from_um <= along_um <= stand.to_um
        )

    def _point(self, along_um: float, radius: float) -> tuple[float, float]:
        turn = 2 * math.pi * along_um / self.bed.line_um
        x = self.x + self.radius + radius * math.sin(turn)
        return x, self.y + self.radius - radius * math.cos(turn)

    def _told(self, along_um: float, radius: float) -> str:
        x, y = self._point(along_um, radius)
        return f"{number(x)},{number(y)}"

    def _arc(self, stand: Stand, radius: float) -> str:
        return self._turned(stand, radius, 1, stand.to_um)

    def _arc_back(self, stand: Stand, radius: float) -> str:
        return self._turned(stand, radius, 0, stand.from_um)

    def _turned(self, stand: Stand, radius: float, sweep: int, end_um: int) -> str:
        large = int((stand.to_um - stand.from_um) * 2 > self.bed.line_um)
        told = number(radius)
        return f"A{told},{told} 0 {large} {sweep} {self._told(end_um, radius)}"

    def _spoke(self, along_um: float, inner: float, outer: float) -> str:
        (x1, y1), (x2, y2) = self._point(along_um, inner), self._point(along_um, outer)
        return line(x1, y1, x2, y2, stroke=FAINT_INK)


Shape = StraightShape | RoundShape


def shape_of(bed: Bed, tape: Tape, x: float, y: float) -> Shape:
    """A bed drawn with its upper left corner at x, y."""
    return RoundShape(bed, tape, x, y) if bed.is_round else StraightShape(bed, tape, x, y)


def _edge_points(field: Field) -> Iterator[tuple[float, float]]:
    """Points along the edge of a field, close enough that no slice's corner slips between."""
    for place in range(9):
        share = place / 8
        yield field.x + share * field.width, field.y
        yield field.x + share * field.width, field.bottom
        yield field.x, field.y + share * field.height
        yield field.right, field.y + share * field.height
