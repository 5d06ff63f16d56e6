"""What a guest that stands still gives (rules §30, §35), counted on paper.

Two low ones beneath a tall one give six tenths of two heads by the plan, 1.2; among young tall
ones they would have given eight tenths.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from planner.garden import SharedGround, SharingPattern
from planner.growth import Ripening
from planner.journal import Entry, Event, Journal
from planner.scheduling import HarvestDay, Sowing
from planner.scheduling.standing.begun import begun_of
from planner.terms import UNITS, Place, Quantity, Source
from tests.scheduling.low_and_tall import (
    RIPE,
    SOWN,
    WEEK,
    guest_sowing,
    low_sowing,
    question_of,
    strip_garden,
    tall_sowing,
)

_AMONG = SharedGround("tall", "low", SharingPattern.BETWEEN, 0.5, 0.5, 0.8, 0, Source("memory"))


def _guest(amount: float) -> Sowing:
    half = amount / 2
    days = (HarvestDay(RIPE, half), HarvestDay(RIPE + WEEK, half))
    return replace(guest_sowing(), harvest=days, clear_on=RIPE + WEEK)


def _stands(sowing: Sowing, as_of: date, *entries: Entry) -> Sowing:
    garden = strip_garden()
    garden = replace(garden, shared=(*garden.shared, _AMONG))
    found = question_of(garden).found
    begun = begun_of(garden, found, as_of, (tall_sowing(), sowing), Journal(entries))
    (one,) = [one for one in begun.standing if one.id == "low 1"]
    return one


def _told(event: Event, day: date, number: float, unit: str) -> Entry:
    amount = Quantity(number, UNITS[unit])
    return Entry(day, event, "low 1", amount, "", Place("journal.csv", 2))


@pytest.mark.parametrize("planned", [1.2, 1.6])
def test_what_is_left_of_a_guest_is_counted_by_what_it_was_planned_to_give(planned: float) -> None:
    """Half a head picked leaves the rest of 1.2, or of 1.6, for the next week."""
    picked = _told(Event.PICKED, RIPE, 0.5, "heads")
    one = _stands(_guest(planned), RIPE + timedelta(days=1), picked)
    assert [taken.amount for taken in one.harvest] == pytest.approx([0.5, planned - 0.5])


def test_one_of_two_guests_lost_leaves_half_of_what_they_give_there() -> None:
    lost = _told(Event.LOST, SOWN + WEEK, 1, "plants")
    one = _stands(_guest(1.2), SOWN + 2 * WEEK, lost)
    assert [taken.amount for taken in one.harvest] == pytest.approx([0.3, 0.3])


def test_on_ground_of_its_own_a_plant_gives_all_it_gives() -> None:
    """Of four, one picked and three still to come, though three in all were planned for."""
    sowing = low_sowing(
        harvest=(HarvestDay(RIPE, 2.0), HarvestDay(RIPE + WEEK, 1.0)), clear_on=RIPE + WEEK
    )
    picked = _told(Event.PICKED, RIPE, 1, "heads")
    one = _stands(sowing, RIPE + timedelta(days=1), picked)
    assert [taken.amount for taken in one.harvest] == pytest.approx([1, 3])


def test_what_no_week_wants_any_more_moves_with_its_ripening() -> None:
    """Ripe on 5 July, after the last week wanted, and a week late."""
    ripe = date(2027, 7, 5)
    sowing = low_sowing(
        sow_on=date(2027, 6, 7),
        ripe=Ripening(ripe, ripe, ripe),
        harvest=(HarvestDay(ripe, 3.0), HarvestDay(ripe + WEEK, 1.0)),
        clear_on=ripe + WEEK,
    )
    late = _told(Event.LATE, date(2027, 6, 20), 7, "days")
    one = _stands(sowing, date(2027, 6, 21), late)
    assert [(taken.day, taken.amount) for taken in one.harvest] == [
        (ripe + WEEK, 3.0),
        (ripe + 2 * WEEK, 1.0),
    ]
