"""What the shared page knows: the tasks of a season, and what the journal tells of them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from planner.journal import Entry, Event, History, Journal
from planner.tasks import TaskKind

# What is noted when a task is done. Hardening off and thinning have no event: nothing in the
# plan hangs on them.
DONE = {
    TaskKind.START_INDOORS: Event.SOWN,
    TaskKind.SOW: Event.SOWN,
    TaskKind.SET_OUT: Event.SET_OUT,
    TaskKind.PICK: Event.PICKED,
    TaskKind.CUT: Event.PICKED,
    TaskKind.CLEAR: Event.CLEARED,
}


@dataclass(frozen=True, slots=True)
class SharedTask:
    """A task as the record of a season keeps it."""

    id: str
    on: date
    kind: TaskKind
    sowing: str

    @property
    def event(self) -> Event | None:
        """What is noted when it is done; None where the journal has no word for it."""
        return DONE.get(self.kind)


@dataclass(frozen=True)
class SharedWork:
    """Tasks by id, the journal, and the unit in which each sowing is picked."""

    tasks: Mapping[str, SharedTask]
    journal: Journal
    units: Mapping[str, str]

    @cached_property
    def _histories(self) -> dict[str, History]:
        return self.journal.histories

    @cached_property
    def _lines(self) -> dict[str, int]:
        lines: dict[str, int] = {}
        for one in self.journal.entries:
            lines[one.sowing] = lines.get(one.sowing, 0) + 1
        return lines

    @cached_property
    def _of_sowing(self) -> dict[str, list[SharedTask]]:
        found: dict[str, list[SharedTask]] = {}
        for one in self.tasks.values():
            found.setdefault(one.sowing, []).append(one)
        return found

    def history(self, sowing: str) -> History:
        """What counts of a sowing."""
        return self._histories.get(sowing, History())

    def tasks_of(self, sowing: str) -> list[SharedTask]:
        """The tasks of a sowing."""
        return self._of_sowing.get(sowing, [])

    def seen(self, sowing: str) -> int:
        """How many lines the journal has of a sowing; with each more, something new is told."""
        return self._lines.get(sowing, 0)

    def is_raised_indoors(self, sowing: str) -> bool:
        """Whether it is begun in trays."""
        return any(one.kind is TaskKind.START_INDOORS for one in self.tasks_of(sowing))

    def end(self, sowing: str) -> Entry | None:
        """The entry that ended a sowing: cleared, lost whole or never begun."""
        ends = (
            one
            for one in self.history(sowing).entries
            if one.event in {Event.CLEARED, Event.MISSED}
            or (one.event is Event.LOST and one.amount is None)
        )
        return next(ends, None)

    def noted(self, task: SharedTask) -> tuple[Entry, ...]:
        """The entries that tell that a task is done.

        A picking belongs to the harvest task nearest in time, the earlier of equals.
        """
        mine = [one for one in self.history(task.sowing).entries if one.event is task.event]
        if task.event is not Event.PICKED:
            return tuple(mine)
        harvests = [one for one in self.tasks_of(task.sowing) if one.event is Event.PICKED]
        return tuple(one for one in mine if _nearest(harvests, one.day) is task)


def _nearest(tasks: list[SharedTask], day: date) -> SharedTask:
    return min(tasks, key=lambda one: (abs((one.on - day).days), one.on))
