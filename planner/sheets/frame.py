"""The frame of a sheet: its paper, and what each page of it says at its foot."""

from dataclasses import dataclass

from planner.sheets.day_words import dated_words
from planner.sheets.letters import shown
from planner.sheets.work import Work

# So much of the garden's name stands at the foot of a page, even in the widest letters.
_LONGEST_GARDEN = 34


@dataclass(frozen=True, slots=True)
class Frame:
    """The paper by its name, the garden, and the day of planning, as `frame.typ` takes them."""

    paper: str
    garden: str
    made_on: str


def frame_of(work: Work) -> Frame:
    """The frame of everything that is printed of a season."""
    garden = shown(work.garden.site.name, _LONGEST_GARDEN)
    return Frame(work.garden.paper.value, garden, dated_words(work.as_of))
