"""What each crop and week is worth: shares of all that is wanted."""

from math import isclose

import pytest

from planner.garden import Garden
from planner.terms import Week
from tests.plan_text import bed, garden_of, plan_head, target

_PLAN = plan_head() + bed()
_MAY = "from = 2027-05-03\nto = 2027-05-30"
_JUNE = "from = 2027-05-31\nto = 2027-06-27"
_RADISH, _LETTUCE = target("radish", "12 roots", _MAY), target("leaf lettuce", "8 oz", _JUNE)


def _share(garden: Garden, crop: str) -> float:
    return sum(garden.weights()[crop].values())


def _weighted_fill(garden: Garden, met: dict[str, dict[Week, float]]) -> float:
    wants, weights = garden.wants(), garden.weights()
    return sum(
        weights[crop][week] * met[crop][week] / wanted
        for crop, weeks in wants.items()
        for week, wanted in weeks.items()
    )


@pytest.mark.parametrize("more", ["", "priority = 3.7", "priority = 0.1"])
def test_all_shares_sum_to_one(more: str) -> None:
    plan = _PLAN + target("radish", "12 roots", _MAY, more) + _LETTUCE
    plan += '\n[[target]]\ncrop = "potato"\nonce = "20 lb"\nby = 2027-09-30\npriority = 2\n'
    weights = garden_of(plan).weights()
    assert isclose(sum(sum(weeks.values()) for weeks in weights.values()), 1)
    assert {crop: list(weeks) for crop, weeks in weights.items()} == {
        crop: list(weeks) for crop, weeks in garden_of(plan).wants().items()
    }


def test_crops_of_one_priority_have_one_share_however_much_is_wanted() -> None:
    garden = garden_of(_PLAN + _RADISH + target("leaf lettuce", "80 oz", _JUNE))
    assert isclose(_share(garden, "radish"), 0.5)
    assert isclose(_share(garden, "leaf lettuce"), 0.5)


def test_with_one_priority_the_weighted_fill_is_the_mean_of_the_fill_of_each_crop() -> None:
    more = target("radish", "30 roots", _JUNE)
    garden = garden_of(_PLAN + _RADISH + more + _LETTUCE)
    met = {
        crop: {week: wanted * (0.2 if week.number < 20 else 0.9) for week, wanted in weeks.items()}
        for crop, weeks in garden.wants().items()
    }
    fills = [sum(met[crop].values()) / sum(garden.wants()[crop].values()) for crop in met]
    assert fills[0] != fills[1]
    assert isclose(_weighted_fill(garden, met), sum(fills) / len(fills))


def test_a_crop_of_priority_two_is_worth_twice_as_much() -> None:
    garden = garden_of(_PLAN + target("radish", "12 roots", _MAY, "priority = 2") + _LETTUCE)
    assert isclose(_share(garden, "radish"), 2 / 3)
    assert isclose(_share(garden, "leaf lettuce"), 1 / 3)


def test_a_crop_of_two_targets_goes_by_its_mean_priority_over_what_is_wanted() -> None:
    """Four weeks of 30 at priority 1, four of 10 at priority 5: on the mean 2."""
    plan = _PLAN + target("radish", "30 roots", _MAY)
    garden = garden_of(plan + target("radish", "10 roots", _JUNE, "priority = 5") + _LETTUCE)
    assert isclose(_share(garden, "radish"), 2 / 3)
    may, june = (
        garden.weights()["radish"][Week(2027, 18)],
        garden.weights()["radish"][Week(2027, 22)],
    )
    assert isclose(june / may, 10 * 5 / 30)


def test_a_target_without_a_priority_has_one() -> None:
    assert [one.priority for one in garden_of(_PLAN + _RADISH).targets] == [1]
