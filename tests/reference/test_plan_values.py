"""What is wrong in a value of a plan is refused by its schema as by the reader, and no more is."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from planner.almanac import FIGURE_KINDS
from planner.terms import Figure, Place, Problem, Source
from tests.plan_text import garden_of
from tests.reference.plan_probes import (
    EVERY_FIGURE,
    EVERY_KEY,
    Path,
    every_key,
    leaves,
    problems_of,
    tables_in,
    toml_text,
    with_value,
    without,
)
from tests.reference.schemas import GARDEN, plan_faults

_PLAN = every_key()
# Of these the plan states another value than the usual one, so that a difference can show.
_OWN = {"away", "turnover_days", "cover_weeks", "name", "new", "priority", "efficiency"}
# Problems of shape, which a schema sees too; of these some have another reason as well.
_OF_SHAPE = {
    "unknown-key",
    "wrong-type",
    "bad-quantity",
    "bad-month-day",
    "wrong-unit",
    "not-a-choice",
    "plan-version",
    "missing-key",
}
_WRONG: tuple[Any, ...] = (
    *("some words", "", "9 days", "-1 ft", "0 ft", "1 ft", "5 oz", "2 L", "20 degC", "1 L/h"),
    *("02-30", "13-01", "never", 7, 10**9, 1.5, -3, True, ["some words"], {"a": 1}, []),
)


def _is_ours_too(problem: Problem, key: str | int, value: Any) -> bool:
    """Whether a schema has to see a problem: it is one of shape, and of this statement."""
    if problem.kind == "out-of-range":
        return isinstance(value, int | float) and problem.wrong.startswith(f'"{key}" is ')
    # Which unit a crop is counted in hangs on the crop.
    return problem.kind in _OF_SHAPE and " is counted in " not in problem.wrong


@pytest.mark.parametrize("path", list(leaves(_PLAN)), ids=str)
def test_what_is_wrong_in_one_statement_of_a_plan_is_seen_by_both(path: Path) -> None:
    for value in _WRONG:
        plan = toml_text(with_value(_PLAN, path, value))
        problems, seen = problems_of(plan), plan_faults(plan)
        assert problems or not seen, (value, seen)
        ours = [one for one in problems if _is_ours_too(one, path[-1], value)]
        assert seen or not ours, (value, ours)


@pytest.mark.parametrize("figure", FIGURE_KINDS)
def test_what_is_wrong_in_one_figure_of_a_crop_is_seen_by_both(figure: str) -> None:
    for value in _WRONG:
        crops = tomllib.loads(EVERY_FIGURE)
        crops["crop"]["mine"][figure] = value
        text = toml_text(crops)
        problems, seen = problems_of(EVERY_KEY, text), plan_faults(EVERY_KEY, text)
        assert problems or not seen, (value, seen)
        ours = [one for one in problems if _is_ours_too(one, figure, value)]
        assert seen or not ours, (value, ours)


@pytest.mark.parametrize(
    "flow",
    [
        *("12 gal/h", "2 L per hour", "0.5 gallons a minute", "1 gpm", "30 LPH", "1 l an hour"),
        *("3 gal in 15 min", "3 gal in 15 mins", "2 cu ft/h", "1 m3/h", "12 gal", "12/h", "-2 L/h"),
    ],
)
def test_water_in_a_time_is_read_by_both(flow: str) -> None:
    plan = toml_text(with_value(_PLAN, ("bed", 0, "flow"), flow))
    assert (problems_of(plan) == ()) == (plan_faults(plan) == [])


def _numbers() -> Iterator[tuple[Path, dict[str, Any]]]:
    for path, keys in tables_in(GARDEN).items():
        for key, one in keys.items():
            if "minimum" in one:
                yield (*path, key), one


def _stated_in(path: Path) -> dict[str, Any]:
    """A plan in which a key of a target can stand."""
    if path[-1] == "for_people":
        return without(_PLAN, ("target", 0, "each_week"))
    return _PLAN


@pytest.mark.parametrize(("path", "schema"), list(_numbers()), ids=str)
def test_numbers_have_the_bounds_of_the_reader(path: Path, schema: dict[str, Any]) -> None:
    step = 1 if schema["type"] == "integer" else 0.001
    plan = _stated_in(path)
    for end, beyond in (("minimum", -step), ("maximum", step)):
        right = toml_text(with_value(plan, path, schema[end]))
        wrong = toml_text(with_value(plan, path, schema[end] + beyond))
        told = [f'"{path[-1]}" is ' in one.wrong for one in problems_of(right)]
        assert not any(told)
        assert plan_faults(right) == []
        assert any(f'"{path[-1]}" is ' in one.wrong for one in problems_of(wrong))
        assert plan_faults(wrong)


def _usual() -> Iterator[tuple[Path, Any]]:
    for path, keys in tables_in(GARDEN).items():
        for key, one in keys.items():
            if "default" in one and key != "top_dress":
                yield (*path, key), one["default"]


def _counted_with(plan: dict[str, Any]) -> Any:
    """All that a garden is, whoever says it; a range of figures by its planning value."""
    return _without_sources(garden_of(toml_text(plan)))


def _without_sources(value: Any) -> Any:
    if isinstance(value, Source | Place):
        return None
    if isinstance(value, Figure):
        return round(value.middle, 9)
    if isinstance(value, Mapping):
        return {key: _without_sources(one) for key, one in value.items()}
    if isinstance(value, tuple | frozenset):
        return [_without_sources(one) for one in value]
    if is_dataclass(value):
        return {one.name: _without_sources(getattr(value, one.name)) for one in fields(value)}
    return value


@pytest.mark.parametrize(("path", "usual"), list(_usual()), ids=str)
def test_a_key_that_is_not_stated_counts_as_its_usual_value(path: Path, usual: Any) -> None:
    stated = _counted_with(with_value(_PLAN, path, usual))
    assert _counted_with(without(_PLAN, path)) == stated
    assert path[-1] not in _OWN or stated != _counted_with(_PLAN)


def test_of_the_usual_depth_of_compost_the_low_end_is_told() -> None:
    usual = garden_of(toml_text(without(_PLAN, ("soil", "top_dress")))).soil.figures["top_dress"]
    stated = tables_in(GARDEN)["soil",]["top_dress"]["default"]
    assert f"{usual.low / 25.4:g} in" == stated
