"""Harvests before raw manure has lain long enough (§46)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from planner.bedwork.manure import may_be_picked_from
from planner.garden import EatenPart, Garden
from planner.scheduling import Sowing
from planner.terms import date_words


@dataclass(frozen=True, slots=True)
class TooEarly:
    """From when on a harvest may be, and the bed the manure lies in."""

    from_on: date
    bed: str

    def words(self, what: str) -> str:
        """What the grower is told."""
        until = date_words(self.from_on)
        return f"Do not harvest {what} before {until}: raw manure on {self.bed}."


TooEarlyHarvests = Mapping[tuple[str, date], TooEarly]


def longest_wait(garden: Garden, sowing: Sowing, by: date) -> TooEarly | None:
    """Of the manures spread by a day in a sowing's beds the one to wait for longest.

    Of equals the last in the plan; None where there is none.
    """
    beds = {block.bed for block in sowing.blocks}
    waits = [
        TooEarly(may_be_picked_from(garden, one, _eaten(garden, sowing)), one.bed)
        for one in garden.soil.manure
        if one.bed in beds and one.on <= by
    ]
    return max(reversed(waits), key=lambda one: one.from_on, default=None)


def _eaten(garden: Garden, sowing: Sowing) -> EatenPart:
    return garden.soil.crops[sowing.crop.name].eaten_part


def too_early_harvests(garden: Garden, sowings: Sequence[Sowing]) -> TooEarlyHarvests:
    """The harvests that come too early, by sowing and day."""
    return {
        (one.id, taken.day): wait
        for one in sowings
        for taken in one.harvest
        if (wait := longest_wait(garden, one, taken.day)) is not None and taken.day < wait.from_on
    }
