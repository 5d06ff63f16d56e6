"""Cautions: what can hurt in a piece of work, what is usually done, and whom to ask."""

from dataclasses import dataclass
from enum import StrEnum

from planner.terms import Source


class CautionTime(StrEnum):
    """When a caution matters, within the part of the work it belongs to."""

    ALWAYS = "always"
    NEW_BED = "new bed"
    MANURE = "manure"
    CROP = "crop"


@dataclass(frozen=True, slots=True)
class Caution:
    """One hazard: the usual caution, and who decides.

    `part` is the part of bed work in which it is told. `crops` are those of the plan that it is
    about, by the grower's names; empty where it is about none.
    """

    hazard: str
    part: str
    time: CautionTime
    crops: tuple[str, ...]
    text: str
    ask: str
    sources: tuple[Source, ...]
