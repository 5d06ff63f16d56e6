"""Entries: one thing that happened to one sowing on one day."""

from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from planner.terms import Place, Quantity


class Event(StrEnum):
    """What can happen to a sowing.

    LATE: it stands so many days behind what was expected. UNDONE: the last entry of the sowing
    that still counts was a mistake and counts no longer.
    """

    SOWN = "sown"
    EMERGED = "emerged"
    SET_OUT = "set out"
    PICKED = "picked"
    CLEARED = "cleared"
    LOST = "lost"
    MISSED = "missed"
    LATE = "late"
    UNDONE = "undone"


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of the journal; `sowing` is a name such as "radish 3".

    `amount`: what was picked, in the grower's unit; how many plants were lost, all of them where
    none is told; how many days late. None where the event has none.
    """

    day: date
    event: Event
    sowing: str
    amount: Quantity | None
    note: str
    place: Place = field(repr=False)
