"""Kept ground in the plan: where it lies, how long it stands, and what cannot be."""

from datetime import date

import pytest

from planner.garden import Garden, KeptGround
from planner.terms import Problem
from tests.plan_text import (
    bed,
    garden_of,
    own_crop,
    plan_head,
    problem_kinds_of,
    read_plan,
    target,
)

_TUB = bed(name="Tub", size='diameter = "1 m"')
_PLAN = plan_head() + bed() + _TUB + target("radish", "5 roots")
_FOOT_UM = 304_800


def _kept(*lines: str) -> str:
    return "\n".join(["\n[[kept]]", *lines, ""])


def _rhubarb(*lines: str) -> str:
    return _kept('bed = "North 1"', 'what = "rhubarb"', *lines)


def _read(*parts: str, crops: str = "") -> tuple[KeptGround, ...]:
    return garden_of("".join([_PLAN, *parts]), crops).kept


def _only_problem(*parts: str) -> Problem:
    read = read_plan("".join([_PLAN, *parts]))
    assert not isinstance(read, Garden)
    (problem,) = read
    return problem


def test_a_plan_that_keeps_nothing_has_no_kept_ground() -> None:
    assert _read() == ()


def test_a_corner_is_kept_from_its_first_to_its_last_place_until_its_day() -> None:
    (kept,) = _read(
        _rhubarb('from = "0 ft"', 'to = "3 ft"', "since = 2027-03-01", "until = 2027-06-01")
    )
    assert (kept.bed, kept.what, kept.family) == ("North 1", "rhubarb", "")
    assert (kept.from_um, kept.to_um) == (0, 3 * _FOOT_UM)
    assert (kept.first, kept.last) == (date(2027, 3, 1), date(2027, 6, 1))
    assert kept.place.text == 'what = "rhubarb"'


def test_without_places_and_days_the_whole_bed_is_kept_all_season_and_beyond() -> None:
    kept, tub = _read(_rhubarb(), _kept('bed = "tub"', 'what = "mint"'))
    assert (kept.from_um, kept.to_um) == (0, 8 * _FOOT_UM)
    assert kept.first < date(2026, 2, 1)
    assert kept.last > date(2028, 12, 31)
    assert (tub.bed, tub.to_um) == ("Tub", 3_141_593)


@pytest.mark.parametrize(
    ("what", "line", "family"),
    [
        ("kale", "", "Brassicaceae"),
        ("Garlic", "", "Amaryllidaceae"),
        ("sea kale", 'family = "brassicaceae"', "Brassicaceae"),
        ("sea kale", "", ""),
        ("oca", "", "Oxalidaceae"),
    ],
)
def test_the_family_is_the_one_stated_or_that_of_the_crop_known(
    what: str, line: str, family: str
) -> None:
    crops = own_crop("oca", family="Oxalidaceae", days_from_sowing="90 days")
    (kept,) = _read(_kept('bed = "North 1"', f'what = "{what}"', line), crops=crops)
    assert kept.family == family


def test_one_may_follow_the_other_in_place_or_in_time() -> None:
    beside = _rhubarb('from = "0 ft"', 'to = "3 ft"')
    before = _rhubarb('from = "3 ft"', 'to = "8 ft"', "until = 2027-06-01")
    after = _rhubarb('from = "3 ft"', 'to = "8 ft"', "since = 2027-06-01")
    assert len(_read(beside, before, after)) == 3


def test_what_was_gone_long_before_the_season_holds_nothing() -> None:
    assert _read(_rhubarb("until = 2020-06-01"), _rhubarb("since = 2035-06-01")) == ()


def test_what_stands_in_a_bed_of_another_name_is_told_with_the_name_meant() -> None:
    problem = _only_problem(_kept('bed = "Nord 1"', 'what = "rhubarb"'))
    assert problem.kind == "unknown-bed"
    assert problem.remedy == 'write "North 1".'


def test_the_bed_is_not_missed_where_a_faulty_bed_may_be_meant() -> None:
    plan = _PLAN.replace("8 ft", "8 fet") + _kept('bed = "Nord 1"', 'what = "rhubarb"')
    assert problem_kinds_of(plan) == ["bad-quantity"]


@pytest.mark.parametrize(
    ("lines", "kind", "words"),
    [
        (('from = "3 ft"', 'to = "3 ft"'), "out-of-range", "not beyond 3 ft"),
        (('from = "0 ft"', 'to = "9 ft"'), "out-of-range", "is 8 ft long"),
        (('from = "-1 ft"', 'to = "3 ft"'), "out-of-range", "below zero"),
        (('from = "0 ft"', 'to = "3 lb"'), "wrong-unit", "a length"),
        (('from = "0-1 ft"', 'to = "3 ft"'), "bad-quantity", "not a range"),
        (('to = "3 ft"',), "missing-key", "stands alone"),
        (("since = 2027-06-01", "until = 2027-06-01"), "date-order", "2027-06-01"),
        (('until = "2027-06-01"',), "wrong-type", "a date without quotes"),
        (("untill = 2027-06-01",), "unknown-key", 'no "untill"'),
        (("family = 3",), "wrong-type", "text in quotes"),
    ],
)
def test_what_cannot_be_is_told_once_with_its_kind(
    lines: tuple[str, ...], kind: str, words: str
) -> None:
    problem = _only_problem(_rhubarb(*lines))
    assert problem.kind == kind
    assert words in problem.wrong


def test_two_things_in_one_place_at_one_time_are_told() -> None:
    problem = _only_problem(_rhubarb('from = "0 ft"', 'to = "3 ft"'), _rhubarb())
    assert problem.kind == "kept-twice"


def test_all_that_is_missing_or_wrong_is_told_in_one_run() -> None:
    plan = _PLAN + _kept() + _kept('bed = "East"', 'from = "0 ft"', "until = 3")
    assert problem_kinds_of(plan) == [
        "missing-key", "missing-key", "missing-key", "unknown-bed", "missing-key", "wrong-type",
    ]  # fmt: skip


def test_a_heading_in_single_brackets_is_told() -> None:
    assert problem_kinds_of(_PLAN + '\n[kept]\nbed = "North 1"\n') == ["wrong-type"]
