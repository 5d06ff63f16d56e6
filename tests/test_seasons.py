"""Whole seasons, made by the program from plan folders: they keep the rules of the trade."""

import json
import shutil
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator, ValidationError

from planner.scheduling import Method, SowingState, UnmetKind
from planner.tasks import TaskKind
from planner.terms import UNITS, Dimension
from tests.season_runs import (
    REPOSITORY,
    SAMPLE_PLANS,
    SMALL_GARDEN,
    SMALL_PLAN,
    WRITTEN_FILES,
    PlanFolder,
    copy_of,
    plan_folder,
    want,
)
from tests.verifier import broken_rules

Record = dict[str, Any]
_LATER_DAYS = 100
_OTHER_MACHINES = (
    {"PYTHONHASHSEED": "1", "TZ": "Pacific/Auckland", "LC_ALL": "C"},
    {"PYTHONHASHSEED": "4242", "TZ": "America/Los_Angeles", "LC_ALL": "tr_TR.UTF-8"},
)


@dataclass(frozen=True)
class Made:
    """A sample plan and its season, made on its first day."""

    plan: Path
    folder: PlanFolder
    as_of: date


@pytest.fixture(scope="module", params=SAMPLE_PLANS, ids=lambda plan: str(plan.name))
def made(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Made:
    plan: Path = request.param
    folder = copy_of(plan, tmp_path_factory.mktemp("seasons") / plan.name)
    as_of: date = tomllib.loads((plan / "garden.toml").read_text("utf-8"))["season"]["from"]
    folder.schedule(as_of)
    return Made(plan, folder, as_of)


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> PlanFolder:
    folder = plan_folder(tmp_path_factory.mktemp("small") / "plan")
    folder.schedule(date(2027, 3, 1))
    return folder


@pytest.fixture(scope="module")
def schema() -> Record:
    read = json.loads((REPOSITORY / "docs" / "season.schema.json").read_bytes())
    assert isinstance(read, dict)
    return read


def test_there_are_sample_plans() -> None:
    assert "ferry_street" in {plan.name for plan in SAMPLE_PLANS}


def test_a_season_breaks_no_rule(made: Made) -> None:
    assert broken_rules(made.folder.path) == []


def test_a_season_follows_its_schema(made: Made, schema: Record) -> None:
    Draft202012Validator(schema).validate(made.folder.record())


def test_a_season_is_written_as_these_files(made: Made) -> None:
    names = tuple(made.folder.files())
    assert tuple(name for name in names if "/" not in name) == WRITTEN_FILES


def test_two_runs_write_equal_bytes(made: Made, tmp_path: Path) -> None:
    again = copy_of(made.plan, tmp_path / "again")
    again.schedule(made.as_of)
    assert again.files() == made.folder.files()


@pytest.mark.parametrize("machine", _OTHER_MACHINES, ids=lambda machine: str(machine["LC_ALL"]))
def test_another_machine_writes_equal_bytes(
    made: Made, machine: Mapping[str, str], tmp_path: Path
) -> None:
    elsewhere = copy_of(made.plan, tmp_path / "elsewhere")
    elsewhere.schedule_elsewhere(made.as_of, machine)
    assert elsewhere.files() == made.folder.files()


def test_scheduling_again_on_the_same_day_changes_no_byte(made: Made, tmp_path: Path) -> None:
    again = _with_season(made.folder, tmp_path)
    again.schedule(made.as_of)
    assert again.files() == made.folder.files()


def test_a_later_season_breaks_no_rule_and_moves_nothing_begun(
    made: Made, schema: Record, tmp_path: Path
) -> None:
    later = _with_season(made.folder, tmp_path)
    as_of = made.as_of + timedelta(days=_LATER_DAYS)
    later.schedule(as_of)
    Draft202012Validator(schema).validate(later.record())
    assert broken_rules(later.path) == []
    before, after = made.folder.record(), later.record()
    assert before["plan_id"] == after["plan_id"]
    kept = {one["id"]: one for one in after["sowings"]}
    begun = [one for one in before["sowings"] if one["sow_on"] < as_of.isoformat()]
    assert begun
    for sowing in begun:
        assert kept[sowing["id"]] == {**sowing, "state": "begun"}


def test_a_later_season_gives_no_name_to_another_crop_or_start(made: Made, tmp_path: Path) -> None:
    """A name that is seen again is the same crop, begun in the same way, about as early."""
    later = _with_season(made.folder, tmp_path)
    later.schedule(made.as_of + timedelta(days=_LATER_DAYS))
    before = {one["id"]: one for one in made.folder.record()["sowings"]}
    for sowing in later.record()["sowings"]:
        known = before.get(sowing["id"])
        if known is not None:
            assert (known["crop"], known["method"]) == (sowing["crop"], sowing["method"])
            apart = date.fromisoformat(known["sow_on"]) - date.fromisoformat(sowing["sow_on"])
            assert abs(apart.days) <= 21, sowing["id"]


def test_a_name_once_given_is_never_given_to_another_sowing(tmp_path: Path) -> None:
    folder = plan_folder(tmp_path / "plan")
    folder.schedule(date(2027, 3, 1))
    first = _names(folder)
    tomatoes = SMALL_PLAN[SMALL_PLAN.rindex("[[target]]") :]
    folder.rewrite(tomatoes, "")
    folder.schedule(date(2027, 3, 1))
    without = _names(folder)
    dropped = first - without
    assert dropped >= {name for name in first if name.startswith("tomato")}
    (folder.path / "garden.toml").write_text(SMALL_PLAN, encoding="utf-8")
    folder.schedule(date(2027, 3, 1))
    again = _names(folder)
    assert any(name.startswith("tomato") for name in again)
    assert not again & dropped


@pytest.mark.parametrize(
    "away", ["from = 2027-04-12, to = 2027-05-11", "from = 2027-04-15, to = 2027-05-14"]
)
def test_plants_are_hardened_off_in_the_fortnight_before_they_are_set_out(
    away: str, tmp_path: Path
) -> None:
    """Coming back from weeks away, one cannot set out what nobody hardened off."""
    garden = SMALL_GARDEN.replace("away = [", f"away = [{{ {away} }}, ")
    lettuce = want("leaf lettuce", "8 oz", "2027-06-07", "2027-07-04")
    tomato = want("tomato", "3 lb", "2027-06-21", "2027-08-22")
    folder = plan_folder(tmp_path / "plan", garden + lettuce + tomato)
    folder.schedule(date(2027, 3, 1))
    assert broken_rules(folder.path) == []


def test_what_is_wanted_once_is_there_by_its_day(tmp_path: Path) -> None:
    """By Monday 14 June: what is pulled on the Wednesday after comes too late."""
    once = '[[target]]\ncrop = "radish"\nonce = "40 roots"\nby = 2027-06-14\n'
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + once)
    folder.schedule(date(2027, 3, 1))
    record = folder.record()
    in_time = sum(
        taken["amount"]
        for sowing in record["sowings"]
        for taken in sowing["harvest_days"]
        if taken["on"] <= "2027-06-14"
    )
    assert in_time + sum(one["amount"] for one in record["unmet"]) >= 40


def test_what_a_store_lacks_is_said_of_the_weeks_that_will_lack_it(tmp_path: Path) -> None:
    """Onions are eaten in order, so a store too small runs out at its end, not in between."""
    garden = """
plan = 1

[site]
latitude = 45.5
last_spring_freeze = "03-06"
first_fall_freeze = "10-10"

[season]
from = 2027-02-26
to = 2028-02-26
garden_days = ["Mon"]

[[bed]]
name = "Strip"
length = "8 ft"
width = "2 ft"
soil_depth = "18 in"
sun = "full"

"""
    for crop, amount in (("basil", "4 oz"), ("arugula", "4 oz"), ("bulb onion", "3 each")):
        garden += want(crop, amount, "2027-07-22", "2027-11-30")
    folder = plan_folder(tmp_path / "plan", garden)
    folder.schedule(date(2027, 2, 6))
    assert broken_rules(folder.path) == []


def test_a_week_between_two_cuts_of_the_only_sowing_gets_a_reason(tmp_path: Path) -> None:
    """Two garden days in spring leave two starts, and each skips weeks between its cuts."""
    garden = """
plan = 1

[site]
latitude = -60.2
last_spring_freeze = "never"
first_fall_freeze = "never"

[season]
from = 2027-01-29
to = 2027-05-06
garden_days = ["Mon"]

[[bed]]
name = "South"
length = "8 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[target]]
crop = "spinach"
each_week = "8 oz"
from = 2027-02-26
to = 2027-05-06
"""
    folder = plan_folder(tmp_path / "plan", garden)
    folder.schedule(date(2027, 1, 29))
    assert broken_rules(folder.path) == []


@pytest.mark.parametrize(
    ("number", "unit"), [("3", "g"), ("0.125", "lb"), ("0.004", "kg"), ("99999.5", "g")]
)
def test_small_and_large_amounts_are_shown_as_they_are(
    number: str, unit: str, tmp_path: Path
) -> None:
    basil = want("basil", f"{number} {unit}", "2027-07-12", "2027-08-08")
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + basil)
    folder.schedule(date(2027, 3, 1))
    rows = folder.files()["harvest.csv"].decode().splitlines()[1:]
    assert {row.split(",")[2] for row in rows} - {"0"} == {number}
    assert broken_rules(folder.path) == []


@pytest.mark.parametrize("encoding", ["ascii", "cp1252"])
def test_a_terminal_without_the_letters_of_a_name_still_gets_its_season(
    encoding: str, tmp_path: Path
) -> None:
    folder = plan_folder(tmp_path / "plan")
    folder.schedule_elsewhere(date(2027, 3, 1), {"PYTHONIOENCODING": encoding})
    assert broken_rules(folder.path) == []


# The schema.


def test_the_schema_is_sound_and_closed(schema: Record) -> None:
    Draft202012Validator.check_schema(schema)
    for name, part in _objects(schema):
        assert "additionalProperties" in part, name
        assert set(part.get("required", ())) == set(part.get("properties", ())), name


def test_the_schema_describes_every_value(schema: Record) -> None:
    for name, part in _objects(schema):
        for key, value in part.get("properties", {}).items():
            words = value.get("description") or _target(schema, value).get("description")
            assert words, f"{name}.{key}"


def test_the_schema_knows_the_words_of_the_trade(schema: Record) -> None:
    words = schema["$defs"]
    sowing = words["sowing"]["properties"]
    harvest_units = {
        unit.name for unit in UNITS.values() if unit.dimension in {Dimension.MASS, Dimension.COUNT}
    }
    assert set(sowing["method"]["enum"]) == set(Method)
    assert set(sowing["state"]["enum"]) == set(SowingState)
    assert set(sowing["unit"]["enum"]) == harvest_units
    assert set(words["task"]["properties"]["kind"]["enum"]) == set(TaskKind)
    assert set(words["unmet"]["properties"]["kind"]["enum"]) == set(UnmetKind)


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("weather", "fine"),
        ("as_of", "2027-13-01"),
        ("as_of", "1 March 2027"),
        ("format", 2),
        ("plan_id", "1"),
    ],
)
def test_the_schema_refuses_what_is_not_a_season(
    key: str, value: object, small: PlanFolder, schema: Record
) -> None:
    with pytest.raises(ValidationError):
        Draft202012Validator(schema).validate({**small.record(), key: value})


def _objects(schema: Record, name: str = "season") -> list[tuple[str, Record]]:
    """Every object the schema describes, with its place."""
    found = [(name, schema)] if schema.get("type") == "object" else []
    for key, part in schema.items():
        if isinstance(part, dict):
            found += _objects(part, f"{name}.{key}")
    return found


def _target(schema: Record, part: Record) -> Record:
    name = str(part.get("$ref", "")).rpartition("/")[2]
    target = schema["$defs"].get(name, {})
    return target if isinstance(target, dict) else {}


def _with_season(made: PlanFolder, into: Path) -> PlanFolder:
    return PlanFolder(Path(shutil.copytree(made.path, into / "copy")))


def _names(folder: PlanFolder) -> set[str]:
    return {one["id"] for one in folder.record()["sowings"]}
