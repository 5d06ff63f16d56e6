"""`planner bedwork` as a grower runs it."""

import json
from pathlib import Path

import pytest

from tests.bedwork.command import bedwork_record, bedwork_text, scheduled
from tests.bedwork.soil_plans import BED, new_bed, rectangle, soil_plan
from tests.plans import planner, write_plan

_MANURE = '[[manure]]\nbed = "Gate bed"\non = 2027-06-20'
_PLAN = soil_plan(
    "[soil]\nbag_price = 4.5",
    _MANURE,
    beds=BED + new_bed(rectangle("4 ft", "4 ft"), "12 in"),
    crops=("radish", "leaf lettuce"),
)
_PARTS = ("filling", "turnover", "manure", "water", "away")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan folder with a season."""
    return scheduled(tmp_path_factory.mktemp("bedwork") / "plan", _PLAN)


def test_all_parts_are_told_under_their_heads(folder: Path) -> None:
    told = bedwork_text(folder).splitlines()
    heads = [told.index(head) for head in ("Filling new beds", "Turnover", "Raw manure", "Water")]
    assert heads == sorted(heads)


@pytest.mark.parametrize("part", _PARTS)
def test_a_part_can_be_asked_for_alone(folder: Path, part: str) -> None:
    alone, everything = (
        bedwork_text(folder, *one).strip().split("\n\n") for one in (["--part", part], [])
    )
    begin = everything.index(alone[0])
    assert everything[begin : begin + 2] == alone[:2]
    assert set(bedwork_record(folder, "--part", part)) == {part, "cautions"}


def test_every_hazard_is_told_once(folder: Path) -> None:
    hazards = [one["hazard"] for one in bedwork_record(folder)["cautions"]]
    assert hazards
    assert len(hazards) == len(set(hazards))
    assert bedwork_text(folder).count("Dust and soil germs") == 1


def test_json_holds_all_parts_in_si(folder: Path) -> None:
    record = bedwork_record(folder)
    assert set(_PARTS) <= set(record)
    [bed] = record["filling"]["beds"]
    # 16 cubic feet are 453 litres.
    assert bed["volume_l"] == pytest.approx(453.07, abs=0.01)
    assert record["manure"][0]["touching_from"] == "2027-10-18"


def test_the_same_plan_gives_the_same_bytes(folder: Path) -> None:
    assert bedwork_text(folder) == bedwork_text(folder)
    assert bedwork_text(folder, "--json") == bedwork_text(folder, "--json")


def test_too_early_harvests_are_named(folder: Path) -> None:
    # Manure in June, harvests wanted in August: fewer than 120 days.
    picks = bedwork_record(folder)["manure"][0]["picks"]
    early = [one["sowing"] for one in picks if one["too_early"]]
    assert early
    words = bedwork_text(folder, "--part", "manure")
    assert all(name in words for name in early)


def test_new_beds_can_be_filled_before_there_is_a_season(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", _PLAN)
    told = bedwork_text(plan)
    assert "New bed: 16 cu ft, 1 ft deep" in told
    assert f"make one with: planner schedule {plan}" in told
    assert "make one with" not in bedwork_text(plan, "--part", "filling")
    record = bedwork_record(plan)
    assert {"filling", "cautions"} <= set(record)
    assert {"turnover", "manure", "water"} & set(record) == set()


def test_what_rests_on_sowings_asks_for_a_season(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", _PLAN)
    done = planner("bedwork", plan, "--part", "turnover")
    assert done.returncode == 2
    assert done.stdout == ""
    assert "no season yet" in done.stderr


def test_problems_of_the_plan_end_it(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", _PLAN.replace('bed = "Gate bed"', 'bed = "Gat bed"'))
    done = planner("bedwork", plan)
    assert done.returncode == 2
    assert "unknown bed" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_season_with_a_day_nobody_can_count_is_refused(folder: Path, tmp_path: Path) -> None:
    season = json.loads((folder / "season" / "season.json").read_bytes())
    season["sowings"][0]["clear_on"] = "9999-12-31"
    plan = write_plan(tmp_path / "plan", _PLAN)
    (plan / "season").mkdir()
    (plan / "season" / "season.json").write_text(json.dumps(season), encoding="utf-8")
    done = planner("bedwork", plan)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


def test_a_part_that_is_not_there_is_refused(folder: Path) -> None:
    done = planner("bedwork", folder, "--part", "weather")
    assert done.returncode == 2
    assert "filling" in done.stderr


def test_nothing_is_written(folder: Path) -> None:
    before = {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    bedwork_text(folder)
    assert {path: path.read_bytes() for path in folder.rglob("*") if path.is_file()} == before
