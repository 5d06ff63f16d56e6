"""`planner outlook`: does the season hold in past years?"""

import csv
import io
import json
from pathlib import Path
from typing import Any

import pytest

from tests.plans import QUICK, garden_toml, planner, write_plan
from tests.trial.records import FIRST_YEAR, LAST_YEAR, plan_of, recorded_lines, wave

_AS_OF = ("--as-of", "2027-03-01", *QUICK)
_PLAN = plan_of(
    ("radish", "20 roots", "2027-05-03", "2027-10-17"),
    ("tomato", "2 lb", "2027-08-02", "2027-09-26"),
)


@pytest.fixture(scope="module")
def stated(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A scheduled plan without a weather record."""
    plan = write_plan(tmp_path_factory.mktemp("outlook") / "plan", garden_toml())
    assert planner("schedule", plan, *_AS_OF).returncode == 0
    return plan


@pytest.fixture(scope="module")
def recorded(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A scheduled plan with thirty years on record, every third of them 2 degC colder."""
    plan = write_plan(tmp_path_factory.mktemp("outlook") / "plan", _PLAN)
    usual = wave(13, 8)
    lines = recorded_lines(lambda day: usual(day) - (2 if day.year % 3 == 0 else 0))
    (plan / "weather.csv").write_text("\n".join(lines), encoding="utf-8")
    done = planner("schedule", plan, *_AS_OF)
    assert done.returncode == 0, done.stderr
    return plan


def _json(plan: Path) -> dict[str, Any]:
    done = planner("outlook", plan, "--json")
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert isinstance(told, dict)
    return told


def test_a_record_is_tried_year_by_year(recorded: Path) -> None:
    told = planner("outlook", recorded)
    assert told.returncode == 0, told.stderr
    for words in ("tried in 30 past years", "radish", "poor ", "usual ", "good ", "rule of thumb"):
        assert words in told.stdout
    assert "The weakest weeks:" in told.stdout
    assert max(map(len, told.stdout.splitlines())) <= 100


def test_json_has_every_year(recorded: Path) -> None:
    told = _json(recorded)
    years = LAST_YEAR - FIRST_YEAR + 1
    assert (told["years"], told["basis"]) == (years, "past years on record")
    fills = told["season"]["fill_by_year"]
    assert len(fills) == years
    assert told["season"]["fill"] == pytest.approx(sum(fills) / years, abs=1e-3)
    assert len(set(fills)) == 2, "there are two kinds of years"
    for crop in told["crops"]:
        for week in crop["weeks"]:
            assert sorted(week["by_year"])[3] == week["poor"] <= week["usual"] <= week["good"]
    record = json.loads((recorded / "season" / "season.json").read_text(encoding="utf-8"))
    assert told["season"]["promised_fill"] == pytest.approx(record["measures"]["fill"], abs=1e-3)


def test_harvest_csv_has_poor_and_good_years_around_what_is_expected(recorded: Path) -> None:
    weeks = {
        (crop["crop"], week["week"]): week
        for crop in _json(recorded)["crops"]
        for week in crop["weeks"]
    }
    text = (recorded / "season" / "harvest.csv").read_text(encoding="utf-8")
    rows = list(csv.DictReader(io.StringIO(text)))
    assert rows
    for row in rows:
        tried = weeks.get((row["crop"], row["week"]), {"poor": 0.0, "good": 0.0})
        expected = float(row["expected"])
        assert float(row["low"]) == pytest.approx(min(tried["poor"], expected), abs=2e-4)
        assert float(row["high"]) == pytest.approx(max(tried["good"], expected), abs=2e-4)
    assert any(float(row["low"]) < float(row["expected"]) for row in rows)


def test_it_is_revised_each_fortnight_in_as_many_years_as_asked_for(recorded: Path) -> None:
    run = planner("outlook", recorded, "--revised", "2")
    assert "Revised each fortnight in 2 years" in " ".join(run.stdout.split())
    assert run.stderr.count("Revising") == 2
    told = json.loads(planner("outlook", recorded, "--revised", "2", "--json").stdout)
    kept = sorted(told["season"]["fill_by_year"])
    each = told["revised_each_fortnight"]
    assert [one["kept"] for one in each] == [kept[len(kept) // 4], kept[len(kept) * 3 // 4]]
    assert all(0 < one["revised"] <= 1 for one in each)


def test_without_a_record_it_says_that_no_year_is_tried(stated: Path) -> None:
    told = planner("outlook", stated).stdout
    assert "There is no daily weather record" in told
    assert "past years" not in told
    assert _json(stated)["years"] == 3


def test_every_week_is_told_when_asked_for(recorded: Path) -> None:
    assert "2027-W20" not in planner("outlook", recorded).stdout.split("weakest")[0]
    told = planner("outlook", recorded, "--weeks").stdout
    assert sum(line.startswith("2027-W20  radish") for line in told.splitlines()) == 1
    assert "holds: the share of years" in told


def test_a_terminal_without_blocks_gets_digits(recorded: Path) -> None:
    told = planner("outlook", recorded, environment=[("PYTHONIOENCODING", "ascii")]).stdout
    assert told.isascii()
    assert "8 all that is wanted" in told


def test_a_plan_without_a_season_is_told_to_make_one(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", garden_toml())
    refused = planner("outlook", plan)
    assert refused.returncode == 2
    assert f"planner schedule {plan}" in refused.stderr


def test_a_season_without_its_day_is_refused(stated: Path, tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", garden_toml())
    (plan / "season").mkdir()
    record = json.loads((stated / "season" / "season.json").read_text(encoding="utf-8"))
    (plan / "season" / "season.json").write_text(json.dumps({**record, "as_of": "soon"}))
    refused = planner("outlook", plan)
    assert refused.returncode == 2
    assert "no readable as_of" in refused.stderr
