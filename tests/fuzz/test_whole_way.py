"""Gardens made up by chance go the whole way: checked, planned, logged, revised, given away.

The calendar is read with icalendar (RFC 5545), the record by its JSON Schema (draft 2020-12).
"""

import json
from datetime import date, timedelta
from pathlib import Path

import icalendar
import jsonschema
from hypothesis import given
from hypothesis import strategies as st

from planner.cli.folder.season_calendars import season_events
from planner.journal import Event
from tests.fuzz.holds import assert_whole, broken_in, cases, run
from tests.fuzz.materials import REPOSITORY, write_case
from tests.test_generated_gardens import Written, gardens

_SCHEMA = json.loads((REPOSITORY / "docs" / "season.schema.json").read_text("utf-8"))
_AMOUNTS = {Event.PICKED: ("1", "12"), Event.LATE: ("-3", "20"), Event.LOST: ("", "2")}
_DRAFT = ("--effort", "0")


@cases(0.04)
@given(gardens(), st.data())
def test_what_check_passes_is_planned_logged_revised_and_given_away(
    tmp_path: Path, written: Written, data: st.DataObject
) -> None:
    plan = write_case(tmp_path / "plan", {"garden.toml": written.text.encode()})
    assert run("check", plan).status == 0
    assert run("schedule", plan, "--as-of", str(written.as_of), *_DRAFT).status == 0
    assert broken_in(plan) == []
    _assert_given_away(plan)
    for _ in range(data.draw(st.integers(0, 4))):
        _log(plan, written.later, data)
    assert run("check", plan).status == 0
    revised = run("schedule", plan, "--as-of", str(written.later), *_DRAFT)
    assert revised.status == 0, revised.told
    _assert_given_away(plan)


def _log(plan: Path, until: date, data: st.DataObject) -> None:
    """Note something that may have happened, whether or not it can stand."""
    record = json.loads((plan / "season" / "season.json").read_bytes())
    begun = [one for one in record["sowings"] if date.fromisoformat(one["sow_on"]) < until]
    if not begun:
        return
    sowing = data.draw(st.sampled_from(begun))
    event = data.draw(st.sampled_from([*Event]))
    sown = date.fromisoformat(sowing["sow_on"])
    day = sown + timedelta(days=data.draw(st.integers(0, (until - sown).days)))
    number = data.draw(st.sampled_from(_AMOUNTS.get(event, ("",))))
    units = {Event.PICKED: sowing["unit"], Event.LATE: "days", Event.LOST: "plants"}
    amount = [f"--amount={number} {units[event]}"] if number else []
    before = (plan / "journal.csv").read_bytes() if (plan / "journal.csv").exists() else b""
    noted = run("log", plan, event, sowing["id"], "--on", str(day), *amount)
    after = (plan / "journal.csv").read_bytes() if (plan / "journal.csv").exists() else b""
    assert (after != before) == (noted.status == 0)


def _assert_given_away(plan: Path) -> None:
    assert_whole(plan)
    season = plan / "season"
    record = json.loads((season / "season.json").read_bytes())
    jsonschema.validate(record, _SCHEMA)
    events = icalendar.Calendar.from_ical((season / "calendar.ics").read_bytes()).walk("VEVENT")
    assert len(season_events(plan)) >= len(events)
    for name in ("week", "outlook", "bedwork"):
        assert run(name, plan).status == 0
    for sowing in record["sowings"][:2]:
        assert run("why", plan, sowing["id"]).status == 0
