"""The same family back in the same ground within a year is told (rules §34).

That a year is the span is common practice, no source. Blocks here are put down by hand.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from planner.garden import Garden
from planner.scheduling import Block, Sowing
from planner.season import Season
from planner.season.repeats import Repeat, repeats_of
from tests.plan_text import bed, garden_of, own_crop, plan_head, season_of, target

_DAYS = {"days_from_sowing": "28 days", "spacing": "3 in", "yield": "1 roots"}
_CROPS = own_crop("first", family="Family 1", **_DAYS) + own_crop(
    "second", family="Family 2", **_DAYS
)
_TARGETS = "".join(target(crop, "12 roots") for crop in ("first", "second"))
_PLAN = plan_head() + bed() + _TARGETS
_KEPT = """
[[kept]]
bed = "North 1"
what = "old ones"
from = "0 ft"
to = "2 ft"
until = 2027-04-01
"""
_FT = 304_800


@pytest.fixture(scope="module")
def season() -> Season:
    return season_of(_PLAN, _CROPS)


def _standing(
    season: Season, crop: str, number: int, stretch_ft: tuple[int, int], days: tuple[date, date]
) -> Sowing:
    """A sowing of a crop put on a stretch from one day to another."""
    like = next(one for one in season.sowings if one.crop.name == crop)
    (from_ft, to_ft), (enter_on, leave_on) = stretch_ft, days
    block = Block("North 1", from_ft * _FT, to_ft * _FT, enter_on, leave_on)
    return replace(like, id=f"{crop} {number}", blocks=(block,), clear_on=leave_on)


_SPRING = date(2027, 3, 1), date(2027, 5, 1)


def _from(day: date) -> tuple[date, date]:
    return day, day + timedelta(days=40)


@pytest.mark.parametrize(
    ("crop", "stretch_ft", "enters", "times"),
    [
        ("first", (0, 2), _SPRING[1], 1),
        ("first", (1, 3), date(2027, 8, 1), 1),
        ("first", (0, 2), date(2028, 4, 29), 1),
        ("first", (0, 2), date(2028, 4, 30), 0),  # 365 days later
        ("first", (2, 4), _SPRING[1], 0),
        ("second", (0, 2), _SPRING[1], 0),
        ("first", (0, 2), date(2027, 4, 1), 0),  # under the other, while that stands
    ],
)
def test_the_family_comes_back_to_ground_it_left_less_than_a_year_before(
    season: Season, crop: str, stretch_ft: tuple[int, int], enters: date, times: int
) -> None:
    sowings = (
        _standing(season, "first", 1, (0, 2), _SPRING),
        _standing(season, crop, 2, stretch_ft, _from(enters)),
    )
    told = (Repeat(f"{crop} 2", "first 1", "North 1"),) * times
    assert repeats_of(season.garden, sowings) == told


def _kept(family: str) -> Garden:
    return garden_of(plan_head() + bed() + _KEPT + family + _TARGETS, _CROPS)


@pytest.mark.parametrize(("family", "times"), [('family = "Family 1"\n', 1), ("", 0)])
def test_kept_ground_counts_where_its_family_is_stated(
    season: Season, family: str, times: int
) -> None:
    after = _standing(season, "first", 1, (1, 3), _from(date(2027, 5, 1)))
    told = (Repeat("first 1", "old ones", "North 1"),) * times
    assert repeats_of(_kept(family), (after,)) == told


def test_the_blocks_of_one_sowing_are_no_repeat_and_a_sowing_is_told_once(season: Season) -> None:
    first = _standing(season, "first", 1, (0, 2), _SPRING)
    split = replace(
        first,
        blocks=(first.blocks[0], replace(first.blocks[0], enter_on=_SPRING[1], leave_on=date.max)),
    )
    assert repeats_of(season.garden, (split,)) == ()
    again = [_standing(season, "first", n, (0, 2), _from(date(2027, n + 4, 15))) for n in (2, 4)]
    repeats = repeats_of(season.garden, (first, *again))
    assert [(one.sowing, one.after) for one in repeats] == [
        ("first 2", "first 1"),
        ("first 4", "first 2"),
    ]
