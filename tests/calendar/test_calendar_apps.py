"""Both calendar files and the feed in programs that growers have: khal and vdirsyncer."""

import json
import subprocess
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from planner.writing import CalendarEvent, events_in, saying_of
from tests.calendar.conftest import LIVE, UPDATE, Stages
from tests.calendar.programs import program
from tests.calendar.test_share import shared
from tests.plans import AS_OF, QUICK, planner, write_plan

_KHAL = """\
[calendars]
[[garden]]
path = {folder}/items
type = calendar
[locale]
dateformat = %Y-%m-%d
longdateformat = %Y-%m-%d
timeformat = %H:%M
datetimeformat = %Y-%m-%d %H:%M
longdatetimeformat = %Y-%m-%d %H:%M
[default]
default_calendar = garden
[sqlite]
path = {folder}/khal.db
"""
_VDIRSYNCER = """\
[general]
status_path = "{folder}/status/"
[pair garden]
a = "feed"
b = "items"
collections = null
conflict_resolution = "a wins"
[storage feed]
type = "http"
url = "{url}"
[storage items]
type = "filesystem"
path = "{folder}/items/"
fileext = ".ics"
"""
_FIELDS = ("uid", "start-date", "end-date", "title", "status")


@dataclass(frozen=True, slots=True)
class Khal:
    """A calendar app in a terminal, with a calendar of its own."""

    folder: Path

    def run(self, *words: str) -> str:
        command = [program("khal"), "-c", str(self.folder / "khal.conf"), *words]
        done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=120)
        assert done.returncode == 0, done.stderr
        return done.stdout

    def take_in(self, content: bytes) -> None:
        """Import a file."""
        file = self.folder / "file.ics"
        file.write_bytes(content)
        self.run("import", "--batch", str(file))

    def listing(self) -> dict[str, tuple[str, ...]]:
        """What it shows of two years, each event once, by UID."""
        fields = [word for name in _FIELDS for word in ("--json", name)]
        said = self.run("list", "--once", *fields, "2027-01-01", "730d")
        shown: list[dict[str, Any]] = [
            one for line in said.splitlines() if line for one in json.loads(line)
        ]
        found = {one["uid"]: tuple(str(one[name]).strip() for name in _FIELDS[1:]) for one in shown}
        assert len(found) == len(shown), "an event stands there twice"
        return found


@pytest.fixture
def khal(tmp_path: Path) -> Khal:
    (tmp_path / "items").mkdir()
    (tmp_path / "khal.conf").write_text(_KHAL.format(folder=tmp_path), "utf-8")
    return Khal(tmp_path)


def _listed(event: CalendarEvent) -> tuple[str, ...]:
    told = dict(saying_of(event.lines).told)
    last = event.end.toordinal() - 1
    state = told["STATUS"]
    return str(event.first), str(event.end.fromordinal(last)), told["SUMMARY"], state


def test_khal_shows_the_season_and_after_the_update_the_new_one(khal: Khal, stages: Stages) -> None:
    khal.take_in(stages.first.files[LIVE])
    first = khal.listing()
    assert first == {uid: _listed(one) for uid, one in stages.first.live.items()}
    khal.take_in(stages.later.files[UPDATE])
    later = khal.listing()
    update = events_in(stages.later.files[UPDATE])
    assert later == {uid: _listed(one) for uid, one in update.items()}
    assert {uid for uid in first if later[uid][:2] != first[uid][:2]} == stages.moved
    assert {uid for uid, one in later.items() if one[-1] == "CANCELLED"} == stages.gone


def test_a_missed_sowing_is_called_off_in_khal_and_another_shown(
    khal: Khal, tmp_path: Path
) -> None:
    """The whole story: scheduled, imported, missed, revised, imported again."""
    plan = write_plan(tmp_path / "plan")
    season = plan / "season"
    assert planner("schedule", plan, *AS_OF).returncode == 0
    khal.take_in((season / LIVE).read_bytes())
    first = khal.listing()
    missed = max(
        (one["sow_on"], one["id"])
        for one in json.loads((season / "season.json").read_bytes())["sowings"]
        if one["sow_on"] < "2027-06-12"
    )
    assert planner("log", plan, "missed", missed[1], "--on", missed[0]).returncode == 0
    revised = planner("schedule", plan, "--as-of", "2027-06-12", *QUICK)
    assert revised.returncode == 0, revised.stderr
    update = (season / UPDATE).read_bytes()
    khal.take_in(update)
    later = khal.listing()
    said = {uid: _listed(one) for uid, one in events_in(update).items()}
    assert {uid: told for uid, told in later.items() if uid in said} == said
    # What was to be done before that day and is in no file any more stays as the past it is.
    left = {told[2] for uid, told in later.items() if uid not in said}
    assert left == {f"Sow {missed[1]}"}
    assert first.keys() <= later.keys()
    off = {told[2] for told in later.values() if told[-1] == "CANCELLED"}
    assert f"Harvest {missed[1]}" in off
    live = [told[2] for told in later.values() if told[-1] != "CANCELLED"]
    assert not any(told.endswith(f" {missed[1]}") for told in live if told.startswith("Harvest"))
    past = [uid for uid, told in first.items() if told[1] < missed[0]]
    assert all(later[uid] == first[uid] for uid in past)


def test_khal_takes_the_same_file_twice_without_doubling(khal: Khal, stages: Stages) -> None:
    for _ in range(2):
        khal.take_in(stages.first.files[LIVE])
    assert len(khal.listing()) == len(stages.first.live)


def test_vdirsyncer_follows_the_feed_event_by_event(tmp_path: Path, stages: Stages) -> None:
    plan = stages.first.laid_out(tmp_path / "plan")
    with shared(plan) as feed:
        url = f"http://127.0.0.1:{feed.port}{feed.path}"
        configuration = tmp_path / "config"
        configuration.write_text(_VDIRSYNCER.format(folder=tmp_path, url=url), "utf-8")
        _vdirsyncer(configuration, "discover")
        _vdirsyncer(configuration, "sync")
        assert _items(tmp_path) == sorted(map(_listed, stages.first.live.values()))
        stages.later.laid_out(plan)
        _vdirsyncer(configuration, "sync")
        assert _items(tmp_path) == sorted(map(_listed, stages.later.live.values()))


def _vdirsyncer(configuration: Path, verb: str) -> None:
    command = [program("vdirsyncer"), "-c", str(configuration), verb]
    done = subprocess.run(
        command, capture_output=True, text=True, check=False, timeout=120, input="y\n"
    )
    assert done.returncode == 0, done.stderr


def _items(folder: Path) -> list[tuple[str, ...]]:
    """What lies in the folder, one event a file; by what they say, as they got other UIDs there."""
    found = []
    for file in (folder / "items").glob("*.ics"):
        (event,) = events_in(file.read_bytes()).values()
        found.append(_listed(event))
    return sorted(found)
