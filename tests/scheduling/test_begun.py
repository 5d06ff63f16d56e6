"""What has begun goes on by what happened (rules §35), counted on paper.

Six heads sown in place on Monday 5 April are ripe on Monday 3 May and stand ten days: three are
planned for that Monday and three for the next. Common practice, no source.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from planner.garden import Garden
from planner.journal import Entry, Event, Journal
from planner.scheduling import Block, HarvestDay, Sowing, SowingState
from planner.scheduling.standing.begun import Begun, begun_of
from planner.terms import UNITS, Place, Quantity
from tests.scheduling.by_hand import found_of, paper_crop, paper_garden, wanted
from tests.scheduling.sown_by_hand import sowing_of

_NAME = "paper crop 1"
_SOWN, _RIPE = date(2027, 4, 5), date(2027, 5, 3)
_NEXT = _RIPE + timedelta(days=7)
_METRE = 1_000_000
_GARDEN = paper_garden(paper_crop(hold_days="10 days"), wanted())
_BLOCK = Block("Bed", 0, _METRE, _SOWN, _NEXT)
_SOWING = sowing_of(
    _GARDEN.crops["paper crop"],
    _NAME,
    _SOWN,
    harvest=(HarvestDay(_RIPE, 3.0), HarvestDay(_NEXT, 3.0)),
    blocks=(_BLOCK,),
)


def _told(event: Event, day: date, amount: str = "", name: str = _NAME) -> Entry:
    """An entry of the journal; its amount is told as a number and a unit."""
    quantity = None
    if amount:
        number, unit = amount.split(maxsplit=1)
        quantity = Quantity(float(number), UNITS[unit])
    return Entry(day, event, name, quantity, "", Place("journal.csv", 2))


def _begun(
    as_of: date, *entries: Entry, sowings: tuple[Sowing, ...] = (_SOWING,), garden: Garden = _GARDEN
) -> Begun:
    found = {"paper crop": found_of(garden)}
    return begun_of(garden, found, as_of, sowings, Journal(entries))


def _stands(as_of: date, *entries: Entry, sowing: Sowing = _SOWING) -> Sowing:
    (one,) = _begun(as_of, *entries, sowings=(sowing,)).standing
    return one


def _harvest(sowing: Sowing) -> list[tuple[date, float]]:
    return [(one.day, one.amount) for one in sowing.harvest]


def _days_later(days: int) -> list[tuple[date, float]]:
    return [(_RIPE + timedelta(days=days), 3.0), (_NEXT + timedelta(days=days), 3.0)]


def test_what_is_to_be_sown_today_may_still_move_and_what_was_yesterday_stands() -> None:
    today = _begun(_SOWN)
    assert (today.standing, today.missed) == ((), ())
    assert today.movable == (_SOWING,)
    tomorrow = _begun(_SOWN + timedelta(days=1))
    assert (tomorrow.movable, tomorrow.missed) == ((), ())
    assert tomorrow.standing == (replace(_SOWING, state=SowingState.BEGUN),)


def test_what_was_sown_before_its_day_stands_by_the_real_one() -> None:
    """Sown a week early it is ripe a week early, and still has the harvest of its weeks."""
    early = _stands(_SOWN - timedelta(days=3), _told(Event.SOWN, _SOWN - timedelta(days=7)))
    assert early.ripe.likely == _RIPE - timedelta(days=7)
    assert early.sow_on == early.blocks[0].enter_on == _SOWN - timedelta(days=7)
    # Ready from 26 April to 6 May: week 18 is still in it, week 19 is not.
    assert _harvest(early) == [(_RIPE, 6.0)]


def test_what_was_sown_a_week_later_is_a_week_later_and_keeps_its_ground() -> None:
    late = _stands(date(2027, 4, 20), _told(Event.SOWN, _SOWN + timedelta(days=7)))
    assert late.ripe.likely == _NEXT
    # Nothing is ready in week 18 now; the nearest day is that of week 19.
    assert _harvest(late) == [(_NEXT, 6.0)]
    assert late.blocks == (replace(_BLOCK, enter_on=_SOWN + timedelta(days=7)),)
    assert "sown on 2027-04-12), ripe about 2027-05-10" in late.why[-1]


@pytest.mark.parametrize(
    "entry",
    [
        _told(Event.LATE, date(2027, 4, 15), "4 days"),
        # It was to come up on the tenth.
        _told(Event.EMERGED, date(2027, 4, 14)),
    ],
)
def test_what_is_four_days_behind_is_ripe_four_days_later(entry: Entry) -> None:
    """Friday 7 May to Monday 17 May: in week 18 it is picked that Friday, no garden day."""
    late = _stands(date(2027, 4, 20), entry)
    assert late.ripe.likely == _RIPE + timedelta(days=4)
    assert _harvest(late) == [(_RIPE + timedelta(days=4), 3.0), (_NEXT, 3.0)]


def test_what_is_told_of_how_late_it_is_goes_before_when_it_came_up() -> None:
    entries = (
        _told(Event.EMERGED, date(2027, 4, 14)),
        _told(Event.LATE, date(2027, 4, 15), "1 weeks"),
    )
    assert _stands(date(2027, 4, 20), *entries).ripe.likely == _NEXT


def test_what_is_picked_early_was_ripe_then() -> None:
    picked = _told(Event.PICKED, _RIPE - timedelta(days=3), "1 heads")
    early = _stands(_RIPE - timedelta(days=2), picked)
    assert early.ripe.likely == _RIPE - timedelta(days=3)
    # Five are left of six, and stand until the 10th, ten days after the 30th of April.
    assert _harvest(early) == [(_RIPE - timedelta(days=3), 1.0), (_RIPE, 2.5), (_NEXT, 2.5)]
    assert early.clear_on == _NEXT


def test_what_was_picked_counts_and_the_rest_is_still_to_come() -> None:
    """Two of six picked leave four for the next week; seven would leave none."""
    day = _RIPE + timedelta(days=1)
    assert _harvest(_stands(day, _told(Event.PICKED, _RIPE, "2 heads"))) == [
        (_RIPE, 2.0),
        (_NEXT, 4.0),
    ]
    all_of_it = _stands(day, _told(Event.PICKED, _RIPE, "7 heads"))
    assert _harvest(all_of_it) == [(_RIPE, 7.0)]


def test_two_pickings_of_a_day_are_one_harvest() -> None:
    entries = [_told(Event.PICKED, _RIPE, "1 heads"), _told(Event.PICKED, _RIPE, "2 heads")]
    assert _harvest(_stands(_NEXT, *entries))[0] == (_RIPE, 3.0)


def test_what_is_past_and_not_told_was_picked_as_planned() -> None:
    """On the fourth of May a plant is lost of six: five, of which three were had."""
    day = _RIPE + timedelta(days=1)
    assert _harvest(_stands(day, _told(Event.LOST, day, "1 plants"))) == [
        (_RIPE, 3.0),
        (_NEXT, 2.0),
    ]


def test_half_the_plants_lost_before_harvest_leave_half_of_it() -> None:
    half = _stands(date(2027, 4, 20), _told(Event.LOST, date(2027, 4, 19), "3 plants"))
    assert _harvest(half) == [(_RIPE, 1.5), (_NEXT, 1.5)]
    none = _stands(date(2027, 4, 20), _told(Event.LOST, date(2027, 4, 19), "8 plants"))
    assert _harvest(none) == []


def test_late_and_without_a_plant_left_it_is_cleared_when_it_would_have_been() -> None:
    """A week late, all of it would have been cut on the tenth."""
    late = _told(Event.LATE, date(2027, 4, 15), "7 days")
    none = _stands(date(2027, 4, 20), late, _told(Event.LOST, date(2027, 4, 19), "6 plants"))
    assert _harvest(none) == []
    assert none.clear_on == none.blocks[0].leave_on == _NEXT


def test_a_sowing_lost_whole_gives_its_ground_back_that_day() -> None:
    day = _RIPE + timedelta(days=2)
    lost = _stands(day, _told(Event.LOST, day))
    assert lost.state is SowingState.LOST
    assert lost.clear_on == lost.blocks[0].leave_on == day
    assert _harvest(lost) == [(_RIPE, 3.0)]


def test_what_is_cleared_has_what_was_picked_of_it() -> None:
    day = _NEXT - timedelta(days=1)
    cleared = _stands(day, _told(Event.PICKED, _RIPE, "5 heads"), _told(Event.CLEARED, day))
    assert cleared.state is SowingState.CLEARED
    assert cleared.clear_on == cleared.blocks[0].leave_on == day
    assert _harvest(cleared) == [(_RIPE, 5.0)]


def test_the_first_end_told_is_the_end() -> None:
    lost_on = _RIPE + timedelta(days=1)
    entries = (_told(Event.LOST, lost_on), _told(Event.CLEARED, _NEXT))
    one = _stands(_NEXT, *entries)
    assert (one.state, one.clear_on) == (SowingState.LOST, lost_on)


def test_what_is_not_yet_told_changes_nothing() -> None:
    told_later = _told(Event.LOST, _RIPE)
    assert _stands(_RIPE - timedelta(days=1), told_later) == replace(
        _SOWING, state=SowingState.BEGUN
    )


def test_a_missed_sowing_is_let_go_unless_it_was_sown_after_all() -> None:
    missed = _told(Event.MISSED, _SOWN)
    begun = _begun(date(2027, 4, 20), missed)
    assert (begun.standing, begun.movable, begun.missed) == ((), (), (_SOWING,))


def test_weights_are_counted_in_the_unit_of_the_crop() -> None:
    """One pound is sixteen ounces (NIST SP 811): of 96 oz 80 are left."""
    garden = paper_garden(
        paper_crop(hold_days="10 days", **{"yield": "16 oz"}), wanted(amount="48 oz")
    )
    crop = garden.crops["paper crop"]
    assert crop.unit.name == "oz"
    sowing = replace(_SOWING, crop=crop, harvest=(HarvestDay(_RIPE, 48.0), HarvestDay(_NEXT, 48.0)))
    picked = _told(Event.PICKED, _RIPE, "1 lb")
    (one,) = _begun(_NEXT, picked, sowings=(sowing,), garden=garden).standing
    assert dict(_harvest(one)) == pytest.approx({_RIPE: 16, _NEXT: 80})


@pytest.mark.parametrize(("rest", "standing"), [(0, 0), (1, 1)])
def test_what_was_cleared_before_the_season_is_let_go_once_its_ground_has_rested(
    rest: int, standing: int
) -> None:
    """Cleared on the last of February, the season begins on the first of March."""
    garden = paper_garden(
        paper_crop(hold_days="10 days"), wanted(), wishes=f"turnover_days = {rest}"
    )
    day = garden.wish.first - timedelta(days=1)
    before = replace(_SOWING, sow_on=date(2027, 1, 4), clear_on=day, harvest=())
    begun = _begun(date(2027, 3, 2), sowings=(before,), garden=garden)
    assert len(begun.standing) == standing
