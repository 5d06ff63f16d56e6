"""Ground: all beds and what holds them, from which day to which."""

from bisect import insort
from typing import NamedTuple

from planner.garden import Bed
from planner.ground.gap import Gap

# The holder of kept ground, and the host of a gap that has none.
NOBODY = -1


class Holding(NamedTuple):
    """A stretch of a bed held by somebody from `enters` on; free again on `leaves` (ordinals).

    A guest holds its stretch under `host`; it is in nobody's way there but another guest's.
    """

    from_um: int
    to_um: int
    enters: int
    leaves: int
    holder: int
    family: str
    host: int = NOBODY


class Ground:
    """Beds by their place in the garden's list, and the holdings on each, in order along it.

    The last `rest_days` of every holding are its turnover.
    """

    def __init__(self, beds: tuple[Bed, ...], rest_days: int = 0) -> None:
        self.beds = beds
        self.rest_days = rest_days
        self.held: list[list[Holding]] = [[] for _ in beds]

    def hold(self, bed: int, holding: Holding) -> None:
        """Hold a stretch."""
        insort(self.held[bed], holding)

    def release(self, bed: int, holder: int) -> None:
        """Give back what a holder holds in a bed."""
        self.held[bed] = [one for one in self.held[bed] if one.holder != holder]

    def gaps(self, bed: int, enters: int, leaves: int) -> list[Gap]:
        """Every stretch free over the whole span, in order along the bed."""
        found = []
        reached, below = 0, None
        for from_um, to_um, begins, ends, _, _, _ in self.held[bed]:
            if begins < leaves and enters < ends:
                if from_um > reached:
                    found.append(Gap(bed, reached, from_um, below, ends, NOBODY))
                if to_um >= reached:
                    reached, below = to_um, ends
        line_um = self.beds[bed].line_um
        if line_um > reached:
            found.append(Gap(bed, reached, line_um, below, None, NOBODY))
        return found

    def families_before_and_after(
        self, bed: int, stretch: tuple[int, int], span: tuple[int, int], rest_days: int
    ) -> set[str]:
        """Families that hold any of a stretch within so many days before or after a span."""
        (from_um, to_um), (enters, leaves) = stretch, span
        before, after = enters - rest_days, leaves + rest_days
        return {
            family
            for begins_um, ends_um, begins, ends, _, family, _ in self.held[bed]
            if begins_um < to_um and from_um < ends_um and begins < after and before < ends
        }
