"""What stands longer makes way, and plants in trays wait a few days for ground (rules §35).

Common practice, no source; the ten days are ours.
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

_METRE = 1_000_000
# In place: sown Monday 5 April, ripe 3 May, good for ten days, cleared Monday 10 May.
_SOWN, _RIPE, _CLEARED = date(2027, 4, 5), date(2027, 5, 3), date(2027, 5, 10)
# Raised: sown Monday 12 April, set out on the day that ground is free.
_IN_TRAYS = date(2027, 4, 12)


def _garden(rest: int = 0) -> Garden:
    crop = paper_crop(
        method="either",
        weeks_indoors="4 weeks",
        days_from_setting_out="28 days",
        hold_days="10 days",
    )
    return paper_garden(crop, wanted(), wishes=f"turnover_days = {rest}")


_CROP = _garden().crops["paper crop"]


def _first(**told: object) -> Sowing:
    block = Block("Bed", 0, _METRE, _SOWN, _CLEARED)
    harvest = (HarvestDay(_RIPE, 3.0), HarvestDay(_CLEARED, 3.0))
    one = sowing_of(_CROP, "paper crop 1", _SOWN, harvest=harvest, blocks=(block,))
    return replace(one, **told)  # type: ignore[arg-type]


def _raised(from_um: int = 0, rest: int = 0, bed: str = "Bed") -> Sowing:
    """Plants that are to follow in the same metre, or another, on the tenth or a little later."""
    out = _CLEARED + timedelta(days=rest)
    ripe = out + timedelta(days=28)
    return sowing_of(
        _CROP,
        "paper crop 2",
        _IN_TRAYS,
        set_out_on=out,
        harvest=(HarvestDay(ripe, 6.0),),
        blocks=(Block(bed, from_um, from_um + _METRE, out, ripe),),
    )


def _late(days: int) -> Entry:
    amount = Quantity(float(days), UNITS["days"])
    return Entry(date(2027, 4, 15), Event.LATE, "paper crop 1", amount, "", Place("journal.csv", 2))


def _told(event: Event, day: date, name: str = "paper crop 2") -> Entry:
    return Entry(day, event, name, None, "", Place("journal.csv", 3))


def _begun(
    sowings: tuple[Sowing, ...], *entries: Entry, as_of: date = date(2027, 4, 20), rest: int = 0
) -> Begun:
    garden = _garden(rest)
    return begun_of(garden, {"paper crop": found_of(garden)}, as_of, sowings, Journal(entries))


@pytest.mark.parametrize(("late", "free_on"), [(7, 10), (14, 17)])
def test_plants_in_trays_wait_for_ground(late: int, free_on: int) -> None:
    """Two weeks late both its harvests are on the 17th, and so is what follows set out."""
    first, raised = _begun((_first(), _raised()), _late(late)).standing
    assert first.clear_on == raised.set_out_on == date(2027, 5, free_on)
    assert raised.blocks[0].enter_on == raised.set_out_on
    assert raised.ripe.likely == date(2027, 5, free_on) + timedelta(days=28)
    told = "By what happened (ground free on 2027-05-17), ripe about 2027-06-14 (§35)."
    assert raised.why == ((told,) if late == 14 else ())


def test_but_no_longer_than_ten_days() -> None:
    """Three weeks late, to the 24th, it goes on the day the others were to come."""
    first, raised = _begun((_first(), _raised()), _late(21)).standing
    assert raised.set_out_on == _CLEARED
    assert first.clear_on == first.blocks[0].leave_on == _CLEARED
    assert all(one.day <= _CLEARED for one in first.harvest)


def test_ground_rests_before_they_are_set_out() -> None:
    """A turnover of a week: cleared on the 17th, a week late, the 24th is a week later too."""
    first, raised = _begun((_first(), _raised(rest=7)), _late(14), rest=7).standing
    assert first.clear_on == date(2027, 5, 17)
    assert raised.set_out_on == date(2027, 5, 24)


@pytest.mark.parametrize(("from_um", "bed"), [(_METRE, "Bed"), (0, "Other")])
def test_ground_beside_or_in_another_bed_is_in_nobody_s_way(from_um: int, bed: str) -> None:
    first, raised = _begun((_first(), _raised(from_um, bed=bed)), _late(21)).standing
    assert raised.set_out_on == _CLEARED
    assert first.clear_on == date(2027, 5, 24)


def test_what_is_set_out_waits_no_more() -> None:
    """Set out on the 10th by the journal, though the first was to stand to the 17th."""
    out = _told(Event.SET_OUT, _CLEARED)
    day = _CLEARED + timedelta(days=1)
    first, raised = _begun((_first(), _raised()), _late(14), out, as_of=day).standing
    assert raised.set_out_on == _CLEARED
    assert first.clear_on == _CLEARED


def test_what_makes_way_keeps_the_harvest_of_its_last_day() -> None:
    """Set out on 3 May, a week before it was planned, among heads of which half were cut."""
    out = _told(Event.SET_OUT, _RIPE)
    first, _ = _begun((_first(), _raised()), out, as_of=_RIPE + timedelta(days=1)).standing
    assert first.clear_on == _RIPE
    assert first.harvest == (HarvestDay(_RIPE, 3.0),)


@pytest.mark.parametrize("day", [date(2027, 6, 4), date(2027, 6, 7)])
def test_what_was_raised_and_is_picked_by_its_day_was_ripe_then(day: date) -> None:
    """Set out on the tenth of May it is to be ripe on 7 June."""
    amount = Quantity(1.0, UNITS["heads"])
    picked = Entry(day, Event.PICKED, "paper crop 2", amount, "", Place("journal.csv", 3))
    (raised,) = _begun((_raised(),), picked, as_of=day + timedelta(days=1)).standing
    assert raised.ripe.likely == day


def test_what_was_raised_and_not_set_out_is_set_out_on_the_next_garden_day() -> None:
    """Missed on Monday the 10th and asked on Wednesday the 12th: Monday the 17th."""
    sown, missed = _told(Event.SOWN, _IN_TRAYS), _told(Event.MISSED, _CLEARED)
    begun = _begun((_raised(),), sown, missed, as_of=date(2027, 5, 12))
    (raised,) = begun.standing
    assert raised.set_out_on == date(2027, 5, 17)
    assert begun.missed == ()


def test_what_was_never_raised_is_let_go_when_it_is_missed() -> None:
    missed = _told(Event.MISSED, _IN_TRAYS)
    begun = _begun((_raised(),), missed)
    assert (begun.standing, begun.missed) == ((), (_raised(),))
    # What was set out all the same stands.
    out = _told(Event.SET_OUT, _CLEARED)
    assert _begun((_raised(),), missed, out, as_of=date(2027, 5, 12)).missed == ()


def test_what_was_lost_in_its_trays_is_let_go() -> None:
    lost = _told(Event.LOST, date(2027, 4, 19))
    begun = _begun((_raised(),), lost)
    assert (begun.standing, begun.missed) == ((), (_raised(),))


def test_sown_a_week_later_in_trays_it_is_set_out_a_week_later() -> None:
    sown = _told(Event.SOWN, _IN_TRAYS + timedelta(days=7))
    (raised,) = _begun((_raised(),), sown).standing
    assert raised.set_out_on == _CLEARED + timedelta(days=7)
    # Sown earlier it still waits for its ground.
    sown = _told(Event.SOWN, _IN_TRAYS - timedelta(days=7))
    (raised,) = _begun((_raised(),), sown).standing
    assert raised.set_out_on == _CLEARED


def test_a_host_yet_to_be_sown_is_bound_when_its_guest_stands_in_trays() -> None:
    host = _first(id="paper crop 9", sow_on=date(2027, 4, 26))
    block = replace(_raised().blocks[0], under="paper crop 9")
    guest = replace(_raised(), blocks=(block,))
    begun = _begun((host, guest))
    assert {one.id for one in begun.standing} == {"paper crop 2", "paper crop 9"}
    assert begun.movable == ()
    assert {one.id: one.state for one in begun.standing}["paper crop 9"] is SowingState.PLANNED


def test_a_guest_and_its_host_are_not_in_each_other_s_way() -> None:
    """The guest enters while its host stands, which is not cleared for it."""
    block = replace(_raised().blocks[0], enter_on=date(2027, 4, 12), under="paper crop 1")
    guest = replace(_raised(), set_out_on=None, blocks=(block,))
    first, _ = _begun((_first(), guest)).standing
    assert first.clear_on == _CLEARED


@pytest.mark.parametrize(("sown_late", "plants_lost", "each"), [(0, 0, 12.0), (7, 2, 8.0)])
def test_leaves_cut_again_go_on_from_the_real_day(
    sown_late: int, plants_lost: int, each: float
) -> None:
    """Six plants of two ounces a cut; four are left of them, a week later."""
    crop = paper_crop(habit="cut", cuts="2 cuts", regrow_days="14 days", **{"yield": "2 oz"})
    garden = paper_garden(crop, wanted(amount="12 oz"))
    second = _RIPE + timedelta(days=14)
    sowing = sowing_of(
        garden.crops["paper crop"],
        "paper crop 1",
        _SOWN,
        harvest=(HarvestDay(_RIPE, 12.0), HarvestDay(second, 12.0)),
        blocks=(Block("Bed", 0, _METRE, _SOWN, second),),
    )
    shift = timedelta(days=sown_late)
    entries = [_told(Event.SOWN, _SOWN + shift, "paper crop 1")]
    if plants_lost:
        lost = Quantity(float(plants_lost), UNITS["plants"])
        place = Place("journal.csv", 3)
        day = date(2027, 4, 19)
        entries.append(Entry(day, Event.LOST, "paper crop 1", lost, "", place))
    found = {"paper crop": found_of(garden)}
    (one,) = begun_of(garden, found, date(2027, 4, 20), (sowing,), Journal(tuple(entries))).standing
    assert [(cut.day, cut.amount) for cut in one.harvest] == [
        (_RIPE + shift, each),
        (second + shift, each),
    ]
    assert one.clear_on == second + shift
