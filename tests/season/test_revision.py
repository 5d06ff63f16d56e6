"""Living with the plan: what happens in the beds, and what the season makes of it."""

from datetime import date, timedelta

import pytest

from planner.journal import Entry, Event, Journal
from planner.scheduling import Changing, Sowing, SowingState
from planner.season import EarlierSeason, Season, make_season
from planner.terms import UNITS, Place, Quantity
from tests.plan_text import garden_of, own_crop

_PLAN = """
plan = 1

[site]
latitude = 45.5
last_spring_freeze = "04-15"
first_fall_freeze = "10-25"

[season]
from = 2027-04-01
to = 2027-10-15
garden_days = ["Wed", "Sat"]

[[bed]]
name = "North"
length = "12 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[bed]]
name = "South"
length = "8 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[target]]
crop = "month root"
each_week = "25 roots"
from = 2027-05-24
to = 2027-09-26

[[target]]
crop = "raised head"
each_week = "4 heads"
from = 2027-06-14
to = 2027-09-26
"""
_CROPS = own_crop(
    "month root",
    days_from_sowing="28 days",
    hold_days="7 days",
    spacing="3 in",
    family="Family 1",
    **{"yield": "1 roots"},
) + own_crop(
    "raised head",
    days_from_setting_out="45 days",
    weeks_indoors="4 weeks",
    method="indoors",
    hold_days="10 days",
    spacing="10 in",
    family="Family 2",
    **{"yield": "1 heads"},
)
_GARDEN = garden_of(_PLAN, _CROPS)
_ROOTS, _HEADS = "month root", "raised head"
_AS_OF = date(2027, 6, 16)


@pytest.fixture(scope="module")
def season() -> Season:
    return make_season(_GARDEN, _GARDEN.wish.first, None)


def _earlier(season: Season) -> EarlierSeason:
    return EarlierSeason(season.plan_id, season.sowings, season.names_given, season.basis)


def _told(
    sowing: Sowing, event: Event, day: date, amount: Quantity | None = None
) -> tuple[Entry, ...]:
    return (Entry(day, event, sowing.id, amount, "", Place("journal.csv", 2)),)


def _revised(
    season: Season,
    entries: tuple[Entry, ...],
    as_of: date = _AS_OF,
    changing: Changing = Changing.LITTLE,
) -> Season:
    return make_season(
        _GARDEN, as_of, _earlier(season), journal=Journal(entries), changing=changing
    )


def _by_name(season: Season) -> dict[str, Sowing]:
    return {one.id: one for one in season.sowings}


def _growing(season: Season, crop: str, day: date = _AS_OF) -> Sowing:
    """A sowing of a crop that stands in its ground on a day and is not yet ripe."""
    return next(
        one
        for one in season.sowings
        if one.crop.name == crop and one.enters_on + timedelta(days=5) < day < one.ripe.likely
    )


def _just_begun(season: Season) -> Sowing:
    """The roots to be sown last before the day."""
    begun = [one for one in season.sowings if one.crop.name == _ROOTS and one.sow_on < _AS_OF]
    return max(begun, key=lambda one: one.sow_on)


def _days(many: int) -> Quantity:
    return Quantity(float(many), UNITS["days"])


def test_while_nothing_happens_nothing_changes(season: Season) -> None:
    later = _revised(season, ())
    assert later.changes.compared
    assert later.tasks == season.tasks
    assert (later.changes.added, later.changes.dropped, later.changes.moved) == ((), (), ())


def test_what_was_begun_stays_where_it_is(season: Season) -> None:
    missed = _just_begun(season)
    revised = _by_name(_revised(season, _told(missed, Event.MISSED, missed.sow_on)))
    for one in season.sowings:
        if one.sow_on < _AS_OF and one.id != missed.id:
            assert revised[one.id].blocks == one.blocks


def test_a_missed_sowing_is_let_go_and_costs_only_the_week_nothing_can_feed_now(
    season: Season,
) -> None:
    missed = _just_begun(season)
    after = _revised(season, _told(missed, Event.MISSED, missed.sow_on))
    assert [one.id for one in after.changes.missed] == [missed.id]
    assert missed.id not in _by_name(after)
    assert season.measures.fill == 1
    assert after.measures.fill == pytest.approx(after.measures.bound)
    assert len(after.unmet) == 1
    assert all(one.sow_on >= _AS_OF for one in after.changes.added)


def test_few_sowings_change_for_one_missed(season: Season) -> None:
    missed = _just_begun(season)
    changes = _revised(season, _told(missed, Event.MISSED, missed.sow_on)).changes
    assert len(changes.added) + len(changes.dropped) <= 2


def test_a_sowing_late_by_a_week_is_ripe_a_week_later(season: Season) -> None:
    one = _growing(season, _ROOTS)
    late = _by_name(_revised(season, _told(one, Event.LATE, _AS_OF, _days(7))))[one.id]
    assert late.ripe.likely == one.ripe.likely + timedelta(days=7)
    assert late.clear_on >= one.clear_on
    assert min(taken.day for taken in late.harvest) >= late.ripe.likely
    assert sum(taken.amount for taken in late.harvest) == one.plants


def test_what_was_sown_three_days_later_is_ripe_three_days_later(season: Season) -> None:
    one = _growing(season, _ROOTS)
    day = one.sow_on + timedelta(days=3)
    stands = _by_name(_revised(season, _told(one, Event.SOWN, day)))[one.id]
    assert stands.sow_on == day
    assert stands.ripe.likely == one.ripe.likely + timedelta(days=3)


def test_what_comes_up_four_days_late_is_ripe_four_days_late(season: Season) -> None:
    one = _growing(season, _ROOTS)
    day = one.emerges_on + timedelta(days=4)
    stands = _by_name(_revised(season, _told(one, Event.EMERGED, day)))[one.id]
    assert stands.emerges_on == day
    assert stands.ripe.likely == one.ripe.likely + timedelta(days=4)


def test_a_sowing_lost_gives_its_ground_back_that_day(season: Season) -> None:
    one = _growing(season, _HEADS)
    after = _revised(season, _told(one, Event.LOST, _AS_OF))
    lost = _by_name(after)[one.id]
    assert lost.state is SowingState.LOST
    assert lost.harvest == ()
    assert {block.leave_on for block in lost.blocks} == {_AS_OF}
    assert [gone.id for gone in after.changes.lost] == [one.id]
    assert all(task.on <= _AS_OF for task in after.tasks if task.sowing == one.id)
    less = [week for week in after.changes.weeks if week.crop == _HEADS and week.amount < 0]
    assert less


def test_half_of_a_sowing_lost_leaves_half_of_its_harvest(season: Season) -> None:
    one = _growing(season, _ROOTS)
    gone = Quantity(float(one.plants // 2), UNITS["plants"])
    after = _by_name(_revised(season, _told(one, Event.LOST, _AS_OF, gone)))[one.id]
    assert sum(taken.amount for taken in after.harvest) == one.plants - one.plants // 2


def test_what_was_picked_counts_and_the_rest_is_still_to_come(season: Season) -> None:
    ready = [
        one
        for one in season.sowings
        if one.crop.name == _ROOTS and one.ripe.likely < _AS_OF <= one.clear_on
    ]
    one = ready[0] if ready else _growing(season, _ROOTS)
    picked = Quantity(10.0, UNITS["roots"])
    day = _AS_OF - timedelta(days=1)
    after = _by_name(_revised(season, _told(one, Event.PICKED, day, picked)))[one.id]
    assert after.harvest[0].day == day
    assert after.harvest[0].amount == 10
    assert sum(taken.amount for taken in after.harvest) == pytest.approx(one.plants)


def test_a_lost_sowing_is_lost_no_more_when_that_is_undone(season: Season) -> None:
    one = _growing(season, _ROOTS)
    entries = (*_told(one, Event.LOST, _AS_OF), *_told(one, Event.UNDONE, _AS_OF))
    assert _by_name(_revised(season, entries))[one.id].harvest == one.harvest


def test_what_was_raised_and_not_set_out_waits_for_the_next_garden_day(season: Season) -> None:
    raised = next(
        one
        for one in season.sowings
        if one.set_out_on and one.sow_on < _AS_OF and one.set_out_on < _AS_OF < one.ripe.likely
    )
    assert raised.set_out_on is not None
    entries = (
        *_told(raised, Event.SOWN, raised.sow_on),
        *_told(raised, Event.MISSED, raised.set_out_on),
    )
    stands = _by_name(_revised(season, entries))[raised.id]
    assert stands.set_out_on == _AS_OF
    assert stands.blocks[0].enter_on == _AS_OF


def test_freely_everything_not_begun_may_move_and_feeds_no_better_than_a_little_less(
    season: Season,
) -> None:
    missed = _just_begun(season)
    entries = _told(missed, Event.MISSED, missed.sow_on)
    freely = _revised(season, entries, changing=Changing.FREELY)
    assert _revised(season, entries).measures.fill >= freely.measures.fill - 0.02


def test_a_garden_that_is_always_slower_is_expected_to_be_slower(season: Season) -> None:
    """Three first harvests a quarter late; by hand the factor is exp(0.676 * ln 1.25) = 1.163."""
    roots = [one for one in season.sowings if one.crop.name == _ROOTS][:4]
    last = max(one.clear_on for one in roots) + timedelta(days=10)
    picked = Quantity(1.0, UNITS["roots"])
    entries: tuple[Entry, ...] = ()
    for one in roots:
        late = one.enters_on + (one.harvest[0].day - one.enters_on) * 5 // 4
        entries += _told(one, Event.PICKED, late, picked)
    after = _revised(season, entries, as_of=last)
    coming = [one for one in after.sowings if one.crop.name == _ROOTS and one.sow_on >= last]
    assert coming
    assert all("own pace" in one.counted for one in coming)
    assert min((one.ripe.likely - one.sow_on).days for one in coming) >= 32
