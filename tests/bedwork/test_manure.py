"""Raw manure: the days of 7 CFR 205.203(c)(1) against each first harvest."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.almanac import crop_pages
from planner.bedwork import (
    away_work_of,
    manure_checks,
    needed_days,
    too_early_harvests,
    water_of,
)
from planner.climate import Climate
from planner.garden import EatenPart, Garden
from planner.season import season_tasks
from planner.tasks import TaskKind, tasks_of
from planner.terms import week_of
from planner.writing import (
    away_text,
    manure_record,
    manure_text,
    not_yet_lines,
)
from tests.bedwork.soil_plans import BED, new_bed, rectangle, soil_garden, soil_plan, standing
from tests.plan_text import garden_of, own_crop, problem_kinds_of, read_plan

_SPREAD = '[[manure]]\nbed = "Gate bed"\non = 2027-03-20'
_CROPS = ("radish", "leaf lettuce", "tomato")
_GARDEN = soil_garden(_SPREAD, crops=_CROPS)
# 20 March is day 79 of a common year. 120 days later is day 199, 18 July; 90 days day 169, 18 June.
_ON, _TOUCHING, _CLEAR = date(2027, 3, 20), date(2027, 7, 18), date(2027, 6, 18)


def _picked(garden: Garden, name: str, *days: date) -> tuple[bool, int] | None:
    """Whether a sowing picked on these days is too early, and how many days are needed."""
    sowing = standing(garden, name, (_ON, days[-1]), picked=days)
    [check] = manure_checks(garden, (sowing,))
    return next(((one.is_too_early, one.needed_days) for one in check.picks), None)


@pytest.mark.parametrize(
    ("name", "first_day", "needed"),
    # 7 CFR 205.203(c)(1)(ii) and (iii): 120 days where the edible portion has direct contact with
    # the soil surface or soil particles, 90 where it has not. Which crop is which: common practice.
    [
        ("radish 1", _TOUCHING, 120),
        ("leaf lettuce 1", _TOUCHING, 120),
        ("tomato 1", _CLEAR, 90),
    ],
)
def test_a_harvest_waits_the_days_of_the_rule(name: str, first_day: date, needed: int) -> None:
    assert _picked(_GARDEN, name, first_day) == (False, needed)
    assert _picked(_GARDEN, name, first_day - timedelta(days=1)) == (True, needed)


@given(st.integers(0, 400))
def test_the_days_between_decide(days: int) -> None:
    on = _ON + timedelta(days=days)
    assert _picked(_GARDEN, "radish 1", on) == (days < 120, 120)
    assert _picked(_GARDEN, "tomato 1", on) == (days < 90, 90)


def test_both_days_are_told() -> None:
    [check] = manure_checks(_GARDEN, ())
    assert (check.touching_from, check.clear_from) == (_TOUCHING, _CLEAR)


def test_what_was_picked_before_the_manure_is_no_matter() -> None:
    before = _ON - timedelta(days=1)
    assert _picked(_GARDEN, "radish 1", before) is None


def test_of_a_crop_that_stands_while_manure_is_spread_the_next_picking_counts() -> None:
    days = (_ON - timedelta(days=7), _ON + timedelta(days=7), _TOUCHING)
    assert _picked(_GARDEN, "leaf lettuce 1", *days) == (True, 120)


def test_manure_may_be_spread_before_the_season_or_in_it() -> None:
    for on in ("2026-11-01", "2027-08-01"):
        garden = soil_garden(_SPREAD.replace("2027-03-20", on))
        assert garden.soil.manure[0].on == date.fromisoformat(on)


def test_other_beds_are_not_concerned() -> None:
    beds = BED + new_bed(rectangle("4 ft", "4 ft"), "12 in", name="Other")
    garden = soil_garden(_SPREAD, beds=beds)
    other = standing(garden, "radish 1", (_ON, date(2027, 5, 1)), bed=garden.beds[1])
    [check] = manure_checks(garden, (other,))
    assert check.picks == ()
    assert "Nothing is picked there" in manure_text(garden, (check,), 100)


def test_where_nobody_says_what_is_eaten_the_longer_time_is_needed() -> None:
    assert needed_days(_GARDEN, EatenPart.UNKNOWN) == 120
    plan = soil_plan(_SPREAD).replace('crop = "radish"', 'crop = "moss cress"')
    garden = garden_of(
        plan.replace("roots", "heads"), own_crop("moss cress", days_from_sowing="30 days")
    )
    assert _picked(garden, "moss cress 1", _CLEAR) == (True, 120)


def test_a_grower_may_say_what_is_eaten() -> None:
    own = own_crop(
        "tomato", eaten_part="on the soil", days_from_sowing="30 days", **{"yield": "1 lb"}
    )
    garden = soil_garden(_SPREAD, crops=("tomato",), own=own)
    assert _picked(garden, "tomato 1", _CLEAR) == (True, 120)


def test_what_grows_in_the_soil_is_known_for_every_root_crop() -> None:
    # Families of root and bulb crops, from memory.
    roots = {"carrot", "beet", "radish", "potato", "garlic", "leek", "parsnip", "turnip"}
    for crop in roots:
        assert crop_pages()[crop].used["eaten_part"].low == "in the soil"


def test_each_sowing_picked_too_early_is_named_with_what_to_do() -> None:
    sowings = (
        standing(_GARDEN, "radish 1", (_ON, date(2027, 5, 1))),
        standing(_GARDEN, "tomato 1", (_ON, date(2027, 8, 1))),
        standing(_GARDEN, "leaf lettuce 1", (_ON, date(2027, 5, 8))),
    )
    text = manure_text(_GARDEN, manure_checks(_GARDEN, sowings), 200)
    assert "radish 1 on 1 May 2027 (42 days)" in text
    assert "leaf lettuce 1 on 8 May 2027 (49 days)" in text
    assert "Pick none of it before 18 July 2027." in text
    assert "finished compost in place of raw manure" in text
    assert "In time: tomato 1." in text
    assert "TRADE-S75" in text
    record = manure_record(manure_checks(_GARDEN, sowings))
    assert [one["too_early"] for one in record[0]["picks"]] == [True, False, True]


def test_each_week_with_something_ripe_too_early_is_warned() -> None:
    """Sown on 20 March and cut in two weeks: both are before 18 July, 120 days after manure."""
    weeks = (date(2027, 5, 1), date(2027, 5, 8), date(2027, 7, 19))
    sowings = (
        standing(_GARDEN, "radish 1", (_ON, date(2027, 5, 1))),
        standing(_GARDEN, "leaf lettuce 1", (_ON, weeks[-1]), picked=weeks),
        standing(_GARDEN, "tomato 1", (_ON, date(2027, 8, 1))),
    )
    until = "before 18 July 2027: raw manure on Gate bed."
    assert not_yet_lines(_GARDEN, sowings) == {
        week_of(date(2027, 5, 1)): (f"Do not pick radish 1, leaf lettuce 1 {until}",),
        week_of(date(2027, 5, 8)): (f"Do not pick leaf lettuce 1 {until}",),
    }


def test_the_task_itself_says_from_when_on_a_harvest_may_be() -> None:
    """Whoever reads the task alone picks nothing too soon: 18 July is 120 days after 20 March."""
    early, late = date(2027, 7, 17), _TOUCHING
    sowing = standing(_GARDEN, "radish 1", (_ON, late), picked=(early, late))
    tasks = tasks_of(_GARDEN, (sowing,))
    told = season_tasks(_GARDEN, (sowing,))
    picks = {one.on: one.text for one in told if one.kind is TaskKind.PICK}
    not_yet = "Do not harvest radish before 18 July 2027: raw manure on Gate bed."
    assert picks[early] == not_yet
    assert picks[late].startswith("Pick radish")
    assert [one for one in told if one.kind is not TaskKind.PICK] == [
        one for one in tasks if one.kind is not TaskKind.PICK
    ]


@pytest.mark.parametrize(
    ("leaves_on", "names"),
    # What touches the soil may be picked from 18 July on: before it, in a time in which it falls,
    # and from it on.
    [(date(2027, 7, 5), []), (date(2027, 7, 17), []), (_TOUCHING, ["leaf lettuce 1"])],
)
def test_whoever_picks_while_nobody_is_there_is_told_of_none_that_must_wait(
    leaves_on: date, names: list[str]
) -> None:
    back_on = leaves_on + timedelta(days=9)
    plan = soil_plan(_SPREAD, crops=("leaf lettuce",))
    last = "to = 2028-11-30"
    away = f"{last}\naway = [{{ from = {leaves_on}, to = {back_on} }}]"
    garden = garden_of(plan.replace(last, away))
    days = (leaves_on, back_on)
    lettuce = standing(garden, "leaf lettuce 1", (_ON, back_on), picked=days)
    water = water_of(garden, Climate(garden.site), (lettuce,))
    (work,) = away_work_of(water, (lettuce,), _ON)
    assert [one.id for one in work.picks] == names
    assert [one.id for one in work.waits] == ([] if names else ["leaf lettuce 1"])
    text = away_text((work,), garden.beds[0].note.unit, 200)
    head, item = "Do not pick or eat, raw manure", "  - leaf lettuce 1 (Gate bed)"
    told = [line for line in text.splitlines() if line.startswith((head, item))]
    assert [line.startswith(head) for line in told] == ([False] if names else [True, False])


def test_of_two_manures_the_later_decides() -> None:
    """120 days after 1 May 2027, day 121, is day 241: 29 August."""
    both = soil_garden(f'{_SPREAD}\n\n[[manure]]\nbed = "Gate bed"\non = 2027-05-01', crops=_CROPS)
    day = date(2027, 7, 10)
    sowing = standing(both, "radish 1", (_ON, day), picked=(day,))
    [wait] = too_early_harvests(both, (sowing,)).values()
    assert wait.from_on == date(2027, 8, 29)


def test_what_is_kept_there_is_left_to_the_grower() -> None:
    kept = '[[kept]]\nbed = "Gate bed"\nwhat = "rhubarb"\nfrom = "0 ft"\nto = "2 ft"'
    garden = soil_garden(_SPREAD, kept)
    [check] = manure_checks(garden, ())
    assert check.unchecked == ("rhubarb",)
    assert "Mind these days yourself" in manure_text(garden, (check,), 100)
    gone = soil_garden(_SPREAD, kept + "\nuntil = 2027-03-10")
    assert manure_checks(gone, ())[0].unchecked == ()


def test_without_manure_it_says_how_to_tell_of_it() -> None:
    garden = soil_garden()
    assert manure_checks(garden, ()) == ()
    assert "[[manure]]" in manure_text(garden, (), 100)


@pytest.mark.parametrize("width", [40, 80])
def test_lines_fit_the_screen(width: int) -> None:
    sowings = (standing(_GARDEN, "radish 1", (_ON, date(2027, 5, 1))),)
    text = manure_text(_GARDEN, manure_checks(_GARDEN, sowings), width)
    assert max(map(len, text.splitlines())) <= width


@pytest.mark.parametrize(
    ("manure", "kind"),
    [
        ('[[manure]]\nbed = "Gate bd"\non = 2027-03-20', "unknown-bed"),
        ('[[manure]]\nbed = "Gate bed"', "missing-key"),
        ("[[manure]]\non = 2027-03-20", "missing-key"),
        ('[[manure]]\nbed = "Gate bed"\non = "spring"', "wrong-type"),
        ('[[manure]]\nbed = "Gate bed"\non = 2024-03-20', "out-of-range"),
        ('[[manure]]\nbed = "Gate bed"\non = 2029-03-20', "out-of-range"),
        ('[[manure]]\nbed = "Gate bed"\non = 2027-03-20\ndeep = true', "unknown-key"),
        ('[manure]\nbed = "Gate bed"\non = 2027-03-20', "wrong-type"),
    ],
)
def test_a_slip_about_manure_is_told_once(manure: str, kind: str) -> None:
    assert problem_kinds_of(soil_plan(manure)) == [kind]


def test_a_misspelt_bed_is_suggested() -> None:
    read = read_plan(soil_plan('[[manure]]\nbed = "Gate bd"\non = 2027-03-20'))
    assert isinstance(read, tuple)
    assert 'write "Gate bed"' in str(read[0])
