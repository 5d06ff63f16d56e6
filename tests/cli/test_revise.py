"""`planner log` and `planner schedule`: from the bed to the journal to the new plan."""

import json
from pathlib import Path

import pytest

from tests.plans import QUICK, contents, garden_toml, planner, write_plan

_FIRST = ("--as-of", "2027-01-15", *QUICK)
_LATER = ("--as-of", "2027-06-12", *QUICK)


@pytest.fixture(scope="module")
def scheduled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    plan = write_plan(tmp_path_factory.mktemp("revise") / "plan", garden_toml())
    assert planner("schedule", plan, *_FIRST).returncode == 0
    sowings = json.loads((plan / "season" / "season.json").read_text(encoding="utf-8"))["sowings"]
    missed = max(one["sow_on"] + "|" + one["id"] for one in sowings if one["sow_on"] < "2027-06-12")
    day, name = missed.split("|")
    told = planner("log", plan, "missed", name, "--on", day)
    assert told.returncode == 0, told.stderr
    return plan


def test_what_if_shows_the_changes_and_writes_nothing(scheduled: Path) -> None:
    before = contents(scheduled)
    shown = planner("schedule", scheduled, *_LATER, "--what-if")
    assert shown.returncode == 0, shown.stderr
    assert "What changed:" in shown.stdout
    assert "Never begun, so let go: " in shown.stdout
    assert "Nothing was written" in shown.stdout
    assert contents(scheduled) == before


def test_the_plan_follows_the_journal_and_then_stays(scheduled: Path) -> None:
    assert "Never begun" in planner("schedule", scheduled, *_LATER).stdout
    before = contents(scheduled)
    again = planner("schedule", scheduled, *_LATER)
    assert "Nothing; all goes on as it was planned." in again.stdout
    assert contents(scheduled) == before


def test_a_damaged_journal_stops_the_plan_and_is_kept(scheduled: Path) -> None:
    before = contents(scheduled)
    journal = scheduled / "journal.csv"
    whole = journal.read_bytes()
    journal.write_bytes(whole + b"soon,sown,radish 1,,\n")
    refused = planner("schedule", scheduled, *_LATER)
    assert refused.returncode == 2
    assert "journal.csv, line 3" in refused.stderr
    assert journal.read_bytes() == whole + b"soon,sown,radish 1,,\n"
    journal.write_bytes(whole)
    assert contents(scheduled) == before
