"""Where a stretch of a bed lies, and a day, as one says them at the bed."""

from datetime import date

from planner.garden import Bed
from planner.terms import length_words

_ALL = "all of it"


def stretch_words(bed: Bed, from_um: int, to_um: int) -> str:
    """A stretch like "2 ft to 4 ft from the marked end"; "all of it" where it is."""
    words = short_stretch_words(bed, from_um, to_um)
    if words == _ALL:
        return words
    way = "clockwise along the rim from the mark" if bed.is_round else "from the marked end"
    return f"{words} {way}"


def short_stretch_words(bed: Bed, from_um: int, to_um: int) -> str:
    """A stretch like "2 ft to 4 ft"; "all of it" where it is."""
    if (from_um, to_um) == (0, bed.line_um):
        return _ALL
    unit = bed.note.unit
    return f"{length_words(from_um, unit)} to {length_words(to_um, unit)}"


def day_words(day: date) -> str:
    """A day like "8 May 2027"."""
    return f"{day.day} {day:%B} {day.year}"
