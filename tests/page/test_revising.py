"""A revision asked for on the shared page: one at a time, shown first, and written as shown."""

import re
import threading
import time
from datetime import date
from pathlib import Path
from urllib.parse import urlencode

import pytest

from planner.cli.folder import season_made
from planner.cli.share import revising
from tests.page.conftest import LOOKED_AT, Shared

_FORM = "application/x-www-form-urlencoded"


def _step(shared: Shared, step: str, mark: str = "") -> tuple[int, str]:
    body = urlencode({"step": step, "mark": mark}).encode()
    status, content = shared.send(body, "revision", Content_Type=_FORM)
    return status, content.decode()


def _shown(shared: Shared) -> str:
    """The page once the season is worked out."""
    assert _step(shared, "show")[0] == 202
    for _ in range(600):
        page = _now(shared)
        if 'data-stage="running"' not in page:
            return page
        time.sleep(0.1)
    pytest.fail("it is still being worked out")


def _now(shared: Shared) -> str:
    return shared.read("revision")[1]


def _mark(page: str) -> str:
    found = re.search(r'name="mark" value="([0-9a-f]+)"', page)
    assert found
    return found[1]


def test_a_revision_is_shown_and_then_written_as_shown(shared: Shared) -> None:
    record = shared.folder / "season" / "season.json"
    before = record.read_bytes()
    page = _shown(shared)
    assert "What would change" in page
    assert record.read_bytes() == before
    status, page = _step(shared, "write", _mark(page))
    assert status == 200
    assert "The season is written" in page
    assert f'"as_of": "{LOOKED_AT}"' in record.read_text("utf-8")
    assert _step(shared, "write", "0" * 64)[0] == 409


def test_what_was_noted_meanwhile_is_not_passed_over(shared: Shared) -> None:
    record = shared.folder / "season" / "season.json"
    before = record.read_bytes()
    page = _shown(shared)
    assert shared.tick(event="sown", sowing=shared.task("sow")["sowing"])[0] == 200
    status, told = _step(shared, "write", _mark(page))
    assert status == 409
    assert "changed meanwhile" in told
    assert record.read_bytes() == before


def test_a_second_revision_waits_for_the_first(
    shared: Shared, monkeypatch: pytest.MonkeyPatch
) -> None:
    go_on = threading.Event()

    def slowly(folder: Path, day: date) -> object:
        go_on.wait(60)
        return season_made(folder, day)

    monkeypatch.setattr(revising, "season_made", slowly)
    assert _step(shared, "show")[0] == 202
    for step in ("show", "write"):
        status, page = _step(shared, step)
        assert status == 409
        assert "is being worked out already" in page
    assert shared.tick(event="sown", sowing=shared.task("sow")["sowing"])[0] == 200
    go_on.set()
    while 'data-stage="running"' in _now(shared):
        time.sleep(0.05)
    assert "What would change" in _now(shared)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("garden.toml", "garden.toml"),
        ("journal.csv", "journal.csv"),
        ("season/season.json", "It is damaged"),
    ],
)
def test_a_plan_that_cannot_stand_is_told(shared: Shared, name: str, words: str) -> None:
    (shared.folder / name).write_text("nothing, of use\n", "utf-8")
    page = _shown(shared)
    assert words in page
    assert "What to do: " in page
    assert "Show what would change" in page


@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_a_mistake_of_ours_ends_nothing(shared: Shared, monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object) -> None:
        raise RuntimeError  # told in the terminal that shares the page

    monkeypatch.setattr(revising, "season_made", fails)
    assert "It could not be worked out." in _shown(shared)
    assert shared.tick(event="sown", sowing=shared.task("sow")["sowing"])[0] == 200


def test_a_calendar_that_cannot_be_read_stops_the_writing(shared: Shared) -> None:
    update = shared.folder / "season" / "calendar-update.ics"
    page = _shown(shared)
    update.write_text("no calendar", "utf-8")
    status, told = _step(shared, "write", _mark(page))
    assert status == 503
    assert "cannot be read" in told


def test_what_is_no_step_is_refused(shared: Shared) -> None:
    assert _step(shared, "leap")[0] == 400
    assert shared.send(b"{", "revision")[0] == 400
