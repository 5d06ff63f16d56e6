"""`planner bedwork` for water, times away, seed and appetite, as a grower runs it."""

import json
import tomllib
from pathlib import Path

import pytest

from tests.bedwork.command import bedwork_record, bedwork_text, scheduled
from tests.plans import AS_OF, planner, write_plan

_PLAN = """\
plan = 1

[site]
latitude = 47.6
last_spring_freeze = "03-28"
first_fall_freeze = "11-09"
mean_high = ["8 degC", "10 degC", "12 degC", "15 degC", "19 degC", "22 degC",
             "25 degC", "25 degC", "22 degC", "15 degC", "11 degC", "8 degC"]
mean_low = ["3 degC", "3 degC", "4 degC", "6 degC", "9 degC", "12 degC",
            "14 degC", "14 degC", "11 degC", "8 degC", "5 degC", "3 degC"]

[season]
from = 2027-02-01
to = 2027-12-31
away = [{ from = 2027-07-10, to = 2027-07-20 }]

[water]
rain = ["140 mm", "90 mm", "95 mm", "70 mm", "50 mm", "40 mm",
        "18 mm", "22 mm", "40 mm", "90 mm", "160 mm", "140 mm"]

[[bed]]
name = "North 1"
length = "2.4 m"
width = "1.2 m"
soil_depth = "40 cm"
sun = "full"
flow = "12 L in 15 min"

[[target]]
crop = "bush bean"
each_week = "1 kg"
from = 2027-07-01
to = 2027-09-15

[[packet]]
crop = "bush bean"
seeds = 100
packed = 2026
left = 30
"""
_PARTS = ("water", "away", "seed", "appetite")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan folder with a season."""
    return scheduled(tmp_path_factory.mktemp("water") / "plan", _PLAN)


@pytest.mark.parametrize("part", _PARTS)
def test_a_part_can_be_asked_for_alone(folder: Path, part: str) -> None:
    assert part in bedwork_record(folder, "--part", part)
    assert bedwork_text(folder, "--part", part) == bedwork_text(folder, "--part", part)


def test_metric_beds_are_told_in_litres_and_millimetres(folder: Path) -> None:
    text = bedwork_text(folder, "--part", "water")
    assert "48 L/h (measured)" in text
    assert " mm " in text
    assert "gal" not in text


def test_the_sheet_for_a_time_away_is_fit_to_print(folder: Path) -> None:
    text = bedwork_text(folder, "--part", "away")
    assert "WHILE WE ARE AWAY, 10 July 2027 to 20 July 2027" in text
    assert "North 1" in text
    assert "bush bean 1" in text
    assert "5 to 10 cm" in text


def test_seed_of_the_season_is_the_seed_to_order(folder: Path) -> None:
    season = json.loads((folder / "season" / "season.json").read_text("utf-8"))
    (bean,) = bedwork_record(folder, "--part", "seed")["seed"]["crops"]
    assert bean["seeds"] == sum(one["seeds"] for one in season["sowings"])
    assert bean["to_buy"] == bean["seeds"] - 30
    assert bean["packets"] == -(-bean["to_buy"] // 100)


def test_targets_for_a_household_are_toml_that_can_be_pasted(folder: Path, tmp_path: Path) -> None:
    text = bedwork_text(folder, "--part", "appetite", "--people", "2")
    pasted = text.split("in place of targets there:\n\n")[1].split("\n\nTake care")[0]
    targets = tomllib.loads(pasted)["target"]
    record = bedwork_record(folder, "--part", "appetite", "--people", "2")
    assert [one["crop"] for one in targets] == [
        one["crop"] for one in record["appetite"]["proposal"]["targets"]
    ]
    head = _PLAN[: _PLAN.index("[[target]]")]
    plan = write_plan(tmp_path / "plan", f"{head}\n{pasted}\n")
    assert planner("check", plan).returncode == 0
    done = planner("schedule", plan, *AS_OF, "--effort", "0")
    assert done.returncode == 0, done.stderr


def test_appetite_needs_no_season_and_the_rest_do(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", _PLAN)
    assert "bush bean" in bedwork_text(plan, "--part", "appetite")
    for part in ("water", "away", "seed"):
        done = planner("bedwork", plan, "--part", part)
        assert done.returncode == 2
        assert "make one with: planner schedule" in done.stderr


@pytest.mark.parametrize("people", ["0", "-3", "1e9", "nan", "inf"])
def test_no_such_household_is_one_problem(folder: Path, people: str) -> None:
    done = planner("bedwork", folder, "--part", "appetite", f"--people={people}")
    assert done.returncode == 2
    assert done.stdout == ""
    assert "What to do: name a number between 0.5 and 5000" in done.stderr
    assert "Traceback" not in done.stderr
