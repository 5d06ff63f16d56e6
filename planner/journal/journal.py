"""The journal: entries as they were written, and the history of each sowing."""

from dataclasses import dataclass
from datetime import date

from planner.journal.entry import Entry, Event
from planner.journal.history import History


@dataclass(frozen=True, slots=True)
class Journal:
    """Entries in the order of the file; it may be empty."""

    entries: tuple[Entry, ...] = ()

    def as_of(self, day: date) -> "Journal":
        """What counts of the journal without what happens after a day.

        What was undone does not come back, on whatever day its undoing is dated.
        """
        counting, _ = self._settled()
        lasting = {one for entries in counting.values() for one in entries if one.day <= day}
        return Journal(tuple(one for one in self.entries if one in lasting))

    @property
    def histories(self) -> dict[str, History]:
        """The history of every sowing of which something is told.

        An undoing takes back the last entry written before it for the sowing that still counts.
        """
        counting, _ = self._settled()
        return {
            name: History(tuple(sorted(entries, key=lambda one: one.day)))
            for name, entries in counting.items()
            if entries
        }

    @property
    def undone_in_vain(self) -> tuple[Entry, ...]:
        """The undoings that find nothing to take back."""
        return self._settled()[1]

    def last_written(self, sowing: str) -> Entry | None:
        """The entry of a sowing that the next undoing would take back."""
        return next(reversed(self._settled()[0].get(sowing, [])), None)

    def _settled(self) -> tuple[dict[str, list[Entry]], tuple[Entry, ...]]:
        """What counts of each sowing, as it was written, and the undoings in vain."""
        counting: dict[str, list[Entry]] = {}
        in_vain = []
        for one in self.entries:
            mine = counting.setdefault(one.sowing, [])
            if one.event is not Event.UNDONE:
                mine.append(one)
            elif mine:
                mine.pop()
            else:
                in_vain.append(one)
        return counting, tuple(in_vain)

    def of(self, sowing: str) -> History:
        """The history of one sowing."""
        return self.histories.get(sowing, History())


NOTHING_TOLD = Journal()
