"""crops.toml and the plan together: figures that fit each other, and no target lost in silence."""

import pytest

from planner.garden import Garden, WeeklyTarget
from planner.terms import Problem
from tests.plan_text import bed, garden_of, own_crop, plan_head, problem_kinds_of, read_plan


def _plan(
    crop: str = "radish",
    amount: str = 'each_week = "5 roots"',
    length: str = "8 ft",
    depth: str = "15 in",
) -> str:
    size = f'length = "{length}"\nwidth = "4 ft"'
    wanted = f'[[target]]\ncrop = "{crop}"\n{amount}\n'
    return plan_head() + bed(size=size, depth=depth) + wanted


def _only_problem(garden: str, crops: str = "") -> Problem:
    read = read_plan(garden, crops)
    assert not isinstance(read, Garden)
    (problem,) = read
    return problem


def _target(garden: Garden) -> WeeklyTarget:
    (target,) = garden.targets
    assert isinstance(target, WeeklyTarget)
    return target


def test_a_portion_in_pieces_of_a_crop_that_is_weighed_is_told() -> None:
    crops = '[crop.radish]\nyield = "15 g"\n'
    problem = _only_problem(_plan(amount="for_people = 4"), crops)
    assert problem.kind == "wrong-unit"
    assert problem.place.text == "for_people = 4"
    assert "Radish is counted in g; its weekly portion is" in problem.wrong


@pytest.mark.parametrize(
    ("figure", "line"),
    [
        ("a base above all the others", 'base_temperature = "90 degF"'),
        ("a base above the best", 'base_temperature = "70 degF"'),
        ("a base that is the best", 'base_temperature = "15 degC"\nbest_temperature = "15 degC"'),
        ("a best below the base", 'best_temperature = "0 degC"'),
        ("a best above the upper", 'best_temperature = "55 degC"'),
        ("an upper below the best", 'upper_temperature = "10 degC"'),
        ("soil that must be warmer than it may", 'germinates_from = "50 degC"'),
        ("soil that may only be colder than it must", 'germinates_to = "1 degC"'),
    ],
)
def test_temperatures_out_of_order_are_refused_at_their_line(figure: str, line: str) -> None:
    problem = _only_problem(_plan(), f"[crop.radish]\n{line}\n")
    assert problem.kind == "out-of-range", figure
    assert (problem.place.file, problem.place.line) == ("crops.toml", 2)
    assert "must lie below" in problem.wrong


def test_temperatures_in_order_can_stand() -> None:
    crops = '[crop.radish]\nbase_temperature = "40 degF"\nbest_temperature = "60-65 degF"\n'
    assert problem_kinds_of(_plan(), crops) == []


def test_a_crop_with_part_of_its_temperatures_is_not_held_against_what_it_lacks() -> None:
    crops = own_crop("oca", base_temperature="50 degF", days_from_sowing="40 days")
    assert problem_kinds_of(_plan("oca", 'each_week = "5 heads"'), crops) == []


def test_seed_may_lie_on_the_surface() -> None:
    garden = garden_of(_plan(), '[crop.radish]\nsowing_depth = "0 in"\n')
    assert _target(garden).crop.ground.sowing_depth.low == 0


@pytest.mark.parametrize("line", ['sowing_depth = "-1 in"', 'spacing = "0 in"'])
def test_less_than_nothing_and_no_space_are_refused(line: str) -> None:
    assert problem_kinds_of(_plan(), f"[crop.radish]\n{line}\n") == ["out-of-range"]


def test_a_range_told_from_its_other_end_is_the_same_range() -> None:
    garden = garden_of(_plan(), '[crop.radish]\ndays_from_sowing = "60-40 days"\n')
    (way,) = _target(garden).crop.ways
    assert (way.days.low, way.days.high) == (40, 60)


@pytest.mark.parametrize(("depth", "kinds"), [("30 cm", []), ("29 cm", ["no-bed-fits"])])
def test_thirty_centimetres_stand_for_twelve_inches(depth: str, kinds: list[str]) -> None:
    crops = '[crop.radish]\nsoil_depth = "12 in"\n'
    assert problem_kinds_of(_plan(depth=depth), crops) == kinds


def test_a_bed_that_is_too_shallow_is_never_as_deep_as_what_is_needed() -> None:
    crops = '[crop.radish]\nsoil_depth = "12 in"\n'
    problem = _only_problem(_plan(depth="29.4 cm"), crops)
    assert "needs soil 30 cm (12 in) deep; the deepest bed has 29 cm (11 in)." in problem.wrong


@pytest.mark.parametrize(("length", "unit"), [("8 ft", "oz"), ("240 cm", "g"), ("2.4 m", "g")])
def test_portions_are_weighed_as_the_first_bed_is_measured(length: str, unit: str) -> None:
    crops = '[crop.radish]\nyield = "15 g"\nportion = "8 oz"\n'
    target = _target(garden_of(_plan(amount="for_people = 2", length=length), crops))
    assert target.crop.unit.name == unit
    assert target.each_week * target.crop.unit.factor == pytest.approx(0.45359237)


def test_a_metric_portion_of_pounds_comes_in_kilograms() -> None:
    crops = '[crop.radish]\nyield = "15 g"\nportion = "1 lb"\n'
    target = _target(garden_of(_plan(amount="for_people = 2", length="240 cm"), crops))
    assert target.crop.unit.name == "kg"
    assert target.each_week == pytest.approx(2 * 0.45359237)


def test_a_temperature_below_which_it_hardly_grows_is_not_asked_for() -> None:
    """What nothing counts with is refused, not accepted and forgotten."""
    assert problem_kinds_of(_plan(), '[crop.radish]\ngrows_above = "40 degF"\n') == ["unknown-key"]
