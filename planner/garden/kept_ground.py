"""Kept ground: what already stands in a bed, so that it is not the planner's to use (§29)."""

from dataclasses import dataclass, field
from datetime import date

from planner.terms import Place


@dataclass(frozen=True, slots=True)
class KeptGround:
    """A stretch of a bed that `what` holds from `first`, and that is free again on `last`.

    The stretch is `from_um` to `to_um` along the bed's line, from its marked end. `family` is
    empty where the grower does not state it. What stays for good has a `last` beyond the season.
    """

    bed: str
    what: str
    family: str
    from_um: int
    to_um: int
    first: date
    last: date
    place: Place = field(repr=False)

    def overlaps(self, other: "KeptGround") -> bool:
        """Whether both hold the same ground on one day."""
        return (
            self.bed == other.bed
            and self.from_um < other.to_um
            and other.from_um < self.to_um
            and self.first < other.last
            and other.first < self.last
        )
