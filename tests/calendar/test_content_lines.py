"""Lines of a calendar as the program writes them, beside those of a library, to the byte."""

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from icalendar import Alarm, Calendar, Event

from planner.writing.calendar_event import CalendarEvent, calendar_of, events_in
from planner.writing.content_lines import (
    component,
    escaped,
    plain,
    unescaped,
    unfolded,
    written,
)

_TRYING = st.sampled_from([",", ";", "\\", "^", "\n", ":", '"', " ", "é", "畑", "🥕", "\u200d"])
# The library takes a backslash and an N for a new line even in text not yet escaped.
_TEXTS = st.text(
    st.one_of(_TRYING, st.characters(exclude_categories=["Cs", "Cc"])), max_size=200
).filter(lambda text: r"\N" not in text)
_DAYS = st.dates(date(1900, 1, 1), date(2200, 12, 31))
_STAMP = datetime(2027, 2, 20, tzinfo=UTC)


def _by_library(summary: str, text: str, day: date) -> bytes:
    event = Event()
    event.add("uid", "0a")
    event.add("dtstamp", _STAMP)
    event.add("sequence", 3)
    event.add("dtstart", day)
    event.add("dtend", day + timedelta(days=1))
    event.add("summary", summary)
    event.add("description", text)
    event.add("categories", [summary])
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("trigger", timedelta(hours=-6))
    alarm.add("description", summary)
    event.add_component(alarm)
    calendar = Calendar()
    calendar.add("prodid", "-//planner//sowing and harvest plan//EN")
    calendar.add("version", "2.0")
    calendar.add_component(event)
    return bytes(calendar.to_ical())


def _by_hand(summary: str, text: str, day: date) -> bytes:
    alarm = ("ACTION:DISPLAY", f"DESCRIPTION:{escaped(summary)}", "TRIGGER:-PT6H")
    lines = (
        f"SUMMARY:{escaped(summary)}",
        f"DTSTART;VALUE=DATE:{day:%Y%m%d}",
        f"DTEND;VALUE=DATE:{day + timedelta(days=1):%Y%m%d}",
        "DTSTAMP:20270220T000000Z",
        "UID:0a",
        "SEQUENCE:3",
        f"CATEGORIES:{escaped(summary)}",
        f"DESCRIPTION:{escaped(text)}",
        *component("VALARM", alarm),
    )
    return calendar_of((), [CalendarEvent(lines)])


@given(summary=_TEXTS, text=_TEXTS, day=_DAYS)
@example(summary="a" * 65 + "\\" * 9, text="b" * 62 + ",;" * 40, day=date(2027, 5, 1))
@example(summary="🥕" * 40, text="é" * 31 + "^n" * 50, day=date(2027, 5, 1))
def test_an_event_is_written_as_the_library_writes_it(summary: str, text: str, day: date) -> None:
    assert _by_hand(summary, text, day) == _by_library(summary, text, day)


@given(summary=_TEXTS, text=_TEXTS)
def test_what_is_written_is_read_back(summary: str, text: str) -> None:
    content = _by_hand(summary, text, date(2027, 5, 1))
    assert unescaped(escaped(text)) == text
    assert f"DESCRIPTION:{escaped(text)}" in unfolded(content)


@given(text=_TEXTS, ending=st.sampled_from([b"\n", b"\r\n"]))
def test_lines_may_also_end_with_a_line_feed_alone(text: str, ending: bytes) -> None:
    lines = [f"X:{escaped(text)}", "END:X"]
    assert unfolded(written(lines).replace(b"\r\n", ending)) == lines


@given(text=st.text(st.characters(exclude_categories=["Cs"])))
def test_plain_text_holds_no_control_character_but_the_new_line(text: str) -> None:
    told = plain(text)
    assert told == plain(told)
    assert all(one == "\n" or not (one < " " or "\x7f" <= one <= "\x9f") for one in told)


@pytest.mark.parametrize(
    ("damage", "by"),
    [
        (b"END:VCALENDAR\r\n", b""),
        (b"END:VEVENT\r\n", b""),
        (b"UID:0a\r\n", b""),
        (b"UID:0a", b"UID"),
        (b"UID:0a", b"UID:"),
        (b"UID:0a\r\n", b"UID:0a\r\nUID:0b\r\n"),
        (b"SEQUENCE:3", b"SEQUENCE:three"),
        (b"DTEND;VALUE=DATE:20270502", b"DTEND;VALUE=DATE:20271502"),
        (b"DTSTAMP:20270220T000000Z", b"DTSTAMP:yesterday"),
        (b"Sow", b"\xff"),
    ],
)
def test_a_damaged_calendar_is_not_taken_for_a_whole_one(damage: bytes, by: bytes) -> None:
    whole = _by_hand("Sow", "so", date(2027, 5, 1)).replace(
        b"SEQUENCE:3\r\n", b"SEQUENCE:3\r\nSTATUS:CONFIRMED\r\n"
    )
    assert list(events_in(whole)) == ["0a"]
    assert damage in whole
    with pytest.raises(ValueError):  # noqa: PT011 - which mistake it is makes no difference
        events_in(whole.replace(damage, by))
