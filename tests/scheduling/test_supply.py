"""What each week can expect, counted on paper.

Low and high are the least and the most of three cases: everything early, likely, or late.
Common practice, no source.
"""

from datetime import date, timedelta

import pytest

from planner.garden import Crop
from planner.growth import Ripening
from planner.scheduling import HarvestDay, Supply, supply_of
from planner.terms import Week
from tests.scheduling.by_hand import paper_crop, paper_garden, wanted
from tests.scheduling.sown_by_hand import sowing_of

_W17, _W18, _W19, _W20, _W21, _W22 = (Week(2027, number) for number in range(17, 23))
_MONDAY = _W18.monday


def _crop(unit: str = "heads", **figures: str) -> Crop:
    return paper_garden(paper_crop(**figures), wanted(amount=f"4 {unit}")).crops["paper crop"]


def _ripe(early: int, late: int) -> Ripening:
    """Likely on the Monday of week 18, so many days earlier and later."""
    return Ripening(_MONDAY - timedelta(days=early), _MONDAY, _MONDAY + timedelta(days=late))


def _supply(
    crop: Crop, ripe: Ripening, harvest: dict[date, float], wants: dict[Week, float]
) -> Supply:
    days = tuple(HarvestDay(day, amount) for day, amount in harvest.items())
    return supply_of([sowing_of(crop, ripe=ripe, harvest=days)], wants)


def test_what_ripens_at_the_likely_day_is_expected() -> None:
    supply = _supply(_crop(), _ripe(0, 0), {_MONDAY: 6.0}, {_W18: 4.0, _W19: 4.0})
    assert supply.expected == supply.low == supply.high == {_W18: 6.0, _W19: 0.0}


@pytest.mark.parametrize(("hold", "low"), [(6, 0.0), (7, 6.0)])
def test_heads_ripe_a_week_early_are_still_cut_when_they_stand_long_enough(
    hold: int, low: float
) -> None:
    """Ripe on Monday a week before: seven days later they are cut as planned, else on the last."""
    crop = _crop(hold_days=f"{hold} days")
    supply = _supply(crop, _ripe(7, 0), {_MONDAY: 6.0}, {_W17: 4.0, _W18: 4.0})
    assert supply.expected == {_W17: 0.0, _W18: 6.0}
    assert supply.low == {_W17: 0.0, _W18: low}
    assert supply.high == {_W17: 6.0 - low, _W18: 6.0}


def test_heads_ripe_late_are_cut_when_they_are_ripe() -> None:
    """Planned for Monday and the Monday after, ripe on the Wednesday between them at the latest."""
    crop = _crop(hold_days="10 days")
    planned = {_MONDAY: 3.0, _W19.monday: 2.0}
    supply = _supply(crop, _ripe(0, 2), planned, {_W18: 3.0, _W19: 2.0})
    assert supply.low == supply.high == {_W18: 3.0, _W19: 2.0}
    supply = _supply(crop, _ripe(0, 9), planned, {_W18: 3.0, _W19: 2.0})
    assert supply.low == {_W18: 0.0, _W19: 2.0}
    assert supply.high == {_W18: 3.0, _W19: 5.0}


def test_cuts_and_pickings_come_earlier_or_later_all_together() -> None:
    crop = _crop("oz", habit="cut", cuts="2 cuts", regrow_days="14 days", **{"yield": "1 oz"})
    planned = {_MONDAY: 8.0, _W20.monday: 7.0}
    supply = _supply(crop, _ripe(7, 7), planned, {})
    weeks = (_W17, _W18, _W19, _W20, _W21)
    assert supply.expected == dict(zip(weeks, (0.0, 8.0, 0.0, 7.0, 0.0), strict=True))
    assert supply.low == dict.fromkeys(weeks, 0.0)
    assert supply.high == dict(zip(weeks, (8.0, 8.0, 8.0, 7.0, 7.0), strict=True))


_STORE = {"habit": "store", "hold_days": "14 days"}


def test_a_store_is_eaten_as_it_is_wanted_while_it_keeps() -> None:
    """Ten lifted in week 18, four wanted each week: four, four and the two that are left."""
    wants = dict.fromkeys((_W18, _W19, _W20, _W21), 4.0)
    supply = _supply(_crop(store_days="27 days", **_STORE), _ripe(0, 0), {_MONDAY: 10.0}, wants)
    assert supply.expected == {_W18: 4.0, _W19: 4.0, _W20: 2.0, _W21: 0.0}


def test_a_store_is_left_alone_in_a_week_that_wants_nothing_of_it() -> None:
    """Four, none, four; the two that are left are nobody's and count when it is lifted."""
    wants = {_W18: 4.0, _W20: 4.0}
    supply = _supply(_crop(store_days="20 days", **_STORE), _ripe(0, 0), {_MONDAY: 10.0}, wants)
    assert supply.expected == {_W18: 6.0, _W19: 0.0, _W20: 4.0}


def test_two_stores_lifted_on_one_day_feed_a_week_no_more_than_it_wants() -> None:
    """Four of the first in each of two weeks, and of the second none: it all is left over."""
    crop = _crop(store_days="13 days", **_STORE)
    stores = [
        sowing_of(crop, ripe=_ripe(0, 0), harvest=(HarvestDay(_MONDAY, amount),))
        for amount in (8.0, 3.0)
    ]
    wants = dict.fromkeys((_W18, _W19), 4.0)
    assert supply_of(stores, wants).expected == {_W18: 7.0, _W19: 4.0}


def test_what_a_store_keeps_too_long_or_nobody_wants_counts_when_it_is_lifted() -> None:
    """Lifted Monday 3 May, it keeps seven days, to Monday the 10th: week 20 is too late."""
    wants = dict.fromkeys((_W18, _W19, _W20), 4.0)
    supply = _supply(_crop(store_days="7 days", **_STORE), _ripe(0, 0), {_MONDAY: 10.0}, wants)
    assert supply.expected == {_W18: 6.0, _W19: 4.0, _W20: 0.0}


def test_the_second_store_is_begun_where_the_first_ends() -> None:
    """Six and six, four wanted a week; the first keeps to the end of the second week."""
    crop = _crop(store_days="13 days", **_STORE)
    stores = [
        sowing_of(crop, ripe=Ripening(day, day, day), harvest=(HarvestDay(day, 6.0),))
        for day in (_W19.monday, _MONDAY)
    ]
    wants = dict.fromkeys((_W18, _W19, _W20), 4.0)
    assert supply_of(stores, wants).expected == {_W18: 4.0, _W19: 4.0, _W20: 4.0}


def test_sowings_of_one_week_add_up() -> None:
    crop = _crop()
    two = [
        sowing_of(crop, ripe=_ripe(0, 0), harvest=(HarvestDay(_MONDAY, amount),))
        for amount in (2.0, 3.0)
    ]
    assert supply_of(two, {_W18: 4.0}).expected == {_W18: 5.0}


def test_of_a_supply_some_weeks_can_be_told_alone() -> None:
    supply = Supply({_W18: 1.0, _W19: 2.0}, {_W18: 0.5, _W19: 1.0}, {_W18: 3.0, _W19: 4.0})
    assert supply.within({_W19, _W20}) == Supply({_W19: 2.0}, {_W19: 1.0}, {_W19: 4.0})
