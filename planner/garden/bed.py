"""Beds: ground of a size, a depth and a light, divided along one line.

Positions along the line are whole micrometres, so that feet, inches and centimetres are all
exact and four quarters of a bed fill it to the end.
"""

import math
from dataclasses import dataclass, field
from enum import IntEnum, StrEnum

from planner.garden.water_wish import Drip, NoDrip
from planner.terms import Place, Unit, length_words


class Sun(IntEnum):
    """Light on a bed, or the light a crop needs; more is a larger number."""

    SHADE = 0
    PART = 1
    FULL = 2

    @property
    def word(self) -> str:
        """The grower's word."""
        return self.name.lower()


class SunnyEnd(StrEnum):
    """The end of a bed's line that is toward the midday sun."""

    UNKNOWN = "unknown"
    MARKED = "marked"
    FAR = "far"


@dataclass(frozen=True, slots=True)
class BedNote:
    """How the grower wrote the bed: in which unit, on which line."""

    unit: Unit
    place: Place = field(repr=False)


@dataclass(frozen=True, slots=True)
class Bed:
    """A bed whose blocks are stretches of a line `line_um` long and `width_um` across.

    A rectangular bed's line is its longer side. A round bed is divided like a cake: its line
    is its rim, and its width a quarter of its diameter, so that a stretch of rim times width
    is the area of that slice. A tall crop is kept away from the `sunny_end`, where it would
    shade the rest; a round bed has no ends. Beds on the same `timer` are watered together; it is
    empty for a bed on its own. Whether it `is_new` and still to be filled, and how it is watered,
    bears on no date, so a season does not rest on it and repr leaves it out.
    """

    name: str
    line_um: int
    width_um: float
    is_round: bool
    soil_depth_m: float
    sun: Sun
    note: BedNote
    sunny_end: SunnyEnd = SunnyEnd.UNKNOWN
    is_new: bool = field(default=False, repr=False)
    drip: Drip | NoDrip = field(default=NoDrip(), repr=False)
    timer: str = field(default="", repr=False)

    @property
    def area_m2(self) -> float:
        """Ground in the bed, in square metres."""
        return self.line_um * self.width_um / 1e12

    @property
    def mark_words(self) -> str:
        """Where lengths along the line begin and which way they go, as one says it at the bed."""
        return "clockwise along the rim from the mark" if self.is_round else "from the marked end"

    def stretch_words(self, from_um: int, to_um: int) -> str:
        """A stretch of the line like "1 ft to 2 ft 6 in", in the grower's unit."""
        unit = self.note.unit
        return f"{length_words(from_um, unit)} to {length_words(to_um, unit)}"

    def across(self, spacing_um: float) -> int:
        """Plants side by side on a square grid; 0 where the bed has no straight sides."""
        return 0 if self.is_round else math.floor(self.width_um / spacing_um + 1e-9)

    def stretch_for(self, plants: int, spacing_um: float) -> int:
        """Micrometres of line that `plants` at equal distances take up in this bed.

        In a rectangular bed plants stand on a square grid, as many to a row as the width
        holds. In a round bed, or one narrower than the spacing, each plant gets its full area.
        """
        across = self.across(spacing_um)
        if across:
            return math.ceil(math.ceil(plants / across) * spacing_um - 1e-6)
        return math.ceil(plants * spacing_um * spacing_um / self.width_um - 1e-6)

    def plants_in(self, stretch_um: int, spacing_um: float) -> int:
        """How many plants at equal distances a stretch of this bed holds."""
        across = self.across(spacing_um)
        if across:
            return math.floor(stretch_um / spacing_um + 1e-6) * across
        return math.floor(stretch_um * self.width_um / spacing_um**2 + 1e-6)


def rectangular_bed_line(first_m: float, second_m: float) -> tuple[int, float]:
    """Line and width, micrometres, of a bed with these two sides."""
    return round(max(first_m, second_m) * 1e6), round(min(first_m, second_m) * 1e6)


def round_bed_line(diameter_m: float) -> tuple[int, float]:
    """Line and width, micrometres, of a round bed: its rim and a quarter of its diameter."""
    return round(math.pi * diameter_m * 1e6), diameter_m * 1e6 / 4
