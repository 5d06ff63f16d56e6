"""What to send to a calendar on a server, where the grower may tick off and change events too.

Takes the season's events, what the server holds under their UIDs, and what was sent before.
What the grower did there stands: it is left, and told.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from planner.writing.calendar_event import CalendarEvent, calendar_of
from planner.writing.saying import Saying, saying_of


class Step(StrEnum):
    """What becomes of an event, in words that follow a number."""

    NEW = "new"
    MOVED = "moved"
    REWORDED = "reworded"
    CALLED_OFF = "called off"
    SAME = "as they were"
    TICKED = "left as you ticked them off"
    CHANGED = "left as you changed them"
    TAKEN_OUT = "not sent again as you took them out"


LEFT = frozenset({Step.TICKED, Step.CHANGED, Step.TAKEN_OUT})


@dataclass(frozen=True, slots=True)
class Held:
    """An event as a server holds it: where, in which edition, and what it says."""

    address: str
    edition: str | None
    saying: Saying


@dataclass(frozen=True, slots=True)
class Published:
    """An event of the season, what it says, and what becomes of it on the server."""

    event: CalendarEvent
    saying: Saying
    step: Step
    held: Held | None

    @property
    def is_told(self) -> bool:
        """Whether it was left although the season now says something else."""
        if self.step not in LEFT or self.held is None:
            return False
        return self.event.is_called_off or self.held.saying.days != self.saying.days

    @property
    def content(self) -> bytes:
        """A resource of its own for the event (RFC 4791 4.1)."""
        return calendar_of((), [self.event])


def publication(
    events: Iterable[CalendarEvent], held: Mapping[str, Held], sent: Mapping[str, str]
) -> list[Published]:
    """What becomes of each event, in their order; those called off and never held are left out.

    `sent` has, by UID, the imprint of what the server took last.
    """
    return list(_published(events, held, sent))


def begins_anew(held: Collection[str], sent: Collection[str]) -> bool:
    """Whether nothing of what was sent is there any more: the calendar was emptied."""
    return bool(sent) and not any(uid in held for uid in sent)


def _published(
    events: Iterable[CalendarEvent], held: Mapping[str, Held], sent: Mapping[str, str]
) -> Iterator[Published]:
    for event in events:
        there, before = held.get(event.uid), sent.get(event.uid)
        saying = saying_of(event.lines)
        if there is not None:
            yield Published(event, saying, _step(event, saying, there.saying, before), there)
        elif not event.is_called_off:
            step = Step.NEW if before is None else Step.TAKEN_OUT
            yield Published(event, saying, step, None)


def _step(event: CalendarEvent, saying: Saying, there: Saying, before: str | None) -> Step:
    if there.ticked:
        return Step.TICKED
    if there.told == saying.told:
        return Step.SAME
    if not _is_as_sent(there, before, event.number):
        return Step.CHANGED
    if event.is_called_off:
        return Step.CALLED_OFF
    return Step.MOVED if there.days != saying.days else Step.REWORDED


def _is_as_sent(there: Saying, before: str | None, number: int) -> bool:
    """Whether nobody but the program wrote it; without a record its stamps must tell."""
    if before is not None:
        return there.imprint == before
    return there.stamped_by_plan and there.number <= number
