"""Both calendar files by the sections of RFC 5545, and as three libraries read them."""

import json
import subprocess
import unicodedata
from collections import Counter
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
import recurring_ical_events
from icalendar import Calendar, Event

from tests.node_packages import NODE_PREFIX, node_package
from tests.season_runs import (
    SMALL_PLAN,
    TRYING_BED,
    TRYING_NAME,
    PlanFolder,
    plan_folder,
)

_FIRST_DAY = date(2027, 2, 20)
_SECOND_DAY = date(2027, 2, 27)
_LIVE, _UPDATE = "calendar.ics", "calendar-update.ics"
_STAMPS = {"SEQUENCE", "DTSTAMP", "LAST-MODIFIED"}


@dataclass
class Part:
    """A component as its unfolded lines, without looking into it further."""

    name: str
    lines: list[str] = field(default_factory=list)
    parts: list["Part"] = field(default_factory=list)
    part_is_last: bool = True

    def values(self, name: str) -> list[str]:
        """The raw values of a property."""
        return [value for key, value in map(_property, self.lines) if key.split(";")[0] == name]

    def value(self, name: str) -> str:
        """The raw value of a property that stands once."""
        values = self.values(name)
        assert len(values) == 1, f"{self.name} has {len(values)} {name}"
        return values[0]

    @property
    def uid(self) -> str:
        return self.value("UID")

    @property
    def said(self) -> list[str]:
        """Everything but the stamps: what the event tells its reader."""
        return [line for line in self.lines if _property(line)[0] not in _STAMPS]


@dataclass(frozen=True)
class Scheduled:
    """The files and the record of one run."""

    files: dict[str, bytes]
    record: dict[str, Any]

    def part(self, name: str) -> Part:
        return _part(self.files[name])

    def events(self, name: str) -> dict[str, Part]:
        """The events of a file by UID."""
        events = self.part(name).parts
        assert {event.name for event in events} == {"VEVENT"}
        return {event.uid: event for event in events}


@dataclass(frozen=True)
class History:
    """A plan scheduled, again without change, changed (no tomatoes, away in May), and as it was."""

    first: Scheduled
    again: Scheduled
    without: Scheduled
    back: Scheduled
    folder: PlanFolder


@pytest.fixture(scope="module")
def history(tmp_path_factory: pytest.TempPathFactory) -> History:
    folder = plan_folder(tmp_path_factory.mktemp("calendar") / "plan")
    tomatoes = SMALL_PLAN[SMALL_PLAN.rindex("[[target]]") :]
    first = _scheduled(folder, _FIRST_DAY)
    again = _scheduled(folder, _SECOND_DAY)
    folder.rewrite(tomatoes, "")
    folder.rewrite("from = 2027-07-18, to = 2027-07-26", "from = 2027-05-20, to = 2027-06-02")
    folder.rewrite("12 roots", "14 roots")
    without = _scheduled(folder, _SECOND_DAY)
    (folder.path / "garden.toml").write_text(SMALL_PLAN, encoding="utf-8")
    return History(first, again, without, _scheduled(folder, _SECOND_DAY), folder)


@pytest.fixture(scope="module")
def season(history: History) -> Scheduled:
    return history.first


@pytest.fixture(params=[_LIVE, _UPDATE])
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def _scheduled(folder: PlanFolder, as_of: date) -> Scheduled:
    folder.schedule(as_of)
    return Scheduled(folder.files(), folder.record())


def _property(line: str) -> tuple[str, str]:
    """Name with parameters, and raw value. No parameter of ours holds a quoted colon."""
    key, _, value = line.partition(":")
    return key, value


def _part(content: bytes) -> Part:
    text = content.decode().replace("\r\n ", "")
    top = Part("")
    open_parts = [top]
    for line in text.split("\r\n")[:-1]:
        if line.startswith("BEGIN:"):
            open_parts.append(Part(line.removeprefix("BEGIN:")))
        elif line.startswith("END:"):
            closed = open_parts.pop()
            assert closed.name == line.removeprefix("END:")
            open_parts[-1].parts.append(closed)
        else:
            here = open_parts[-1]
            here.lines.append(line)
            here.part_is_last = here.part_is_last and not here.parts
    assert open_parts == [top]
    assert len(top.parts) == 1
    return top.parts[0]


def _day(raw: str) -> date:
    return datetime.strptime(raw, "%Y%m%d").replace(tzinfo=UTC).date()


def _unescaped(raw: str) -> str:
    """TEXT as RFC 5545 3.3.11 reads it; any other use of a backslash is a mistake."""
    text, rest = "", raw
    while rest:
        if rest[0] != "\\":
            assert rest[0] not in ",;", f"{rest[0]} stands bare in {raw}"
            text, rest = text + rest[0], rest[1:]
            continue
        assert rest[1] in "\\;,nN", f"\\{rest[1]} in {raw}"
        text, rest = text + ("\n" if rest[1] in "nN" else rest[1]), rest[2:]
    return text


# 3.1 Content lines.


def test_rfc5545_3_1_lines_end_with_carriage_return_and_line_feed(
    season: Scheduled, name: str
) -> None:
    content = season.files[name]
    assert content.endswith(b"\r\n")
    bare = content.replace(b"\r\n", b"")
    assert b"\n" not in bare
    assert b"\r" not in bare


def test_rfc5545_3_1_no_line_is_longer_than_75_octets(season: Scheduled, name: str) -> None:
    lines = season.files[name].split(b"\r\n")
    assert max(map(len, lines)) <= 75
    assert any(line.startswith(b" ") for line in lines), "nothing here needs folding"


def test_rfc5545_3_1_folding_splits_no_character(season: Scheduled, name: str) -> None:
    assert not season.files[name].startswith(b"\xef\xbb\xbf")
    for line in season.files[name].split(b"\r\n"):
        line.decode("utf-8", errors="strict")


# 3.3.11 Text.


def test_rfc5545_3_3_11_a_name_with_every_special_sign_is_escaped(
    season: Scheduled, name: str
) -> None:
    calendar = season.part(name)
    assert calendar.value("NAME") == 'Ferry\\; Street\\, "north"\\\\ bed ☂'
    assert _unescaped(calendar.value("X-WR-CALNAME")) == TRYING_NAME
    places = {_unescaped(event.value("LOCATION")) for event in calendar.parts}
    assert TRYING_BED in places


def test_rfc5545_3_3_11_every_text_is_well_escaped(season: Scheduled, name: str) -> None:
    tasks = {
        f"{one['text']}\n{one['bed']}, {one['place']}."
        for one in season.record["tasks"]
        if one["kind"] not in {"pick", "cut"}
    }
    told = {_unescaped(event.value("DESCRIPTION")) for event in season.events(name).values()}
    assert tasks <= told
    for event in season.events(name).values():
        for key in ("SUMMARY", "LOCATION", "CATEGORIES"):
            assert _unescaped(event.value(key))


def test_rfc5545_3_3_11_text_holds_no_control_character(tmp_path: Path) -> None:
    trying = '"A\\u0000b\\u0007c\\u000bd\\u007fe\\u0085f\\tg\\r\\nh"'
    plain = f"name = '{TRYING_NAME}'"
    assert plain in SMALL_PLAN
    folder = plan_folder(tmp_path / "plan", SMALL_PLAN.replace(plain, f"name = {trying}"))
    season = _scheduled(folder, _FIRST_DAY)
    text = season.files[_LIVE].decode().replace("\r\n", "")
    assert not [one for one in text if unicodedata.category(one) == "Cc" and one != "\t"]
    assert _unescaped(season.part(_LIVE).value("NAME")).replace("\t", "") == "Abcdefg\nh"


# 3.4 to 3.7 The calendar.


def test_rfc5545_3_4_a_file_is_one_calendar_of_events_alone(season: Scheduled, name: str) -> None:
    calendar = season.part(name)
    assert calendar.name == "VCALENDAR"
    assert {event.name for event in calendar.parts} == {"VEVENT"}


def test_rfc5545_3_6_version_and_product_stand_once(season: Scheduled, name: str) -> None:
    calendar = season.part(name)
    assert calendar.value("VERSION") == "2.0"
    assert calendar.value("PRODID")


def test_rfc5545_3_7_2_there_is_no_method(season: Scheduled, name: str) -> None:
    assert season.part(name).values("METHOD") == []


def test_rfc7986_5_3_the_calendar_has_no_uid_of_its_own(season: Scheduled, name: str) -> None:
    assert season.part(name).values("UID") == []


# 3.6.1 Events.


def test_rfc5545_3_6_1_every_event_has_one_uid_and_one_stamp(history: History, name: str) -> None:
    for season in (history.first, history.without, history.back):
        uids = [event.value("UID") for event in season.part(name).parts]
        assert len(set(uids)) == len(uids)
        for event in season.part(name).parts:
            assert event.value("DTSTAMP").endswith("Z")
            assert set(event.uid) <= set("0123456789abcdef-")


def test_rfc5545_3_6_1_events_are_whole_days_and_end_the_day_after(
    season: Scheduled, name: str
) -> None:
    events = season.events(name).values()
    for event in events:
        keys = {_property(line)[0] for line in event.lines}
        assert {"DTSTART;VALUE=DATE", "DTEND;VALUE=DATE"} <= keys
        assert _day(event.value("DTSTART")) < _day(event.value("DTEND"))
    spans = {_unescaped(event.value("SUMMARY")): _span(event) for event in events}
    for task in season.record["tasks"]:
        if task["kind"] not in {"pick", "cut"}:
            day = date.fromisoformat(task["on"])
            assert spans[f"{task['kind'].capitalize()} {task['sowing']}"] == (day, day)
    for sowing in season.record["sowings"]:
        days = [date.fromisoformat(one["on"]) for one in sowing["harvest_days"]]
        assert spans[f"Harvest {sowing['id']}"] == (days[0], days[-1])


def _span(event: Part) -> tuple[date, date]:
    """First and last day, both included."""
    return _day(event.value("DTSTART")), _day(event.value("DTEND")) - timedelta(days=1)


def test_rfc5545_3_6_1_there_is_an_event_for_every_task_and_every_harvest_time(
    season: Scheduled, name: str
) -> None:
    tasks = [one for one in season.record["tasks"] if one["kind"] not in {"pick", "cut"}]
    assert len(season.events(name)) == len(tasks) + len(season.record["sowings"])


# 3.6.6 Alarms.


def test_rfc5545_3_6_6_the_one_alarm_displays_the_evening_before(
    season: Scheduled, name: str
) -> None:
    for event in season.events(name).values():
        (alarm,) = event.parts
        assert alarm.name == "VALARM"
        assert alarm.value("ACTION") == "DISPLAY"
        assert alarm.value("TRIGGER").startswith("-P")
        assert alarm.value("DESCRIPTION") == event.value("SUMMARY")


def test_rfc5545_3_6_6_the_alarm_comes_last_and_has_no_uid(season: Scheduled, name: str) -> None:
    for event in season.events(name).values():
        assert event.part_is_last
        assert [alarm.values("UID") for alarm in event.parts] == [[]]


# 3.8.7 Changes.


def test_a_new_calendar_starts_at_sequence_0(season: Scheduled, name: str) -> None:
    assert {event.value("SEQUENCE") for event in season.events(name).values()} == {"0"}


def test_an_unchanged_season_leaves_both_calendars_as_they_were(
    history: History, name: str
) -> None:
    """Even on a later day, and with a name full of signs that must be escaped."""
    assert history.again.files[name] == history.first.files[name]


def test_both_files_are_the_same_before_anything_is_called_off(history: History) -> None:
    assert history.first.files[_LIVE] == history.first.files[_UPDATE]


def test_rfc5545_3_8_4_7_the_uid_stays_when_a_date_moves(history: History) -> None:
    before, after = history.again.events(_LIVE), history.without.events(_LIVE)
    by_summary = {event.value("SUMMARY"): event.uid for event in before.values()}
    moved = [
        event
        for event in after.values()
        if event.uid in before and _span(event) != _span(before[event.uid])
    ]
    assert moved, "nothing moved in this plan"
    for event in after.values():
        summary = event.value("SUMMARY")
        assert by_summary.get(summary, event.uid) == event.uid


def test_rfc5545_3_8_7_4_what_changes_counts_up_and_what_does_not_keeps_its_stamps(
    history: History,
) -> None:
    before, after = history.again.events(_UPDATE), history.without.events(_LIVE)
    both = [uid for uid in after if uid in before]
    changed = {uid for uid in both if after[uid].said != before[uid].said}
    assert changed
    assert changed != set(both)
    for uid in both:
        if uid not in changed:
            assert after[uid].lines == before[uid].lines
            continue
        assert int(after[uid].value("SEQUENCE")) == int(before[uid].value("SEQUENCE")) + 1
        assert after[uid].value("DTSTAMP") == f"{_SECOND_DAY:%Y%m%d}T000000Z"
        assert after[uid].value("LAST-MODIFIED") == after[uid].value("DTSTAMP")


def test_rfc5545_3_8_1_11_what_is_dropped_is_cancelled_in_the_update_file_alone(
    history: History,
) -> None:
    before = history.again.events(_LIVE)
    live, update = history.without.events(_LIVE), history.without.events(_UPDATE)
    dropped = set(before) - set(live)
    assert any("tomato" in before[uid].value("SUMMARY") for uid in dropped)
    assert set(update) == set(live) | dropped
    for uid, event in update.items():
        assert event.value("STATUS") == ("CANCELLED" if uid in dropped else "CONFIRMED")
        if uid in dropped:
            assert int(event.value("SEQUENCE")) == int(before[uid].value("SEQUENCE")) + 1
            assert event.value("DTSTART") == before[uid].value("DTSTART")
            assert event.parts == []
        else:
            assert event.lines == live[uid].lines


def test_a_cancelled_event_stays_cancelled_and_its_name_is_not_taken_up_again(
    history: History,
) -> None:
    gone = {
        uid: event
        for uid, event in history.without.events(_UPDATE).items()
        if event.value("STATUS") == "CANCELLED" and "tomato" in event.value("SUMMARY")
    }
    live, update = history.back.events(_LIVE), history.back.events(_UPDATE)
    assert any("tomato" in event.value("SUMMARY") for event in live.values())
    assert not set(gone) & set(live)
    for uid, event in gone.items():
        assert update[uid].lines == event.lines


def test_events_stand_in_order_of_their_day_and_uid(history: History, name: str) -> None:
    for season in (history.first, history.without, history.back):
        keys = [(event.value("DTSTART"), event.uid) for event in season.part(name).parts]
        assert keys == sorted(keys)


# As three libraries read them.

Seen = dict[str, tuple[str, str, str]]


@pytest.fixture(scope="module")
def by_ical_js(history: History) -> dict[str, list[dict[str, Any]]]:
    """What ical.js sees in both files of the last run."""
    node_package("ical.js", "2.2.1", "ical.js cannot read the calendars")
    files = [history.folder.path / "season" / name for name in (_LIVE, _UPDATE)]
    reader = Path(__file__).with_name("calendar_reader.mjs")
    ran = subprocess.run(
        ["node", str(reader), str(NODE_PREFIX), *map(str, files)],
        check=True,
        capture_output=True,
        timeout=60,
    )
    live, update = json.loads(ran.stdout)
    return {_LIVE: live, _UPDATE: update}


def _by_icalendar(content: bytes) -> Seen:
    calendar = Calendar.from_ical(content)
    events = [one for one in calendar.walk("VEVENT") if isinstance(one, Event)]
    return {str(one["uid"]): _seen(one) for one in events}


def _seen(event: Event) -> tuple[str, str, str]:
    return str(event.decoded("dtstart")), str(event["summary"]), str(event["location"])


def test_icalendar_recurring_ical_events_and_ical_js_see_the_same(
    history: History, name: str, by_ical_js: dict[str, list[dict[str, Any]]]
) -> None:
    content = history.back.files[name]
    by_icalendar = _by_icalendar(content)
    raw = history.back.events(name)
    whole = recurring_ical_events.of(Calendar.from_ical(content))
    spread = list(whole.between(date(2026, 1, 1), date(2029, 1, 1)))
    by_recurring = {str(one["uid"]): _seen(one) for one in spread}
    javascript = by_ical_js[name]
    seen = {one["uid"]: (one["start"], one["summary"], one["location"]) for one in javascript}
    assert len(spread) == len(javascript) == len(by_icalendar) == len(raw)
    assert by_icalendar == by_recurring == seen
    assert by_icalendar == {
        uid: (
            str(_day(event.value("DTSTART"))),
            _unescaped(event.value("SUMMARY")),
            _unescaped(event.value("LOCATION")),
        )
        for uid, event in raw.items()
    }


def test_ical_js_sees_whole_days_texts_numbers_and_alarms(
    history: History, name: str, by_ical_js: dict[str, list[dict[str, Any]]]
) -> None:
    raw = history.back.events(name)
    for seen in by_ical_js[name]:
        event = raw[seen["uid"]]
        assert seen["all_day"]
        assert seen["end"] == str(_day(event.value("DTEND")))
        assert seen["description"] == _unescaped(event.value("DESCRIPTION"))
        assert str(seen["sequence"]) == event.value("SEQUENCE")
        assert seen["status"] == event.value("STATUS")
        assert seen["alarms"] == (0 if seen["status"] == "CANCELLED" else 1)


def test_every_day_shows_its_tasks_and_the_harvests_that_are_on(history: History) -> None:
    season = history.back
    shown = recurring_ical_events.of(Calendar.from_ical(season.files[_LIVE]))
    wanted: dict[date, Counter[str]] = {}
    for task in season.record["tasks"]:
        if task["kind"] not in {"pick", "cut"}:
            words = f"{task['kind'].capitalize()} {task['sowing']}"
            wanted.setdefault(date.fromisoformat(task["on"]), Counter())[words] += 1
    for sowing in season.record["sowings"]:
        days = [date.fromisoformat(one["on"]) for one in sowing["harvest_days"]]
        for number in range((days[-1] - days[0]).days + 1):
            day = days[0] + timedelta(days=number)
            wanted.setdefault(day, Counter())[f"Harvest {sowing['id']}"] += 1
    first, last = min(wanted), max(wanted)
    for number in range(-1, (last - first).days + 2):
        day = first + timedelta(days=number)
        summaries = Counter(str(event["summary"]) for event in shown.at(day))
        assert summaries == wanted.get(day, Counter()), day
