"""Priorities, sunny ends, heights and the sharing of ground, as a plan tells them."""

import pytest

from planner.garden import Garden, SharedGround, SharingPattern, SunnyEnd
from tests.plan_text import (
    EIGHT_BY_FOUR,
    bed,
    garden_of,
    own_crop,
    plan_head,
    problem_kinds_of,
    target,
)


def _plan(*more: str, **lines: str) -> str:
    """One bed and one target, each with a line of its own where the test tells one."""
    head = plan_head(season=lines.get("season", ""))
    ground = bed(lines.get("bed", ""), size=lines.get("size", EIGHT_BY_FOUR), depth="24 in")
    wanted = target(
        lines.get("crop", "carrot"), f"5 {lines.get('unit', 'lb')}", lines.get("target", "")
    )
    return "".join((head, ground, wanted, *more))


def _also(crop: str, unit: str = "lb") -> str:
    return target(crop, f"1 {unit}")


def _garden(*more: str, crops: str = "", **lines: str) -> Garden:
    return garden_of(_plan(*more, unit="roots", **lines), crops)


def _pairs(garden: Garden) -> list[tuple[str, str, SharingPattern]]:
    return [(one.host, one.guest, one.pattern) for one in garden.shared]


# Priority


@pytest.mark.parametrize("stated", [0.1, 1, 2.5, 10])
def test_a_target_has_the_priority_stated(stated: float) -> None:
    once = '\n[[target]]\ncrop = "radish"\nonce = "9 roots"\nby = 2027-06-01\n'
    garden = _garden(f"{once}priority = {stated}\n", target=f"priority = {stated}")
    assert [one.priority for one in garden.targets] == [stated, stated]


@pytest.mark.parametrize(
    ("stated", "kind"), [("0", "out-of-range"), ("11", "out-of-range"), ('"high"', "wrong-type")]
)
def test_a_priority_that_is_none_is_told(stated: str, kind: str) -> None:
    assert problem_kinds_of(_plan(unit="roots", target=f"priority = {stated}")) == [kind]


# Sunny end


@pytest.mark.parametrize(
    ("line", "end"),
    [
        ("", SunnyEnd.UNKNOWN),
        ('sunny_end = "marked"', SunnyEnd.MARKED),
        ('sunny_end = "far"', SunnyEnd.FAR),
    ],
)
def test_a_bed_has_the_sunny_end_stated(line: str, end: SunnyEnd) -> None:
    (only,) = _garden(bed=line).beds
    assert only.sunny_end is end


def test_a_sunny_end_is_one_of_the_two() -> None:
    for word in ("south", "unknown"):
        plan = _plan(unit="roots", bed=f'sunny_end = "{word}"')
        assert problem_kinds_of(plan) == ["not-a-choice"]


def test_a_round_bed_has_no_ends() -> None:
    plan = _plan(unit="roots", size='diameter = "4 ft"', bed='sunny_end = "far"')
    assert problem_kinds_of(plan) == ["unknown-key"]


# Height


def test_a_crop_is_as_tall_as_its_grower_says_and_else_as_the_almanac_does() -> None:
    corrected = _garden(crops='[crop.carrot]\nheight = "16-24 in"\n').crops["carrot"]
    assert corrected.height_m == pytest.approx(20 * 0.0254)
    assert corrected.ground.height.source.place is not None
    assert _garden().crops["carrot"].height_m == pytest.approx(0.3)  # FAO-56, table 12


def test_a_crop_of_ones_own_needs_no_height() -> None:
    crops = own_crop("oca", days_from_sowing="90 days", **{"yield": "1 roots"})
    crop = _garden(crop="oca", crops=crops).crops["oca"]
    assert crop.height_m == pytest.approx(0.4)
    assert crop.ground.height.source.key == "memory"


def test_no_crop_is_taller_than_five_metres() -> None:
    plan = _plan(unit="roots")
    assert problem_kinds_of(plan, '[crop.carrot]\nheight = "60 ft"\n') == ["out-of-range"]


# Sharing of ground


def test_radish_stands_between_carrots() -> None:
    """What is intercropping?, eXtension (TRADE-S30): radish in the carrot row, out in weeks."""
    (pair,) = _garden(_also("radish", "roots")).shared
    assert pair == SharedGround(
        host="carrot",
        guest="radish",
        pattern=SharingPattern.BETWEEN,
        closes_at=0.5,
        ground_share=0.5,
        yield_share=0.8,
        relay_days=0,
        source=pair.source,
    )
    assert pair.source.key == "TRADE-S30"


def test_only_crops_wanted_share_ground() -> None:
    assert _garden().shared == ()


def test_no_ground_is_shared_against_the_growers_wish() -> None:
    garden = _garden(_also("radish", "roots"), season="share_ground = false")
    assert not garden.wish.shares_ground
    assert garden.shared == ()


def test_ground_is_shared_unless_the_grower_says_otherwise() -> None:
    assert _garden().wish.shares_ground
    assert _pairs(_garden(_also("radish", "roots"), season="share_ground = true"))


@pytest.mark.parametrize("word", ['"no"', "0", "1"])
def test_whether_ground_is_shared_is_true_or_false(word: str) -> None:
    plan = _plan(unit="roots", season=f"share_ground = {word}")
    assert problem_kinds_of(plan) == ["wrong-type"]


def test_a_pair_may_share_in_several_ways() -> None:
    pairs = _pairs(_garden(_also("tomato"), _also("spinach")))
    assert ("tomato", "spinach", SharingPattern.BETWEEN) in pairs
    assert ("tomato", "spinach", SharingPattern.BENEATH) in pairs
    assert ("tomato", "spinach", SharingPattern.RELAY) in pairs


def test_a_crop_of_ones_own_shares_ground_as_the_crop_it_is_like() -> None:
    crops = '[crop."ridge radish"]\nlike = "radish"\n'
    garden = _garden(_also("ridge radish", "roots"), crops=crops)
    assert _pairs(garden) == [("carrot", "ridge radish", SharingPattern.BETWEEN)]


def test_a_crop_like_no_other_shares_no_ground() -> None:
    crops = own_crop("oca", days_from_sowing="90 days", **{"yield": "1 roots"})
    assert _garden(_also("oca", "roots"), crops=crops).shared == ()
