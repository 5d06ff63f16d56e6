"""`planner publish` and a real CalDAV server, seen through another client's eyes."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from caldav.davclient import DAVClient

from planner.writing import CalendarEvent, saying_of
from tests.calendar.conftest import Stages
from tests.calendar.programs import PASSWORD, USER, ServedCalendar, Server, radicale
from tests.plans import contents, planner


@dataclass(frozen=True, slots=True)
class Garden:
    """A plan folder with the first season, and an empty calendar on a server to publish it to."""

    folder: Path
    served: ServedCalendar
    calendar: Any  # of another client, which is typed for two ways of waiting

    def publish(self) -> str:
        """What one run says."""
        result = planner("publish", self.folder, environment=self.served.environment.items())
        assert result.returncode == 0, result.stderr
        assert PASSWORD not in result.stdout + result.stderr
        return result.stdout

    def events(self) -> dict[str, Any]:
        """What another client sees: components by UID."""
        found = [one.icalendar_component for one in self.calendar.get_events()]
        assert len({str(one["uid"]) for one in found}) == len(found)
        return {str(one["uid"]): one for one in found}

    def edit(self, uid: str, **properties: object) -> None:
        """Change an event as an app does."""
        found = self.calendar.get_event_by_uid(uid)
        with found.edit_icalendar_component() as component:
            for name, value in properties.items():
                key = name.replace("_", "-")
                component.pop(key, None)
                component.add(key, value)
        found.save()


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    with radicale(tmp_path_factory.mktemp("server")) as running:
        yield running


@pytest.fixture
def garden(tmp_path: Path, stages: Stages, server: Server) -> Iterator[Garden]:
    calendar = server.empty_calendar()
    with DAVClient(
        calendar.url, username=USER, password=PASSWORD, enable_rfc6764=False, timeout=60
    ) as client:
        folder = stages.first.laid_out(tmp_path / "plan")
        yield Garden(folder, calendar, _calendar(client, calendar.url))


def _calendar(client: Any, url: str) -> Any:
    return client.calendar(url=url)


def _seen(component: Any) -> tuple[object, ...]:
    texts = (str(component[name]) for name in ("summary", "description", "location"))
    return (component.decoded("dtstart"), component.decoded("dtend"), *texts)


def _said(event: CalendarEvent) -> tuple[object, ...]:
    told = dict(saying_of(event.lines).told)
    texts = (told[name] for name in ("SUMMARY", "DESCRIPTION", "LOCATION"))
    return (event.first, event.end, *texts)


def _all_said(events: dict[str, CalendarEvent]) -> dict[str, object]:
    return {uid: _said(event) for uid, event in events.items()}


def test_another_client_sees_the_events_of_the_season(garden: Garden, stages: Stages) -> None:
    said = garden.publish()
    assert said == f"{len(stages.first.live)} new\n"
    seen = garden.events()
    assert {uid: _seen(one) for uid, one in seen.items()} == _all_said(stages.first.live)
    assert {str(one["sequence"]) for one in seen.values()} == {"0"}


def test_each_event_is_a_resource_without_method(garden: Garden, stages: Stages) -> None:
    garden.publish()
    found = garden.calendar.get_events()
    assert len(found) == len(stages.first.live)
    for one in found:
        assert str(one.data).count("BEGIN:VEVENT") == 1
        assert "METHOD" not in str(one.data)


def test_a_second_run_sends_nothing(garden: Garden, stages: Stages) -> None:
    garden.publish()
    before, folder = garden.served.requests("PUT"), contents(garden.folder)
    assert before == len(stages.first.live)
    assert garden.publish() == f"{len(stages.first.live)} as they were\n"
    assert garden.served.requests("PUT") == before
    assert garden.served.requests("DELETE") == 0
    assert contents(garden.folder) == folder


def test_nothing_is_sent_again_where_the_record_was_lost(garden: Garden, stages: Stages) -> None:
    garden.publish()
    (garden.folder / ".published").unlink()
    assert garden.publish() == f"{len(stages.first.live)} as they were\n"
    assert garden.served.requests("PUT") == len(stages.first.live)


@pytest.mark.parametrize("record", ["kept", "lost"])
def test_only_what_changed_is_sent(garden: Garden, stages: Stages, record: str) -> None:
    garden.publish()
    before = garden.served.requests("PUT")
    stages.later.laid_out(garden.folder)
    if record == "lost":
        (garden.folder / ".published").unlink()
    said = garden.publish()
    reworded = len(stages.changed) - len(stages.moved)
    same = len(stages.later.live) - len(stages.new) - len(stages.changed)
    counts = [
        (len(stages.new), "new"),
        (len(stages.moved), "moved"),
        (reworded, "reworded"),
        (len(stages.gone), "called off"),
        (same, "as they were"),
    ]
    assert said == ", ".join(f"{number} {words}" for number, words in counts if number) + "\n"
    assert garden.served.requests("PUT") - before == len(stages.new) + len(stages.changed)
    assert garden.served.requests("DELETE") == len(stages.gone)
    seen = {uid: _seen(one) for uid, one in garden.events().items()}
    assert seen == _all_said(stages.later.live)


def test_what_the_grower_did_is_left_and_told(garden: Garden, stages: Stages) -> None:
    garden.publish()
    ticked, renamed, sorted_away, *_ = sorted(stages.moved)
    kept = min(stages.gone)
    out = min(stages.changed - {ticked, renamed, sorted_away})
    garden.edit(ticked, percent_complete=100)
    garden.edit(renamed, summary="✓ done, and it rained")
    garden.edit(sorted_away, categories=["DONE"])
    garden.edit(kept, description="Two plants were a gift.")
    garden.calendar.get_event_by_uid(out).delete()
    stages.later.laid_out(garden.folder)
    left = garden.events()
    lines = garden.publish().splitlines()
    seen = garden.events()
    for uid in (ticked, renamed, sorted_away, kept):
        assert seen[uid].to_ical() == left[uid].to_ical()
    assert out not in seen
    counts = lines.pop()
    assert "1 left as you ticked it off" in counts
    assert "3 left as you changed them" in counts
    assert "1 not sent again as you took it out" in counts
    later = stages.later.live
    day = later[ticked].first
    summary = saying_of(later[ticked].lines).summary
    assert f"{summary} is on {day} in the season; left as you ticked it off." in lines
    assert any("is called off in the season; left as you changed it." in one for one in lines)
    assert len(lines) == 4
    puts = garden.served.requests("PUT")
    garden.publish()
    assert garden.served.requests("PUT") == puts


def test_an_alarm_put_off_in_an_app_is_no_change_of_the_event(
    garden: Garden, stages: Stages
) -> None:
    garden.publish()
    moved = min(stages.moved)
    garden.edit(moved, x_moz_lastack="20270301T070000Z")
    stages.later.laid_out(garden.folder)
    garden.publish()
    assert _seen(garden.events()[moved]) == _said(stages.later.live[moved])


def test_events_of_others_are_never_touched(garden: Garden) -> None:
    day = date(2027, 5, 1)
    garden.calendar.add_event(
        uid="dentist", dtstart=day, dtend=day + timedelta(days=1), summary="Dentist"
    )
    before = garden.calendar.get_event_by_uid("dentist").data
    garden.publish()
    garden.publish()
    assert garden.calendar.get_event_by_uid("dentist").data == before


def test_an_emptied_calendar_is_filled_again(garden: Garden, stages: Stages) -> None:
    garden.publish()
    for one in garden.calendar.get_events():
        one.delete()
    assert garden.publish() == f"{len(stages.first.live)} new\n"


def test_what_went_and_came_back_is_sent_once(garden: Garden, stages: Stages) -> None:
    """The season changes and changes back: numbers rise, but words are what count."""
    garden.publish()
    stages.later.laid_out(garden.folder)
    garden.publish()
    stages.first.laid_out(garden.folder)
    garden.publish()
    seen = {uid: _seen(one) for uid, one in garden.events().items()}
    assert _all_said(stages.first.live).items() <= seen.items()


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"PLANNER_CALDAV_PASSWORD": "guess"}, "does not know robin with this password"),
        ({"PLANNER_CALDAV_USER": "wren"}, "does not know wren with this password"),
    ],
)
def test_a_wrong_login_is_one_problem(garden: Garden, change: dict[str, str], said: str) -> None:
    result = planner(
        "publish", garden.folder, environment={**garden.served.environment, **change}.items()
    )
    assert result.returncode == 2
    assert said in result.stderr
    assert result.stderr.count("What to do") == 1
    assert "guess" not in result.stderr
    assert not (garden.folder / ".published").exists()


@pytest.mark.parametrize(
    ("path", "said"),
    [("nowhere/", "The server knows no calendar"), ("", "What is at this address is no calendar")],
)
def test_an_address_without_calendar_is_one_problem(garden: Garden, path: str, said: str) -> None:
    url = f"{garden.served.home}{path}"
    result = planner(
        "publish", garden.folder, "--url", url, environment=garden.served.environment.items()
    )
    assert result.returncode == 2
    assert said in result.stderr
    assert result.stderr.count("What to do") == 1
