"""What fills new beds, in words."""

from collections.abc import Sequence

from planner.bedwork import Filling
from planner.terms import length_words, volume_words


def filling_text(fillings: Sequence[Filling], width: int) -> str:
    """A part for each new bed; says so where there is none."""
    del width
    if not fillings:
        return "No bed is new. Write new = true below a [[bed]] that is still to be filled."
    return "\n".join(_line(one) for one in fillings)


def _line(one: Filling) -> str:
    unit = one.bed.note.unit
    depth = length_words(one.bed.soil_depth_m * 1e6, unit)
    return f"{one.bed.name}: {volume_words(one.volume_l, unit)} to {depth} deep."
