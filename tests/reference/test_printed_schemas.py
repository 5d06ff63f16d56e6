"""What commands print with --json follows its schema, and has every key that the schema has.

Every other run of a test with --json is held against these schemas too, in tests/plans.py.
"""

import json
from pathlib import Path
from typing import Any

import pytest
from typer.main import get_command

from planner.cli.app import app
from planner.writing import Step
from tests.plans import AS_OF, garden_toml, planner, write_plan
from tests.reference.plan_probes import EVERY_KEY
from tests.reference.schemas import SEASON, faults, printed_by, schema_in, unseen
from tests.trial.records import plan_of, recorded_lines, wave

# A plan in which there is something to tell in every part of bed work.
_PLAN = (
    EVERY_KEY.replace('diameter = "4 ft"', 'diameter = "4 ft"\nflow = "20 L/h"\ntimer = "west"')
    + '\n[[bed]]\nname = "Shallow"\nlength = "6 ft"\nwidth = "4 ft"\nsoil_depth = "8 in"\n'
    + 'sun = "full"\n\n[[target]]\ncrop = "tomato"\neach_week = "2 lb"\n'
    + "from = 2027-08-02\nto = 2027-09-12\n"
)


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Path:
    written = write_plan(tmp_path_factory.mktemp("printed") / "plan", _PLAN)
    done = planner("schedule", written, "--as-of", "2027-01-15", "--effort", "0")
    assert done.returncode == 0, done.stderr
    return written


def _printed(*words: str | Path, status: int = 0) -> Any:
    command, *others = words
    done = planner(command, "--json", *others)
    assert done.returncode == status, done.stderr
    value = json.loads(done.stdout)
    assert faults(printed_by(str(words[0])), value) == []
    return value


def test_every_command_that_prints_json_has_a_schema() -> None:
    commands = get_command(app).commands  # type: ignore[attr-defined] # a group has commands
    print_json = {
        name for name, one in commands.items() if any("--json" in word.opts for word in one.params)
    }
    assert {name for name in print_json if printed_by(name).exists()} == print_json
    named = {path.name for path in SEASON.parent.glob("schemas/planner-*.schema.json")}
    assert named == {printed_by(name).name for name in print_json - {"schedule"}}


def test_what_check_prints(plan: Path, tmp_path: Path) -> None:
    assert _printed("check", plan) == []
    wrong = write_plan(tmp_path / "wrong", garden_toml(("latitude", "lattitude")))
    told = _printed("check", wrong, status=2)
    assert len(told) > 1
    assert unseen(printed_by("check"), [told]) == set()


def test_what_schedule_prints(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", _PLAN.replace("2 lb", "900 lb"))
    season = _printed("schedule", plan, *AS_OF)
    assert unseen(SEASON, [season]) == set()


def test_what_week_prints(plan: Path) -> None:
    tasks = _printed("week", plan, "--of", "2027-06-09")
    assert unseen(printed_by("week"), [tasks]) == set()


def test_what_why_prints(plan: Path) -> None:
    assert len(_printed("why", plan, "radish 1")) > 1


def test_what_crops_prints() -> None:
    listed, one = _printed("crops"), _printed("crops", "radish")
    assert unseen(printed_by("crops"), [listed, one]) == set()


def test_what_stations_prints() -> None:
    near = _printed("stations", "--", "34.7", "-82.8")
    never, always = _printed("stations", "honolulu"), _printed("stations", "allagash")
    assert unseen(printed_by("stations"), [near, never]) == set()
    assert {one.get("freezes") for one in [*never, *always]} >= {"never", "all year"}


def test_what_bedwork_prints(plan: Path) -> None:
    told = _printed("bedwork", plan, "--people", "3")
    assert unseen(printed_by("bedwork"), [told]) == set()
    assert set(_printed("bedwork", plan, "--part", "seed")) == {"seed", "cautions"}


def test_what_outlook_prints(tmp_path: Path) -> None:
    weekly = ("tomato", "4 lb", "2027-08-02", "2027-09-26")
    plan = write_plan(tmp_path / "plan", plan_of(weekly))
    usual = wave(13, 8)
    lines = recorded_lines(lambda day: usual(day) - (2 if day.year % 3 == 0 else 0))
    (plan / "weather.csv").write_text("\n".join(lines), encoding="utf-8")
    done = planner("schedule", plan, "--as-of", "2027-03-01", "--effort", "0")
    assert done.returncode == 0, done.stderr
    told = _printed("outlook", plan, "--revised", "1")
    assert unseen(printed_by("outlook"), [told]) == set()


def test_what_publish_prints_counts_each_way_an_event_can_go() -> None:
    """What it prints is counted in tests/calendar; here its ways are."""
    schema = schema_in(printed_by("publish"))
    assert set(schema["properties"]) == {str(step) for step in Step}
    assert faults(printed_by("publish"), {str(step): 1 for step in Step}) == []
    assert faults(printed_by("publish"), {"new": 0}) != []
