"""calendar.ics and calendar-update.ics: tasks and harvest times as all-day events (RFC 5545).

The first holds what is live, to subscribe to or to import once. The second also holds what
was called off, for apps where a file is imported again. An event that has not changed keeps
its stamps and number to the byte, so nothing is announced twice.
"""

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID, uuid5

from icalendar import Alarm, Calendar, Event, vText

from planner.scheduling import Sowing
from planner.season import Season
from planner.tasks import Task, TaskKind
from planner.terms import amount_words

_PRODUCT = "-//planner//sowing and harvest plan//EN"
# The evening before, at six: counted back from midnight at the start of the day.
_ALARM = timedelta(hours=-6)
_REFRESH = timedelta(hours=12)
_HARVESTS = {TaskKind.PICK, TaskKind.CUT}


@dataclass(frozen=True, slots=True)
class Calendars:
    """The two files."""

    live: bytes
    update: bytes


@dataclass(frozen=True, slots=True)
class Entry:
    """What an event says, before it is stamped. `last` is the last day, included."""

    id: str
    summary: str
    first: date
    last: date
    bed: str
    kind: str
    text: str


def write_calendars(season: Season, earlier: bytes | None) -> Calendars:
    """Both calendars of a season; `earlier` is the update file written before, if any."""
    known = _known_events(earlier)
    live = [_stamped(entry, season, known) for entry in entries_of(season)]
    uids = {str(event["uid"]) for event in live}
    gone = [
        _called_off(event, season.as_of)
        for uid, event in sorted(known.items())
        if uid not in uids and _can_be_called_off(event, season.as_of)
    ]
    return Calendars(_file(season, live), _file(season, [*live, *gone]))


def entries_of(season: Season) -> Iterator[Entry]:
    """An entry for every task but harvests, and one harvest time for every sowing."""
    for task in season.tasks:
        if task.kind not in _HARVESTS:
            yield _task_entry(task)
    for sowing in season.sowings:
        yield _harvest_entry(sowing)


def _task_entry(task: Task) -> Entry:
    kind = str(task.kind)
    words = f"{kind.capitalize()} {task.sowing}"
    text = f"{task.text}\n{task.bed}, {task.place}."
    return Entry(task.id, words, task.on, task.on, task.bed, kind, text)


def _harvest_entry(sowing: Sowing) -> Entry:
    first, last = sowing.harvest[0].day, sowing.harvest[-1].day
    total = sum(taken.amount for taken in sowing.harvest)
    in_all = "" if first == last else " in all"
    beds = " + ".join(dict.fromkeys(block.bed for block in sowing.blocks))
    text = (
        f"About {amount_words(total, sowing.crop.unit)} of {sowing.crop.name}{in_all}. Likely ripe "
        f"from {sowing.ripe.likely}, between {sowing.ripe.early} and {sowing.ripe.late}, "
        f"counted {sowing.counted}."
    )
    entry_id = f"{sowing.id}/harvest/1"
    return Entry(entry_id, f"Harvest {sowing.id}", first, last, beds, "harvest", text)


def _known_events(earlier: bytes | None) -> dict[str, Event]:
    if not earlier:
        return {}
    calendar = Calendar.from_ical(earlier)
    events = (one for one in calendar.walk("VEVENT") if isinstance(one, Event))
    return {str(event["uid"]): event for event in events}


def _stamped(entry: Entry, season: Season, known: dict[str, Event]) -> Event:
    """The event with the stamps it had if it says the same, else with a higher number."""
    uid = str(uuid5(UUID(str(season.plan_id)), entry.id))
    before = known.get(uid)
    if before is None:
        return _event(entry, uid, _stamp(season.as_of), 0)
    number = int(before.get("sequence", 0))
    same = _event(entry, uid, before.decoded("dtstamp"), number)
    if same.to_ical() == before.to_ical():
        return same
    return _event(entry, uid, _stamp(season.as_of), number + 1)


def _stamp(day: date) -> datetime:
    return datetime.combine(day, time(), UTC)


def _event(entry: Entry, uid: str, stamp: datetime, number: int) -> Event:
    event = Event()
    event.add("uid", uid)
    event.add("dtstamp", stamp)
    event.add("last-modified", stamp)
    event.add("sequence", number)
    event.add("dtstart", entry.first)
    event.add("dtend", entry.last + timedelta(days=1))
    event.add("summary", _plain(entry.summary))
    event.add("description", _plain(entry.text))
    event.add("location", _plain(entry.bed))
    event.add("categories", [entry.kind])
    event.add("transp", "TRANSPARENT")
    event.add("status", "CONFIRMED")
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", _ALARM)
    alarm.add("description", _plain(entry.summary))
    event.add_component(alarm)
    return event


def _can_be_called_off(event: Event, as_of: date) -> bool:
    """Whether an event is still to come, or was called off before; what is past stays as it was."""
    return str(event.get("status")) == "CANCELLED" or event.decoded("dtend") > as_of


def _called_off(event: Event, as_of: date) -> Event:
    """The event marked as cancelled; one marked earlier stays as it was."""
    if str(event.get("status")) == "CANCELLED":
        return event
    number = int(event.get("sequence", 0)) + 1
    for name in ("sequence", "dtstamp", "last-modified", "status"):
        event.pop(name, None)
    event.add("sequence", number)
    event.add("dtstamp", _stamp(as_of))
    event.add("last-modified", _stamp(as_of))
    event.add("status", "CANCELLED")
    event.subcomponents = []
    return event


def _file(season: Season, events: list[Event]) -> bytes:
    calendar = Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    name = _plain(season.garden.site.name)
    calendar["name"] = vText(name)
    calendar["x-wr-calname"] = vText(name)
    calendar.add("refresh-interval", _REFRESH, parameters={"VALUE": "DURATION"})
    calendar.add("x-published-ttl", "PT12H")
    for event in sorted(events, key=lambda one: (one.decoded("dtstart"), str(one["uid"]))):
        calendar.add_component(event)
    return bytes(calendar.to_ical())


def _plain(text: str) -> str:
    """Text in one normal form without control characters, which RFC 5545 3.3.11 excludes."""
    normal = unicodedata.normalize("NFC", text)
    return "".join(one for one in normal if one == "\n" or unicodedata.category(one) != "Cc")
