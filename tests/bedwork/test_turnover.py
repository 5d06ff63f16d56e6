"""Turnover: compost by block and day, the ceiling of a year, what is pulled, and hunger."""

from datetime import date, timedelta

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.almanac import crop_pages
from planner.bedwork import Turnover, compost_years, turnovers_of
from planner.garden import Feeding, Garden
from planner.scheduling import Sowing
from planner.terms import week_of
from planner.writing import bedwork_lines, turnover_record, turnover_text
from tests.bedwork.soil_plans import (
    UM_PER_FT,
    new_bed,
    rectangle,
    soil_garden,
    soil_plan,
    standing,
)
from tests.plan_text import garden_of, own_crop
from tests.published import published_rows

_UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
_GARDEN = soil_garden(crops=("radish", "tomato", "leaf lettuce"))
_MAY, _JUNE, _JULY = date(2027, 5, 1), date(2027, 6, 1), date(2027, 7, 1)


def _cu_ft(volume_l: float) -> float:
    return float(_UNITS.Quantity(volume_l, "liter").to("foot ** 3").magnitude)


def _in_a_row(garden: Garden, count: int, place_ft: tuple[float, float] = (0, 8)) -> list[Sowing]:
    """Radishes one after the other on the same ground, four weeks each."""
    starts = [_MAY + timedelta(weeks=4 * one) for one in range(count)]
    return [
        standing(garden, f"radish {number}", (start, start + timedelta(weeks=4)), place_ft)
        for number, start in enumerate(starts, 1)
    ]


# Amounts


@pytest.mark.parametrize(
    ("depth", "cu_ft"),
    # Arithmetic of a published collection of garden figures: over 4 x 8 ft.
    [("0.25 in", 0.67), ("0.5 in", 1.33), ("1 in", 2.67)],
)
def test_a_dressing_over_4_by_8_ft_takes_its_depth(depth: str, cu_ft: float) -> None:
    garden = soil_garden(f'[soil]\ntop_dress = "{depth}"')
    [one] = turnovers_of(garden, _in_a_row(garden, 1))
    assert _cu_ft(one.volume_l) == pytest.approx(cu_ft, abs=0.005)


def test_half_an_inch_is_usual() -> None:
    # Half to one inch top-dresses a new planting: common practice, no source.
    [one] = turnovers_of(_GARDEN, _in_a_row(_GARDEN, 1))
    assert one.depth_mm == pytest.approx(12.7)


def test_only_the_block_is_dressed() -> None:
    [one] = turnovers_of(_GARDEN, _in_a_row(_GARDEN, 1, (2, 4)))
    assert _cu_ft(one.volume_l) == pytest.approx(2 * 4 / 24, abs=1e-6)
    assert "Gate bed, 2 ft to 4 ft: pull radish 1, 0.33 cu ft of compost (1/2 in)" in _text([one])


def test_a_slice_of_a_round_bed_is_dressed_by_its_area() -> None:
    garden = soil_garden(beds=new_bed('diameter = "4 ft"', "12 in", name="Ring"))
    rim = garden.beds[0].line_um / UM_PER_FT
    quarter = standing(garden, "radish 1", (_MAY, _JUNE), (0, rim / 4))
    [one] = turnovers_of(garden, [quarter])
    # A quarter of a circle of 2 ft radius is pi square feet.
    assert _cu_ft(one.volume_l) == pytest.approx(3.14159 / 24, abs=1e-4)


def _text(turnovers: list[Turnover], garden: Garden = _GARDEN, width: int = 100) -> str:
    return turnover_text(garden, turnovers, width)


# The year's ceiling


def test_four_dressings_of_a_quarter_inch_reach_the_ceiling_of_a_year() -> None:
    # TRADE-S06: about 1 in or less of compost a year.
    garden = soil_garden('[soil]\ntop_dress = "0.25 in"')
    found = turnovers_of(garden, _in_a_row(garden, 5))
    assert [one.depth_mm for one in found] == pytest.approx([6.35] * 4 + [0])
    assert [one.held_back for one in found] == [False] * 4 + [True]
    assert [one.running_mm for one in found] == pytest.approx([6.35, 12.7, 19.05, 25.4, 25.4])


def test_the_ceiling_is_told_with_a_soil_test() -> None:
    found = turnovers_of(_GARDEN, _in_a_row(_GARDEN, 4))
    [year] = compost_years(_GARDEN, found)
    assert year.full_on == found[2].on == date(2027, 7, 24)
    text = _text(list(found))
    assert "The year's ceiling is reached: Gate bed on 24 July 2027." in text
    assert "soil of these beds tested" in text
    assert "no more compost this year" in text


def test_below_the_ceiling_nothing_is_warned_of() -> None:
    text = _text(list(turnovers_of(_GARDEN, _in_a_row(_GARDEN, 2))))
    assert "ceiling is reached" not in text


def test_other_ground_of_the_bed_has_its_own_year() -> None:
    sowings = [*_in_a_row(_GARDEN, 3, (0, 4)), standing(_GARDEN, "tomato 1", (_MAY, _JULY), (4, 8))]
    by_name = {one.sowing: one for one in turnovers_of(_GARDEN, sowings)}
    assert by_name["radish 3"].depth_mm == 0
    assert by_name["tomato 1"].depth_mm == pytest.approx(12.7)


def test_a_year_later_the_ground_may_have_compost_again() -> None:
    later = standing(_GARDEN, "tomato 1", (date(2028, 5, 1), date(2028, 8, 1)))
    found = turnovers_of(_GARDEN, [*_in_a_row(_GARDEN, 3), later])
    assert found[-1].depth_mm == pytest.approx(12.7)
    assert [one.year for one in compost_years(_GARDEN, found)] == [2027, 2028]


@st.composite
def _stands(draw: st.DrawFn) -> list[Sowing]:
    found = []
    for number in range(draw(st.integers(1, 12))):
        first = draw(st.integers(0, 15))
        place = (first / 2, draw(st.integers(first + 1, 16)) / 2)
        enter = _MAY + timedelta(days=draw(st.integers(0, 400)))
        leave = enter + timedelta(days=draw(st.integers(1, 120)))
        found.append(standing(_GARDEN, f"radish {number + 1}", (enter, leave), place))
    return found


@given(_stands())
def test_no_spot_gets_more_than_the_ceiling_in_any_year(sowings: list[Sowing]) -> None:
    found = turnovers_of(_GARDEN, sowings)
    for half_feet in range(16):
        spot = (half_feet + 0.5) / 2 * UM_PER_FT
        given_there = [one for one in found if one.from_um <= spot < one.to_um]
        for last in given_there:
            within = [one for one in given_there if 0 <= (last.on - one.on).days < 365]
            assert sum(one.depth_mm for one in within) <= 25.4 + 1e-6


@given(_stands())
def test_the_years_of_all_beds_hold_all_that_is_spread(sowings: list[Sowing]) -> None:
    found = turnovers_of(_GARDEN, sowings)
    assert len(found) == len(sowings)
    spread = sum(one.volume_l for one in found)
    assert sum(one.volume_l for one in compost_years(_GARDEN, found)) == pytest.approx(spread)
    for one in found:
        long_m, wide_m = (one.to_um - one.from_um) / 1e6, one.bed.width_um / 1e6
        assert one.volume_l == pytest.approx(long_m * wide_m * one.depth_mm)


# What comes out, what follows


def test_root_crops_are_pulled_and_of_all_else_the_roots_stay() -> None:
    sowings = [
        standing(_GARDEN, "radish 1", (_MAY, _JUNE), (0, 4)),
        standing(_GARDEN, "tomato 1", (_MAY, _JUNE), (4, 8)),
    ]
    assert [one.pulled for one in turnovers_of(_GARDEN, sowings)] == [True, False]


def test_what_follows_on_any_of_the_ground_is_named() -> None:
    sowings = [
        standing(_GARDEN, "radish 1", (_MAY, _JUNE), (0, 4)),
        standing(_GARDEN, "leaf lettuce 1", (_JUNE, _JULY), (0, 2)),
        standing(_GARDEN, "tomato 1", (_JUNE, _JULY), (2, 6)),
        standing(_GARDEN, "radish 2", (_JUNE, _JULY), (6, 8)),
        standing(_GARDEN, "radish 3", (_JULY, date(2027, 8, 1)), (0, 4)),
    ]
    first, *_ = turnovers_of(_GARDEN, sowings)
    assert first.followers == ("leaf lettuce 1", "tomato 1")


@pytest.mark.parametrize(
    ("host_leaves", "dressed"),
    [
        (_JULY, ["tomato 1"]),
        (_JUNE, ["tomato 1"]),
        (date(2027, 5, 20), ["tomato 1", "leaf lettuce 1"]),
    ],
)
def test_ground_of_a_guest_is_dressed_with_its_host_while_that_stands(
    host_leaves: date, dressed: list[str]
) -> None:
    host = standing(_GARDEN, "tomato 1", (_MAY, host_leaves))
    guest = standing(_GARDEN, "leaf lettuce 1", (_MAY, _JUNE), (0, 4), under="tomato 1")
    assert [one.sowing for one in turnovers_of(_GARDEN, [host, guest])] == dressed


def test_where_nothing_is_cleared_nothing_is_spread() -> None:
    assert turnovers_of(_GARDEN, []) == ()
    assert "Nothing is cleared" in _text([])


def test_without_top_dressing_no_compost_is_told_and_no_ceiling() -> None:
    garden = soil_garden('[soil]\ntop_dress = "0 in"')
    found = turnovers_of(garden, _in_a_row(garden, 1))
    text = _text(list(found), garden)
    assert "pull radish 1, no compost" in text
    assert "ceiling is reached" not in text
    assert bedwork_lines(garden, _in_a_row(garden, 1)) == {}


# Hunger


@pytest.mark.parametrize("row", published_rows("feeding.csv"), ids=lambda row: row["crop"])
def test_hunger_is_as_published(row: dict[str, str]) -> None:
    used = crop_pages()[row["crop"]].used["feeding"]
    assert (used.low, used.source) == (row["class"], row["source"])


@pytest.mark.parametrize("crop", list(crop_pages()))
def test_every_crop_has_a_hunger_and_a_part_that_is_eaten(crop: str) -> None:
    used = crop_pages()[crop].used
    assert used["feeding"].low in set(Feeding)
    assert used["eaten_part"].low in {"in the soil", "on the soil", "clear of the soil"}


def test_where_sources_disagree_both_are_shown() -> None:
    # TRADE-S95 lists the tomato as heavy, TRADE-S113 among the vegetables of lower need.
    text = _text([])
    assert "heavy: tomato (others: lower [TRADE-S113])" in text
    assert "light: radish" in text


def test_a_grower_may_know_better() -> None:
    own = own_crop("radish", feeding="heavy", days_from_sowing="30 days")
    garden = soil_garden(own=own)
    assert "heavy: radish (your own)" in _text([], garden)


def test_a_crop_of_ones_own_without_a_model_has_no_hunger_made_up() -> None:
    own = own_crop("moss cress", days_from_sowing="30 days")
    garden = garden_of(_one_crop_plan("moss cress"), own)
    assert "unknown: moss cress" in _text([], garden)


def _one_crop_plan(crop: str) -> str:
    return soil_plan().replace('crop = "radish"', f'crop = "{crop}"').replace("roots", "heads")


# The week's sheet


def test_a_week_is_told_what_is_spread_in_it() -> None:
    lines = bedwork_lines(_GARDEN, _in_a_row(_GARDEN, 1, (2, 4)))
    place = "Gate bed, 2 ft to 4 ft from the marked end"
    told = f"Top-dress {place}: 0.33 cu ft of compost (1/2 in)."
    assert lines == {week_of(date(2027, 5, 29)): (told,)}


def test_stretches_of_a_bed_that_touch_are_told_as_one() -> None:
    sowings = [
        standing(_GARDEN, "radish 1", (_MAY, _JUNE), (0, 2)),
        standing(_GARDEN, "tomato 1", (_MAY, _JUNE), (2, 3)),
        standing(_GARDEN, "leaf lettuce 1", (_MAY, date(2027, 6, 3)), (6, 8)),
    ]
    [told] = bedwork_lines(_GARDEN, sowings)[week_of(_JUNE)]
    place = "Gate bed, 0 in to 3 ft and 6 ft to 8 ft from the marked end"
    assert told == f"Top-dress {place}: 0.83 cu ft of compost (1/2 in)."


def test_a_new_bed_is_filled_the_week_before_anything_enters_it() -> None:
    garden = soil_garden(beds=new_bed(rectangle("8 ft", "4 ft"), "12 in"))
    lines = bedwork_lines(garden, _in_a_row(garden, 1))
    week = week_of(_MAY - timedelta(days=7))
    assert lines[week] == (
        "Fill New bed with 32 cu ft by 1 May 2027; with what, see planner bedwork.",
    )


def test_ground_that_has_had_its_share_is_told() -> None:
    lines = bedwork_lines(_GARDEN, _in_a_row(_GARDEN, 3))
    assert lines[week_of(date(2027, 7, 24))] == (
        "No more compost this year on Gate bed, all of it.",
    )


def test_the_record_says_what_the_text_says() -> None:
    record = turnover_record(_GARDEN, turnovers_of(_GARDEN, _in_a_row(_GARDEN, 3)))
    assert [one["compost_mm"] for one in record["blocks"]] == [12.7, 12.7, 0]
    assert record["compost"][0]["full_on"] == "2027-07-24"
    assert {one["crop"]: one["class"] for one in record["feeding"]} == {
        "radish": "light",
        "tomato": "heavy",
        "leaf lettuce": "medium to heavy",
    }


@pytest.mark.parametrize("width", [40, 80])
def test_lines_fit_the_screen(width: int) -> None:
    text = _text(list(turnovers_of(_GARDEN, _in_a_row(_GARDEN, 4))), width=width)
    assert max(map(len, text.splitlines())) <= width
