"""The schemas of garden.toml and crops.toml have the keys that the reader knows, and no others.

The reader itself is what they are held against: it tells what may stand beside a key it lacks.
"""

import re
from collections.abc import Iterator
from datetime import date
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.reference.plan_probes import (
    EVERY_FIGURE,
    EVERY_KEY,
    Path,
    every_key,
    problems_of,
    tables_in,
    toml_text,
    with_value,
    without,
)
from tests.reference.schemas import CROPS, GARDEN, SCHEMA_FILES, plan_faults, schema_in
from tests.season_runs import SAMPLE_PLANS

_NO_KEY = "qqqqqqqqq"
# Words the reader knows only to say why they cannot stand.
_REFUSED = {"zone", "hardiness_zone", "usda_zone", "climate_zone"}
_PLAN = every_key()
_GARDEN_TABLES, _CROPS_TABLES = tables_in(GARDEN), tables_in(CROPS)
_STATION = 'station = "USC00381770"'


@pytest.mark.parametrize("file", SCHEMA_FILES, ids=lambda file: str(file.name))
def test_every_schema_is_one(file: Any) -> None:
    schema = schema_in(file)
    Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["$id"] == file.name


@pytest.mark.parametrize("plan", SAMPLE_PLANS, ids=lambda plan: str(plan.name))
def test_sample_plans_follow_the_schemas(plan: Any) -> None:
    crops = plan / "crops.toml"
    own = crops.read_text("utf-8") if crops.exists() else ""
    assert plan_faults((plan / "garden.toml").read_text("utf-8"), own) == []


def test_the_plan_with_nearly_every_key_can_stand() -> None:
    assert problems_of(EVERY_KEY, EVERY_FIGURE) == ()
    assert plan_faults(EVERY_KEY, EVERY_FIGURE) == []


def _may_have(garden: str, crops: str = "") -> Iterator[str]:
    """What the reader tells may stand beside a key it does not know."""
    for problem in problems_of(garden, crops):
        if f'has no "{_NO_KEY}"' in problem.wrong:
            yield from re.fullmatch("it may have: (.*).", problem.remedy)[1].split(", ")  # type: ignore[index] # else the message has changed


def _variants(path: Path) -> Iterator[dict[str, Any]]:
    """Plans in which each table of this kind holds a key that nobody knows."""
    yield with_value(_PLAN, (*path, _NO_KEY), 1)
    for number in (1, 2):
        if path in {("bed", 0), ("target", 0)} and number < len(_PLAN[str(path[0])]):
            yield with_value(_PLAN, (path[0], number, _NO_KEY), 1)


@pytest.mark.parametrize("path", _GARDEN_TABLES, ids=str)
def test_the_reader_knows_the_keys_that_the_schema_of_a_plan_has(path: Path) -> None:
    known: set[str] = set()
    for plan in _variants(path):
        known |= set(_may_have(toml_text(plan)))
    assert known - _REFUSED == set(_GARDEN_TABLES[path])


@pytest.mark.parametrize("path", _CROPS_TABLES, ids=str)
def test_the_reader_knows_the_keys_that_the_schema_of_crops_has(path: Path) -> None:
    if path == ():
        assert set(_CROPS_TABLES[path]) == {"crop"}
        assert [one.kind for one in problems_of(EVERY_KEY, "crops = 1")] == ["unknown-key"]
        return
    assert set(_may_have(EVERY_KEY, f"{EVERY_FIGURE}{_NO_KEY} = 1")) == set(_CROPS_TABLES[path])


@pytest.mark.parametrize("zone", sorted(_REFUSED))
def test_a_hardiness_zone_is_refused_by_both(zone: str) -> None:
    plan = toml_text(with_value(_PLAN, ("site", zone), "6b"))
    assert [one.kind for one in problems_of(plan)] == ["zone-is-no-date"]
    assert plan_faults(plan)


@pytest.mark.parametrize(
    ("path", "stated"),
    [
        (("bed", 0), ["name"]),
        (("bed", 0), ["length"]),
        (("bed", 0), ["width"]),
        (("bed", 0), ["soil_depth"]),
        (("bed", 0), ["sun"]),
        (("bed", 1), ["diameter"]),
        (("bed", 0, "drip"), ["emitters"]),
        (("bed", 0, "drip"), ["each"]),
        (("site",), ["latitude"]),
        (("site",), ["last_spring_freeze"]),
        (("site",), ["first_fall_freeze"]),
        (("site",), ["mean_high"]),
        (("season",), ["from"]),
        (("season",), ["to"]),
        (("season", "away", 0), ["to"]),
        (("target", 0), ["crop"]),
        (("target", 0), ["each_week"]),
        (("target", 2), ["by"]),
        (("target", 2), ["once"]),
        (("kept", 0), ["bed"]),
        (("kept", 0), ["what"]),
        (("kept", 0), ["from"]),
        (("manure", 0), ["bed"]),
        (("manure", 0), ["on"]),
        (("packet", 0), ["crop"]),
        (("packet", 0), ["packed"]),
        ((), ["plan"]),
        ((), ["site"]),
        ((), ["season"]),
        ((), ["bed"]),
        ((), ["target"]),
    ],
    ids=str,
)
def test_what_is_needed_is_needed_by_both(path: Path, stated: list[str]) -> None:
    plan = toml_text(without(_PLAN, (*path, *stated)))
    assert problems_of(plan)
    assert plan_faults(plan)


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("bed", 0, "diameter"), "4 ft"),
        (("bed", 1, "length"), "4 ft"),
        (("bed", 1, "sunny_end"), "far"),
        (("target", 0, "for_people"), 3),
        (("target", 0, "once"), "3 roots"),
        (("target", 0, "by"), date(2027, 9, 1)),
        (("target", 2, "from"), date(2027, 9, 1)),
        (("site", "station"), "USC00381770"),
        (("site", "weather_unit"), "degF"),
        (("site", "first_fall_freeze"), "never"),
        (("soil", "mix"), {}),
        (("soil", "mix", " "), 1),
        (("soil", "mix", "sand"), 0),
    ],
    ids=str,
)
def test_what_does_not_go_together_is_seen_by_both(path: Path, value: Any) -> None:
    plan = toml_text(with_value(_PLAN, path, value))
    assert problems_of(plan)
    assert plan_faults(plan)


_NEVER = 'last_spring_freeze = "never"\nfirst_fall_freeze = "never"\n'
_RARER = 'first_fall_freeze_one_in_ten = "09-27"'
_HAND = EVERY_KEY[EVERY_KEY.index("last_spring_freeze") : EVERY_KEY.index("mean_high")]


@pytest.mark.parametrize(
    "freezes",
    [
        _STATION,
        _NEVER,
        'last_spring_freeze = "4-24"\nfirst_fall_freeze = "10-12"',
        f'last_spring_freeze = "04-24"\nfirst_fall_freeze = "10-12"\n{_RARER}',
    ],
)
def test_freeze_dates_may_come_from_each_of_these(freezes: str) -> None:
    plan = EVERY_KEY.replace(_HAND, f"{freezes}\n")
    assert problems_of(plan) == ()
    assert plan_faults(plan) == []


def test_freeze_dates_may_come_from_a_record() -> None:
    plan = EVERY_KEY.replace(_HAND, 'weather = "weather.csv"\nweather_unit = "degF"\n')
    assert [one.kind for one in problems_of(plan)] == ["file-missing"]
    assert plan_faults(plan) == []


@pytest.mark.parametrize(
    "freezes",
    [
        "",
        'last_spring_freeze = "never"\nfirst_fall_freeze = "10-12"',
        f'{_STATION}\nlast_spring_freeze_one_in_ten = "05-09"',
        f"{_NEVER}{_RARER}",
        f'weather = "weather.csv"\n{_RARER}',
        'weather = "records/weather.csv"',
    ],
)
def test_freeze_dates_may_not_come_from_these(freezes: str) -> None:
    plan = EVERY_KEY.replace(_HAND, f"{freezes}\n")
    assert any(one.kind != "file-missing" or "/" in freezes for one in problems_of(plan))
    assert plan_faults(plan)
