"""Where a stretch of a bed lies, and in which beds a sowing stands, as one says it there."""

from planner.garden import Bed
from planner.scheduling import Sowing

_ALL = "all of it"


def stretch_words(bed: Bed, from_um: int, to_um: int) -> str:
    """A stretch like "2 ft to 4 ft from the marked end"; "all of it" where it is."""
    words = short_stretch_words(bed, from_um, to_um)
    if words == _ALL:
        return words
    return f"{words} {bed.mark_words}"


def short_stretch_words(bed: Bed, from_um: int, to_um: int) -> str:
    """A stretch like "2 ft to 4 ft"; "all of it" where it is."""
    if (from_um, to_um) == (0, bed.line_um):
        return _ALL
    return bed.stretch_words(from_um, to_um)


def beds_words(sowing: Sowing) -> str:
    """The beds a sowing stands in, like "North 1" or "North 1 + North 2"."""
    return " + ".join(dict.fromkeys(block.bed for block in sowing.blocks))
