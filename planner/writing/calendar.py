"""calendar.ics and calendar-update.ics: tasks and harvest times as all-day events (RFC 5545).

The first holds what is live, to subscribe to or to import once. The second also holds what
was called off, for apps where a file is imported again. An event that has not changed keeps
its stamps and number to the byte, so nothing is announced twice.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from uuid import uuid5

from planner.bedwork import TooEarlyHarvests, too_early_harvests
from planner.scheduling import Sowing
from planner.season import Season
from planner.tasks import Task
from planner.terms import amount_words
from planner.writing.calendar_event import CANCELLED, CalendarEvent, calendar_of, events_in
from planner.writing.content_lines import component, escaped, plain
from planner.writing.place_words import beds_words

# The evening before, at six: counted back from midnight at the start of the day.
_ALARM = "-PT6H"
_REFRESH = "PT12H"


@dataclass(frozen=True, slots=True)
class Calendars:
    """The two files."""

    live: bytes
    update: bytes


@dataclass(frozen=True, slots=True)
class Unstamped:
    """What an event says, before it is stamped. `last` is the last day, included."""

    id: str
    summary: str
    first: date
    last: date
    bed: str
    kind: str
    text: str


def write_calendars(season: Season, earlier: bytes | None) -> Calendars:
    """Both calendars of a season; `earlier` is the update file written before, if any.

    A ValueError says that the earlier file is damaged.
    """
    known = events_in(earlier) if earlier else {}
    live = [_stamped(said, season, known) for said in unstamped_events(season)]
    uids = {event.uid for event in live}
    gone = [
        _called_off(event, season.as_of)
        for uid, event in sorted(known.items())
        if uid not in uids and _can_be_called_off(event, season.as_of)
    ]
    file = _file(season, live)
    return Calendars(file, _file(season, [*live, *gone]) if gone else file)


def unstamped_events(season: Season) -> Iterator[Unstamped]:
    """An event for every task but harvests, and one harvest time for every sowing.

    A harvest time begins when raw manure has lain long enough; where it ends before, it says not
    to harvest (§46).
    """
    too_early = too_early_harvests(season.garden, season.sowings)
    for task in season.tasks:
        if not task.kind.is_harvest:
            yield _task_event(task)
    for sowing in season.sowings:
        if sowing.harvest:
            yield _harvest_event(sowing, too_early)


def _task_event(task: Task) -> Unstamped:
    kind = str(task.kind)
    words = f"{kind.capitalize()} {task.sowing}"
    text = f"{task.text}\n{task.bed}, {task.place}."
    return Unstamped(task.id, words, task.on, task.on, task.bed, kind, text)


def _harvest_event(sowing: Sowing, too_early: TooEarlyHarvests) -> Unstamped:
    waits = [too_early.get((sowing.id, one.day)) for one in sowing.harvest]
    safe = [one for one, wait in zip(sowing.harvest, waits, strict=True) if wait is None]
    taken_then = safe or sowing.harvest
    first, last = taken_then[0].day, taken_then[-1].day
    total = math.fsum(taken.amount for taken in taken_then)
    in_all = "" if first == last else " in all"
    text = (
        f"About {amount_words(total, sowing.crop.unit)} of {sowing.crop.name}{in_all}. Likely ripe "
        f"from {sowing.ripe.likely}, between {sowing.ripe.early} and {sowing.ripe.late}, "
        f"counted {sowing.counted}."
    )
    summary = f"Harvest {sowing.id}" if safe else f"Do not harvest {sowing.id}"
    wait = next(filter(None, waits), None)
    if wait is not None:
        text = f"{wait.words(sowing.crop.name)} {text}"
    event_id = f"{sowing.id}/harvest/1"
    return Unstamped(event_id, summary, first, last, beds_words(sowing), "harvest", text)


def _stamped(said: Unstamped, season: Season, known: dict[str, CalendarEvent]) -> CalendarEvent:
    """The event with the stamps it had if it says the same, else with a higher number."""
    uid = str(uuid5(season.plan_id, said.id))
    before = known.get(uid)
    if before is None:
        return _event(said, uid, _stamp(season.as_of), 0)
    same = _event(said, uid, before.value("DTSTAMP"), before.number)
    if same == before:
        return before
    return _event(said, uid, _stamp(season.as_of), before.number + 1)


def _stamp(day: date) -> str:
    return f"{day:%Y%m%d}T000000Z"


def _event(said: Unstamped, uid: str, stamp: str, number: int) -> CalendarEvent:
    summary = escaped(plain(said.summary))
    alarm = ("ACTION:DISPLAY", f"DESCRIPTION:{summary}", f"TRIGGER:{_ALARM}")
    return CalendarEvent(
        (
            f"SUMMARY:{summary}",
            f"DTSTART;VALUE=DATE:{said.first:%Y%m%d}",
            f"DTEND;VALUE=DATE:{said.last + timedelta(days=1):%Y%m%d}",
            f"DTSTAMP:{stamp}",
            f"UID:{uid}",
            f"SEQUENCE:{number}",
            f"CATEGORIES:{escaped(said.kind)}",
            f"DESCRIPTION:{escaped(plain(said.text))}",
            f"LAST-MODIFIED:{stamp}",
            f"LOCATION:{escaped(plain(said.bed))}",
            "STATUS:CONFIRMED",
            "TRANSP:TRANSPARENT",
            *component("VALARM", alarm),
        )
    )


def _can_be_called_off(event: CalendarEvent, as_of: date) -> bool:
    """Whether an event is still to come, or was called off before; what is past stays as it was."""
    return event.is_called_off or event.end > as_of


def _called_off(event: CalendarEvent, as_of: date) -> CalendarEvent:
    """The event marked as cancelled, without its alarm; one marked earlier stays as it was."""
    if event.is_called_off:
        return event
    stamp = _stamp(as_of)
    now = {
        "DTSTAMP": stamp,
        "LAST-MODIFIED": stamp,
        "SEQUENCE": str(event.number + 1),
        "STATUS": CANCELLED,
    }
    alarm = event.lines.index("BEGIN:VALARM") if "BEGIN:VALARM" in event.lines else None
    return CalendarEvent(tuple(_restamped(line, now) for line in event.lines[:alarm]))


def _restamped(line: str, now: dict[str, str]) -> str:
    name = line.partition(":")[0]
    return f"{name}:{now[name]}" if name in now else line


def _file(season: Season, events: list[CalendarEvent]) -> bytes:
    name = escaped(plain(season.garden.site.name))
    lines = (
        f"NAME:{name}",
        f"X-WR-CALNAME:{name}",
        f"REFRESH-INTERVAL;VALUE=DURATION:{_REFRESH}",
        f"X-PUBLISHED-TTL:{_REFRESH}",
    )
    in_order = sorted(events, key=lambda one: (one.value("DTSTART"), one.uid))
    return calendar_of(lines, in_order)
