"""A bed's cell in the plan: its name, the bed from above, and below it names that had no room.

Every stand is drawn once, whatever the day; those of other days than the one shown are hidden.
Two stands never bear words in the same place on one day.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from planner.garden import Bed
from planner.pictures.bed_shape import Shape, shape_of
from planner.pictures.block_marks import BlockMarks
from planner.pictures.field import lettered
from planner.pictures.lettering import BOLD, LINE_PX, SMALL, USUAL, fitted, lines_in
from planner.pictures.stands import Stand, guests_of
from planner.pictures.svg import named, tag, text_line
from planner.pictures.tape import Tape

_LEAST_WIDTH = 124.0
_NAME_LINES = 2
_ROW_PX = SMALL * LINE_PX + 1.5
_ABOVE_PX = 6.0
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True)
class BedCell:
    """A bed, what stands in it in the picture, and which of that had no room for its name.

    `rows` gives each of the nameless a row below the bed that is its own on every day it stands.
    """

    bed: Bed
    stands: tuple[Stand, ...]
    tape: Tape
    marks: BlockMarks
    rows: dict[int, int]

    @property
    def width(self) -> float:
        """Px taken up across."""
        return max(_LEAST_WIDTH, shape_of(self.bed, self.tape, 0, 0).width)

    @property
    def name_height(self) -> float:
        """Px taken up by the name above."""
        return _NAME_LINES * USUAL * LINE_PX + _ABOVE_PX

    @property
    def height(self) -> float:
        """Px from the top of the name to the last row below."""
        rows = max(self.rows.values(), default=-1) + 1
        shape = shape_of(self.bed, self.tape, 0, 0)
        return self.name_height + shape.height + rows * _ROW_PX + 4

    def drawn(self, x: float, y: float, day: date) -> str:
        """The cell with its corner at x, y, showing a day."""
        shape = shape_of(self.bed, self.tape, x, y + self.name_height)
        lines = self._name_lines()
        foot = y + self.name_height - _ABOVE_PX - 3
        first = foot - (len(lines) - 1) * USUAL * LINE_PX
        return tag(
            "g",
            named("title", self.bed.name),
            *(
                text_line(x, first + place * USUAL * LINE_PX, one, USUAL, font_weight="bold")
                for place, one in enumerate(lines)
            ),
            shape.empty(),
            *(self._stand(shape, place, day) for place in range(len(self.stands))),
            data_bed=self.bed.name,
        )

    def _name_lines(self) -> list[str]:
        """The bed's name in bold, which is wider; shortened where it is long."""
        height = self.name_height - _ABOVE_PX + 0.1
        name, size = self.bed.name, USUAL * BOLD
        return lines_in(name, size, self.width, height * BOLD) or [fitted(name, size, self.width)]

    def _stand(self, shape: Shape, place: int, day: date) -> str:
        stand, marks = self.stands[place], self.marks
        what = {"data_kept": stand.holder} if stand.is_kept else {"data_sowing": stand.holder}
        harvest = ""
        if stand.is_picked:
            harvest = tag(
                "g",
                shape.ground(stand, fill=marks.harvested(stand)),
                shape.bar(stand),
                class_="harvest",
                **_shown(stand.picked_from, stand.picked_until, day),
            )
        return tag(
            "g",
            named("title", stand.said),
            shape.ground(stand, fill=marks.growing(stand)),
            harvest,
            shape.ground(stand, class_="edge", **marks.outline(stand)),
            self._words(shape, place),
            class_="block",
            **what,
            **_shown(stand.enter_on, stand.leave_on, day),
        )

    def _words(self, shape: Shape, place: int) -> str:
        """The name on the stand, or a letter on it and its name in a row below."""
        stand = self.stands[place]
        rooms = shape.rooms(stand, guests_of(stand, self.stands))
        ground = self.marks.mark(stand).pale
        if place not in self.rows:
            return lettered(rooms, stand.name, ground)
        row = self.rows[place]
        letter = _LETTERS[row] if row < len(_LETTERS) else ""
        on_it = lettered(rooms, letter, ground) if letter else ""
        where = self.bed.stretch_words(stand.from_um, stand.to_um)
        told = f"{letter}  {stand.name}" if on_it else f"{stand.name}: {where}"
        foot = shape.y + shape.height + (row + 1) * _ROW_PX
        return on_it + text_line(shape.x, foot, fitted(told, SMALL, self.width), SMALL)


def bed_cell(bed: Bed, stands: tuple[Stand, ...], tape: Tape, marks: BlockMarks) -> BedCell:
    """The cell of a bed with these stands."""
    shape = shape_of(bed, tape, 0, 0)
    nameless = [
        place
        for place, one in enumerate(stands)
        if not lettered(shape.rooms(one, guests_of(one, stands)), one.name, "")
    ]
    return BedCell(bed, stands, tape, marks, _rows(stands, nameless))


def _rows(stands: Sequence[Stand], nameless: list[int]) -> dict[int, int]:
    """The first row for each that nobody else has while it stands."""
    free_from: list[date] = []
    rows = {}
    for place in sorted(nameless, key=lambda one: stands[one].enter_on):
        stand = stands[place]
        free = (row for row, day in enumerate(free_from) if day <= stand.enter_on)
        row = next(free, len(free_from))
        free_from[row : row + 1] = [stand.leave_on]
        rows[place] = row
    return rows


def _shown(begin: date, end: date, day: date) -> dict[str, str | float]:
    """The days something is there, from the first up to the one it is gone, hidden on others."""
    days: dict[str, str | float] = {"data_from": begin.isoformat(), "data_to": end.isoformat()}
    return days if begin <= day < end else {**days, "display": "none"}
