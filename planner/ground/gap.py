"""Gaps: free stretches of a bed over a span of days."""

from typing import NamedTuple


class Gap(NamedTuple):
    """A free stretch of a bed, micrometres along its line.

    `below_leaves` and `above_leaves` are the days on which the neighbours at either end leave
    their ground, as ordinals; None where the bed ends. `host` holds the ground the gap is
    under, or nobody does.
    """

    bed: int
    from_um: int
    to_um: int
    below_leaves: int | None
    above_leaves: int | None
    host: int

    @property
    def length_um(self) -> int:
        """Length along the bed's line."""
        return self.to_um - self.from_um
