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
