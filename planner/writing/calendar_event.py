"""An event of a calendar file as its content lines."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property

from planner.writing.content_lines import component, unfolded, written

PRODUCT = "-//planner//sowing and harvest plan//EN"
CANCELLED = "CANCELLED"
_NEEDED = {"UID", "SEQUENCE", "DTSTAMP", "DTSTART", "DTEND", "STATUS"}


@dataclass(frozen=True)
class CalendarEvent:
    """The lines between BEGIN:VEVENT and END:VEVENT, unfolded; an alarm's lines come last."""

    lines: tuple[str, ...]

    def value(self, name: str) -> str:
        """A property's value as written; ValueError where the event has none."""
        for line in self.lines:
            if line.startswith((f"{name}:", f"{name};")):
                return name_and_value(line)[1]
        message = f"an event without {name}"
        raise ValueError(message)

    @cached_property
    def content(self) -> bytes:
        """The event as it stands in a file, its lines folded."""
        return written(component("VEVENT", self.lines))

    @property
    def uid(self) -> str:
        """What the event is known by."""
        return self.value("UID")

    @property
    def number(self) -> int:
        """How often the event has changed."""
        return int(self.value("SEQUENCE"))

    @property
    def first(self) -> date:
        """Its first day."""
        return date.fromisoformat(self.value("DTSTART"))

    @property
    def end(self) -> date:
        """The day after its last."""
        return date.fromisoformat(self.value("DTEND"))

    @property
    def is_called_off(self) -> bool:
        """Whether it stands in the file only to be taken out of calendars."""
        return self.value("STATUS") == CANCELLED


def name_and_value(line: str) -> tuple[str, str]:
    """A content line's name, without parameters and in capitals, and its value as written."""
    name, colon, value = line.partition(":")
    if '"' not in name:
        return name.partition(";")[0].upper(), value
    while name.count('"') % 2 and colon:  # a colon within a quoted parameter parts nothing
        more, colon, value = value.partition(":")
        name = f"{name}:{more}"
    return name.partition(";")[0].upper(), value


def own_lines(lines: Iterable[str]) -> Iterator[str]:
    """A component's lines without those of components within it."""
    depth = 0
    for line in lines:
        head = line[:6].upper()
        if head == "BEGIN:":
            depth += 1
        elif head.startswith("END:"):
            depth -= 1
        elif depth == 0:
            yield line


def event_lines(content: bytes) -> Iterator[tuple[str, ...]]:
    """The lines of each event in a calendar; ValueError where the calendar is not whole."""
    lines = unfolded(content)
    if lines[0].upper() != "BEGIN:VCALENDAR" or lines[-1].upper() != "END:VCALENDAR":
        message = "not a whole calendar"
        raise ValueError(message)
    begins = [place for place, line in enumerate(lines) if line.upper() == "BEGIN:VEVENT"]
    ends = [place for place, line in enumerate(lines) if line.upper() == "END:VEVENT"]
    for begin, end in zip(begins, ends, strict=True):
        yield tuple(lines[begin + 1 : end])


def events_in(content: bytes) -> dict[str, CalendarEvent]:
    """The events of a file that the program wrote, by UID; ValueError when it is damaged."""
    return {event.uid: event for event in map(_whole, event_lines(content))}


def _whole(lines: tuple[str, ...]) -> CalendarEvent:
    """The event; a ValueError where it lacks what is needed, or says a thing twice."""
    told = list(map(name_and_value, own_lines(lines)))
    values = dict(told)
    if len(values) < len(told) or not all(values.get(name) for name in _NEEDED):
        message = "an event that says something twice, or lacks something"
        raise ValueError(message)
    _ = int(values["SEQUENCE"]), datetime.fromisoformat(values["DTSTAMP"])
    _ = date.fromisoformat(values["DTSTART"]), date.fromisoformat(values["DTEND"])
    return CalendarEvent(lines)


def calendar_of(lines: Iterable[str], events: Iterable[CalendarEvent]) -> bytes:
    """A calendar file: lines of its own beyond version and product, and events in this order."""
    head = written(("BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{PRODUCT}", *lines))
    return b"".join((head, *(event.content for event in events), written(("END:VCALENDAR",))))
