"""Scheduling again: what has begun stands, what is over is let go, no name is given twice."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar, Event
from typer.testing import CliRunner

from planner.cli.app import app
from tests.season_runs import SMALL_GARDEN, SMALL_PLAN, PlanFolder, plan_folder, want
from tests.verifier import broken_rules

FIRST_DAY = date(2027, 3, 1)
RADISH = want("radish", "12 roots", "2027-05-10", "2027-05-30")
LETTUCE = want("leaf lettuce", "8 oz", "2027-06-07", "2027-08-29")
NEXT_SPRING = date(2028, 3, 15)
AWAY_IN_SUMMER = "{ from = 2027-07-18, to = 2027-07-26 }"

# Radishes of one year, garlic and kale that stand over winter; then the same plan a year on.
THIS_YEAR = (
    SMALL_GARDEN.replace("to = 2027-11-30", "to = 2028-08-30").replace(AWAY_IN_SUMMER, "")
    + RADISH
    + want("kale", "8 oz", "2028-04-20", "2028-06-29")
    + want("garlic", "5 each", "2028-07-20", "2028-08-20")
)
NEXT_YEAR = (
    THIS_YEAR.replace("from = 2027-", "from = 2028-")
    .replace("to = 2027-", "to = 2028-")
    .replace("to = 2028-08-30", "to = 2028-11-30")
)


def _sowings(folder: PlanFolder) -> dict[str, dict[str, Any]]:
    return {one["id"]: one for one in folder.record()["sowings"]}


def _write(folder: PlanFolder, garden: str) -> None:
    (folder.path / "garden.toml").write_text(garden, encoding="utf-8")


def _days(folder: PlanFolder, names: set[str]) -> dict[str, str]:
    """The day of every task of some sowings."""
    return {one["id"]: one["on"] for one in folder.record()["tasks"] if one["sowing"] in names}


# What is over.


def test_a_crop_is_taken_out_once_all_of_it_is_cleared_and_its_names_stay_given(
    tmp_path: Path,
) -> None:
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + RADISH + LETTUCE)
    folder.schedule(FIRST_DAY)
    given = folder.record()["names_given"]["radish"]
    _write(folder, SMALL_GARDEN + LETTUCE)
    folder.schedule(date(2027, 6, 30))
    assert not any(name.startswith("radish") for name in _sowings(folder))
    assert folder.record()["names_given"]["radish"] == given
    _write(folder, SMALL_GARDEN + LETTUCE + want("radish", "9 roots", "2027-09-01", "2027-09-26"))
    folder.schedule(date(2027, 6, 30))
    again = {name for name in _sowings(folder) if name.startswith("radish")}
    assert again
    assert all(int(name.rpartition(" ")[2]) > given for name in again)
    assert broken_rules(folder.path) == []


def test_a_bed_is_taken_out_once_all_that_stood_in_it_is_cleared(tmp_path: Path) -> None:
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + RADISH)
    folder.schedule(FIRST_DAY)
    (bed,) = {block["bed"] for one in _sowings(folder).values() for block in one["blocks"]}
    garden = SMALL_GARDEN.replace(bed, "Another bed") + LETTUCE
    _write(folder, garden)
    folder.schedule(date(2027, 6, 1))
    assert broken_rules(folder.path) == []


def test_a_crop_still_in_the_ground_on_the_day_it_is_cleared_stays_in_the_plan(
    tmp_path: Path,
) -> None:
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + RADISH + LETTUCE)
    folder.schedule(FIRST_DAY)
    last = max(one["clear_on"] for one in _sowings(folder).values() if one["crop"] == "radish")
    _write(folder, SMALL_GARDEN + LETTUCE)
    result = CliRunner().invoke(app, ["schedule", str(folder.path), "--as-of", last])
    assert result.exit_code == 2
    assert "until it is cleared" in result.stderr


# A year on.


@pytest.fixture(scope="module")
def year_on(tmp_path_factory: pytest.TempPathFactory) -> tuple[PlanFolder, PlanFolder]:
    """A season, and the one made of the same plan a year on, in a folder that knew the first."""
    before = plan_folder(tmp_path_factory.mktemp("this") / "plan", THIS_YEAR)
    before.schedule(FIRST_DAY)
    after = plan_folder(tmp_path_factory.mktemp("next") / "plan", THIS_YEAR)
    after.schedule(FIRST_DAY)
    _write(after, NEXT_YEAR)
    after.schedule(NEXT_SPRING)
    return before, after


def test_a_new_season_lets_go_what_was_cleared_before_it(
    year_on: tuple[PlanFolder, PlanFolder],
) -> None:
    before, after = map(_sowings, year_on)
    let_go = {name for name, one in before.items() if one["clear_on"] < "2028-03-01"}
    assert any(name.startswith("radish") for name in let_go)
    assert not let_go & set(after)
    assert not [one for one in year_on[1].record()["tasks"] if one["sowing"] in let_go]


def test_a_new_season_keeps_what_stands_over_winter_with_the_days_of_its_tasks(
    year_on: tuple[PlanFolder, PlanFolder],
) -> None:
    before, after = map(_sowings, year_on)
    standing = {name for name, one in after.items() if one["state"] == "begun"}
    assert {"garlic 1"} <= standing
    assert {before[name]["crop"] for name in standing} == {"garlic", "kale"}
    for name in standing:
        assert after[name] == {**before[name], "state": "begun"}
    assert _days(year_on[0], standing) == _days(year_on[1], standing)


def test_a_new_season_counts_its_own_weeks_and_breaks_no_rule(
    year_on: tuple[PlanFolder, PlanFolder],
) -> None:
    after = year_on[1]
    rows = after.files()["harvest.csv"].decode().splitlines()[1:]
    assert min(rows) >= "2028-W09"
    assert broken_rules(after.path) == []


def test_tasks_begun_before_the_season_stay_on_their_days(tmp_path: Path) -> None:
    """Thinning is due before the new first day; it is not put off to it."""
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + RADISH + LETTUCE)
    folder.schedule(FIRST_DAY)
    _write(folder, (SMALL_GARDEN + RADISH + LETTUCE).replace("2027-03-01", "2027-05-10"))
    begun = {name for name, one in _sowings(folder).items() if one["sow_on"] < "2027-05-10"}
    before = _days(folder, begun)
    folder.schedule(date(2027, 5, 10))
    assert any("/thin/" in task and on < "2027-05-10" for task, on in before.items())
    assert _days(folder, begun) == before


def test_a_harvest_before_the_season_is_no_surplus(tmp_path: Path) -> None:
    """Lettuce begun in spring is cut on both sides of the new first day."""
    garden = SMALL_GARDEN + want("leaf lettuce", "8 oz", "2027-06-07", "2027-08-29")
    folder = plan_folder(tmp_path / "plan", garden)
    folder.schedule(FIRST_DAY)
    assert min(one["harvest_days"][0]["on"] for one in _sowings(folder).values()) < "2027-07-01"
    later = garden.replace("2027-03-01", "2027-07-05").replace("2027-06-07", "2027-07-05")
    _write(folder, later)
    folder.schedule(date(2027, 7, 5))
    rows = folder.files()["harvest.csv"].decode().splitlines()[1:]
    assert min(rows) >= "2027-W27"
    assert broken_rules(folder.path) == []


# What stands.


def test_a_week_met_in_full_is_met_in_full_after_scheduling_again(tmp_path: Path) -> None:
    """0.7 lb are no whole number of grams."""
    garden = SMALL_GARDEN + want("leaf lettuce", "0.2 kg", "2027-06-07", "2027-06-20")
    garden += want("leaf lettuce", "0.7 lb", "2027-06-21", "2027-07-11")
    folder = plan_folder(tmp_path / "plan", garden)
    folder.schedule(FIRST_DAY)
    before = folder.record()
    assert before["sowings"][0]["unit"] == "kg"
    for day in (date(2027, 7, 1), date(2027, 7, 2)):
        folder.schedule(day)
    assert folder.record()["measures"] == before["measures"]
    assert folder.record()["unmet"] == before["unmet"]


def test_what_was_begun_is_free_again_as_of_an_earlier_day_and_no_name_passes_on(
    tmp_path: Path,
) -> None:
    folder = plan_folder(tmp_path / "plan")
    known: dict[str, dict[str, Any]] = {}
    gone: set[str] = set()
    for day in (FIRST_DAY, date(2027, 7, 1), date(2027, 4, 20), date(2027, 6, 1)):
        folder.schedule(day)
        sowings = _sowings(folder)
        assert not gone & set(sowings)
        for name, one in sowings.items():
            assert (one["state"] == "begun") == (one["sow_on"] < day.isoformat())
            _assert_same_sowing(known.get(name, one), one)
        gone |= set(known) - set(sowings)
        known |= sowings
        assert broken_rules(folder.path) == []


def _assert_same_sowing(before: Mapping[str, Any], after: Mapping[str, Any]) -> None:
    assert (before["crop"], before["method"]) == (after["crop"], after["method"])
    apart = date.fromisoformat(before["sow_on"]) - date.fromisoformat(after["sow_on"])
    assert abs(apart.days) <= 21, after["id"]


# Calendars.


def _events(folder: PlanFolder, file: str) -> dict[str, Event]:
    """Events by what they are about."""
    read = Calendar.from_ical(folder.files()[file])
    events = [one for one in read.walk("VEVENT") if isinstance(one, Event)]
    assert len({str(one["uid"]) for one in events}) == len(events)
    return {str(one["summary"]): one for one in events}


def _standing_of(event: Event) -> tuple[str, int]:
    return str(event["status"]), int(str(event["sequence"]))


def test_an_event_called_off_comes_back_confirmed_with_a_higher_number(tmp_path: Path) -> None:
    """Away when a begun radish is thinned, then at home after all."""
    garden = SMALL_PLAN
    folder = plan_folder(tmp_path / "plan", garden)
    folder.schedule(FIRST_DAY)
    tasks = folder.record()["tasks"]
    thin = next(one for one in tasks if one["kind"] == "thin" and one["sowing"] == "radish 1")
    ripe = _sowings(folder)["radish 1"]["first_pick_on"]["early"]
    as_of = date.fromisoformat(thin["on"])
    summary = "Thin radish 1"
    folder.schedule(as_of)
    first = _standing_of(_events(folder, "calendar-update.ics")[summary])

    weeks_away = f"{{ from = {thin['on']}, to = {ripe} }}, {AWAY_IN_SUMMER}"
    folder.rewrite(AWAY_IN_SUMMER, weeks_away)
    folder.schedule(as_of)
    assert summary not in _events(folder, "calendar.ics")
    off = _standing_of(_events(folder, "calendar-update.ics")[summary])
    folder.schedule(as_of)
    assert _standing_of(_events(folder, "calendar-update.ics")[summary]) == off

    folder.rewrite(weeks_away, AWAY_IN_SUMMER)
    folder.schedule(as_of)
    back = _standing_of(_events(folder, "calendar-update.ics")[summary])
    assert _standing_of(_events(folder, "calendar.ics")[summary]) == back
    assert [words for words, _ in (first, off, back)] == ["CONFIRMED", "CANCELLED", "CONFIRMED"]
    assert first[1] < off[1] < back[1]
    folder.schedule(as_of)
    assert _standing_of(_events(folder, "calendar-update.ics")[summary]) == back


def test_a_comment_in_the_plan_is_no_change_of_it(tmp_path: Path) -> None:
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + RADISH + LETTUCE)
    folder.schedule(FIRST_DAY)
    plain = folder.record()
    _write(folder, "# Of my aunt's garden.\n\n" + SMALL_GARDEN + "# Red ones.\n" + RADISH + LETTUCE)
    folder.schedule(FIRST_DAY)
    assert folder.record() == plain
    _write(folder, SMALL_GARDEN + RADISH.replace("12 roots", "13 roots") + LETTUCE)
    folder.schedule(FIRST_DAY)
    assert folder.record()["basis"] != plain["basis"]
