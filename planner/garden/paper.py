"""Paper: the size the garden's sheets are printed on."""

from dataclasses import dataclass
from enum import StrEnum

from planner.terms import Unit


class Paper(StrEnum):
    """A4 is of ISO 216, letter of ANSI/ASME Y14.1."""

    A4 = "A4"
    LETTER = "letter"


@dataclass(frozen=True, slots=True)
class PaperByUnits:
    """The plan names no paper: it goes by the units the beds are written in."""


def usual_paper(unit: Unit) -> Paper:
    """Letter where beds are written in feet or inches, A4 where they are metric."""
    return Paper.LETTER if unit.is_imperial else Paper.A4
