"""What becomes of an event on a server, decided without one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Event

from planner.writing import (
    CalendarEvent,
    Held,
    Step,
    begins_anew,
    event_lines,
    publication,
    saying_of,
)
from planner.writing.calendar_event import calendar_of
from planner.writing.content_lines import escaped

_LINES = (
    "SUMMARY:Sow radish 3",
    "DTSTART;VALUE=DATE:20270501",
    "DTEND;VALUE=DATE:20270502",
    "DTSTAMP:20270220T000000Z",
    "UID:0a",
    "SEQUENCE:1",
    "CATEGORIES:sow",
    "DESCRIPTION:Sow 30 seeds\\, 1/2 in deep.",
    "LAST-MODIFIED:20270220T000000Z",
    "LOCATION:Gate bed",
    "STATUS:CONFIRMED",
    "BEGIN:VALARM",
    "DESCRIPTION:Sow radish 3",
    "END:VALARM",
)
_EVENT = CalendarEvent(_LINES)
_IMPRINT = saying_of(_LINES).imprint


def _with(*changes: tuple[str, str]) -> CalendarEvent:
    text = "\n".join(_LINES)
    for was, now in changes:
        assert was in text
        text = text.replace(was, now, 1)
    return CalendarEvent(tuple(line for line in text.split("\n") if line))


def _held(event: CalendarEvent) -> dict[str, Held]:
    return {"0a": Held("/0a.ics", '"1"', saying_of(event.lines))}


_MOVED = _with(("DTEND;VALUE=DATE:20270502", "DTEND;VALUE=DATE:20270503"))
_OFF = _with(("CONFIRMED", "CANCELLED"))


@pytest.mark.parametrize(
    ("event", "there", "sent", "step"),
    [
        (_EVENT, None, {}, Step.NEW),
        (_EVENT, None, {"0a": _IMPRINT}, Step.TAKEN_OUT),
        (_EVENT, _EVENT, {}, Step.SAME),
        (_EVENT, _EVENT, {"0a": "other"}, Step.SAME),
        (_MOVED, _EVENT, {"0a": _IMPRINT}, Step.MOVED),
        (_MOVED, _EVENT, {}, Step.MOVED),
        (_with(("deep", "low")), _EVENT, {"0a": _IMPRINT}, Step.REWORDED),
        (_OFF, _EVENT, {"0a": _IMPRINT}, Step.CALLED_OFF),
        (_OFF, _OFF, {"0a": _IMPRINT}, Step.SAME),
        (_MOVED, _with(("Sow radish", "✓ Sow radish")), {"0a": _IMPRINT}, Step.CHANGED),
        (_MOVED, _with(("CATEGORIES:sow", "CATEGORIES:sow,DONE")), {"0a": _IMPRINT}, Step.CHANGED),
        (_MOVED, _with(("CONFIRMED", "CANCELLED")), {"0a": _IMPRINT}, Step.CHANGED),
        (_OFF, _with(("Gate", "Wall")), {"0a": _IMPRINT}, Step.CHANGED),
        (_EVENT, _with(("CONFIRMED", "COMPLETED")), {"0a": _IMPRINT}, Step.TICKED),
        (_MOVED, _with(("SEQUENCE", "PERCENT-COMPLETE:100\nSEQUENCE")), {}, Step.TICKED),
        (_MOVED, _with(("SEQUENCE", "PERCENT-COMPLETE:0\nSEQUENCE")), {}, Step.MOVED),
        (_OFF, _with(("SEQUENCE", "COMPLETED:20270501T090000Z\nSEQUENCE")), {}, Step.TICKED),
        # Without a record: an app stamped it, or it is from a later season.
        (_MOVED, _with(("DIFIED:20270220T000000Z", "DIFIED:20270220T081500Z")), {}, Step.CHANGED),
        (_MOVED, _with(("SEQUENCE:1", "SEQUENCE:2")), {}, Step.CHANGED),
    ],
)
def test_an_event_takes_its_step(
    event: CalendarEvent, there: CalendarEvent | None, sent: dict[str, str], step: Step
) -> None:
    (one,) = publication([event], {} if there is None else _held(there), sent)
    assert one.step is step


def test_what_was_called_off_before_it_was_sent_needs_nothing() -> None:
    assert publication([_OFF], {}, {}) == []


def test_a_calendar_was_emptied_only_where_nothing_is_left() -> None:
    assert begins_anew({"other"}, {"0a", "0b"})
    assert not begins_anew({"0b"}, {"0a", "0b"})
    assert not begins_anew({"other"}, set())


def test_a_resource_is_one_event_without_method() -> None:
    (one,) = publication([_EVENT], {}, {})
    assert one.content == calendar_of((), [_EVENT])
    assert b"METHOD" not in one.content


@pytest.mark.parametrize(
    "told",
    [
        ("SUMMARY:Sow", "summary;LANGUAGE=en:Sow"),
        ("DTSTART;VALUE=DATE:20270501", 'DTSTART;X-A="a:b;c";VALUE=DATE:20270501'),
        ("CATEGORIES:sow", "CATEGORIES: sow"),
        ("\nSTATUS:CONFIRMED", ""),
        ("SEQUENCE:1", "SEQUENCE:4\nX-APP:1\nCLASS:PUBLIC"),
        ("BEGIN:VALARM", "BEGIN:VALARM\nSUMMARY:x"),
    ],
)
def test_how_it_is_written_makes_no_difference(told: tuple[str, str]) -> None:
    assert saying_of(_with(told).lines).imprint == _IMPRINT


@given(
    words=st.lists(
        st.text(st.sampled_from("ab,;\\n ☂"), min_size=1).map(str.strip).filter(bool), max_size=4
    )
)
def test_kinds_are_read_as_the_library_writes_them(words: list[str]) -> None:
    event = Event()
    event.add("uid", "0a")
    if words:
        event.add("categories", words)
    content = b"BEGIN:VCALENDAR\r\n" + event.to_ical() + b"END:VCALENDAR\r\n"
    (lines,) = event_lines(content)
    kinds = [value for name, value in saying_of(lines).told if name == "CATEGORIES"]
    assert kinds == sorted(words)


@given(text=st.text(st.sampled_from('ab,;:\\n "☂\n')))
def test_words_are_read_back(text: str) -> None:
    told = dict(saying_of(("UID:0a", f"SUMMARY:{escaped(text)}")).told)
    assert told["SUMMARY"] == text.strip()
