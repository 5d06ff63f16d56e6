"""Bed drawings: a bed from above with one stretch marked, as shares of its line."""

from dataclasses import dataclass

from planner.garden import Bed
from planner.scheduling import Block
from planner.sheets.letters import has_stand_in, shown


@dataclass(frozen=True, slots=True)
class BedDrawing:
    """A bed and a stretch of it.

    `across` is the bed's width as a share of its line, for a round bed 1. `first` and `last` are
    shares of the line, counted from the marked end, or clockwise from the mark on a rim.
    """

    is_round: bool
    across: float
    first: float
    last: float


def bed_drawing(bed: Bed, block: Block) -> BedDrawing:
    """The drawing of a block in its bed."""
    return BedDrawing(
        is_round=bed.is_round,
        across=1.0 if bed.is_round else round(bed.width_um / bed.line_um, 4),
        first=round(block.from_um / bed.line_um, 4),
        last=round(block.to_um / bed.line_um, 4),
    )


def bed_words(name: str, number: int, longest: int) -> str:
    """A bed's name; with its number in the plan where a letter of it cannot be shown."""
    words = shown(name, longest)
    return f"{words} (bed {number} of the plan)" if has_stand_in(name) else words
