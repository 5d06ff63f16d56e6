"""Ways to start a crop: sown in place, or raised indoors and set out."""

from dataclasses import dataclass
from enum import Enum

from planner.terms import Figure


class CountedFrom(Enum):
    """Days to maturity come in two conventions that must never be mixed."""

    SOWING = "sowing"
    SETTING_OUT = "setting out"


@dataclass(frozen=True, slots=True)
class DirectSown:
    """Sown (or planted as sets, cloves, tubers, slips) where it grows."""

    days: Figure

    @property
    def counted_from(self) -> CountedFrom:
        """What goes straight into the ground is counted from that day."""
        return CountedFrom.SOWING


@dataclass(frozen=True, slots=True)
class RaisedIndoors:
    """Sown in trays `days_indoors` ahead, hardened off, then set out."""

    days: Figure
    counted_from: CountedFrom
    days_indoors: Figure


Way = DirectSown | RaisedIndoors
