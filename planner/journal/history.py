"""Histories: what has happened to one sowing so far."""

from dataclasses import dataclass
from datetime import date

from planner.journal.entry import Entry, Event
from planner.terms import Quantity


@dataclass(frozen=True, slots=True)
class History:
    """The entries of one sowing that count, the earliest day first; what is undone is left out."""

    entries: tuple[Entry, ...] = ()

    def day_of(self, event: Event) -> date | None:
        """The last day told for an event that happens once; None when it is not told."""
        return max((one.day for one in self.entries if one.event is event), default=None)

    @property
    def picks(self) -> tuple[tuple[date, Quantity], ...]:
        """Every picking with its amount."""
        return tuple(
            (one.day, one.amount)
            for one in self.entries
            if one.event is Event.PICKED and one.amount is not None
        )

    @property
    def first_pick_on(self) -> date | None:
        """The day of the first picking told."""
        return min((day for day, _ in self.picks), default=None)

    @property
    def lost_whole_on(self) -> date | None:
        """The day on which all of it was lost."""
        return max(
            (one.day for one in self.entries if one.event is Event.LOST and one.amount is None),
            default=None,
        )

    @property
    def plants_lost(self) -> int:
        """Plants lost one by one, all entries together."""
        return sum(
            round(one.amount.value)
            for one in self.entries
            if one.event is Event.LOST and one.amount is not None
        )

    @property
    def last_late(self) -> Entry | None:
        """The last word on how late it is; it takes the place of those before."""
        late = [one for one in self.entries if one.event is Event.LATE]
        return late[-1] if late else None
