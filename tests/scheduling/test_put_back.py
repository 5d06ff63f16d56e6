"""What may still move is put back where it was (rules §36), on ground counted on paper."""

from dataclasses import replace
from datetime import timedelta

import pytest

from planner.scheduling import Sowing
from planner.scheduling.arranging.putting_back import offers_taken, put_back
from planner.scheduling.arranging.working_plan import WorkingPlan
from planner.scheduling.offers.crop_offers import Was
from tests.scheduling.low_and_tall import (
    INCH_UM,
    RIPE,
    SOWN,
    TALL_RIPE,
    WEEK,
    free_markets,
    guest_sowing,
    low_sowing,
    question_of,
    strip_garden,
    tall_sowing,
)


def _back(*movable: Sowing, rest: int = 0, standing: tuple[Sowing, ...] = ()) -> WorkingPlan:
    question = question_of(strip_garden(rest), standing, movable)
    plan = WorkingPlan(question.offers, question.beds, question.worth)
    put_back(plan, free_markets(question), movable, question.hosts)
    return plan


def _pieces(plan: WorkingPlan) -> list[tuple[float, float, int]]:
    """From where to where in inches, with how many plants."""
    return [
        (piece.from_um / INCH_UM, piece.to_um / INCH_UM, piece.plants)
        for one in plan.all_placed()
        for piece in one.pieces
    ]


@pytest.mark.parametrize("rest", [0, 3])
def test_a_sowing_is_put_back_on_its_ground_for_its_days(rest: int) -> None:
    plan = _back(low_sowing(), rest=rest)
    assert _pieces(plan) == [(0, 12, 4)]
    (one,) = plan.all_placed()
    offers = plan.offers[one.crop]
    assert offers.enters[one.offer] == SOWN.toordinal()
    assert offers.leaves[one.offer] == RIPE.toordinal() + rest
    assert one.yields == 1.0


def test_put_back_it_is_no_change() -> None:
    """Dropped it would be one, eight sowings' worth."""
    plan = _back(low_sowing())
    before = plan.cost
    (one,) = plan.all_placed()
    plan.take_out(one)
    plan.put_back(one)
    assert plan.cost == pytest.approx(before)
    work = plan.worth.sowing
    plan.take_out(one)
    fed, ground = 4 * 1000 / 2 / (8 * 4), plan.worth.metre_day * 0.3048 * 28
    assert plan.cost - before == pytest.approx(fed - work - ground + 8 * work)


def test_cleared_between_two_days_of_harvest_it_has_its_ground_until_the_later() -> None:
    plan = _back(low_sowing(clear_on=RIPE + timedelta(days=2)))
    (one,) = plan.all_placed()
    assert plan.offers[one.crop].leaves[one.offer] == (RIPE + WEEK).toordinal()


def test_what_can_no_longer_be_had_is_not_put_back() -> None:
    assert _pieces(_back(low_sowing(sow_on=SOWN + timedelta(days=1)))) == []
    assert _pieces(_back(low_sowing(clear_on=RIPE + 4 * WEEK))) == []
    assert _pieces(_back(low_sowing(blocks=(replace(low_sowing().blocks[0], bed="Gone"),)))) == []


def test_what_no_longer_fits_its_ground_is_not_put_back() -> None:
    """A row of six inches holds two of the four."""
    assert _pieces(_back(low_sowing(0, 6))) == []
    assert _pieces(_back(low_sowing(0, 12), low_sowing(6, 18, id="low 2"))) == [(0, 12, 4)]
    both = [(0, 12, 4), (12, 24, 4)]
    assert _pieces(_back(low_sowing(0, 12), low_sowing(12, 24, id="low 2"))) == both


def test_positions_rounded_in_a_record_still_hold_their_plants() -> None:
    block = replace(low_sowing().blocks[0], to_um=12 * INCH_UM - 1)
    (piece,) = _pieces(_back(low_sowing(blocks=(block,))))
    assert piece[2] == 4


def test_in_two_stretches_it_is_put_back_in_two() -> None:
    first, second = low_sowing(0, 6).blocks[0], low_sowing(30, 36).blocks[0]
    assert _pieces(_back(low_sowing(blocks=(first, second)))) == [(0, 6, 2), (30, 36, 2)]


def test_a_guest_is_put_back_under_its_host() -> None:
    """Beneath half a square foot two low plants, at six tenths; told before its host."""
    guest = guest_sowing()
    plan = _back(guest, tall_sowing())
    low, tall = plan.all_placed()
    assert low.pieces[0].host == tall.number
    assert (low.plants, low.yields, tall.yields) == (2, 0.6, 1.0)
    # Three would be more than half the host's ground.
    assert len(_back(guest_sowing(3), tall_sowing()).all_placed()) == 1
    # Without its host there is nothing to stand under.
    assert _back(guest).all_placed() == []


def test_a_guest_is_put_back_under_a_host_that_stands() -> None:
    guest = guest_sowing()
    plan = _back(guest, standing=(tall_sowing(),))
    (low,) = plan.all_placed()
    assert (low.plants, low.yields) == (2, 0.6)


def test_offers_once_taken_are_told_with_the_day_their_ground_has_rested() -> None:
    later = low_sowing(id="low 2", sow_on=SOWN + WEEK, clear_on=RIPE + WEEK)
    assert offers_taken((low_sowing(), later, tall_sowing()), 3) == {
        "low": [
            Was(SOWN, SOWN, RIPE + timedelta(days=3)),
            Was(SOWN + WEEK, SOWN + WEEK, RIPE + WEEK + timedelta(days=3)),
        ],
        "tall": [Was(SOWN, SOWN, TALL_RIPE + timedelta(days=3))],
    }


def test_a_guest_that_would_reach_beyond_its_host_is_not_put_back() -> None:
    """The host has the last foot; the guest would begin six inches before it."""
    block = replace(guest_sowing().blocks[0], from_um=42 * INCH_UM, to_um=54 * INCH_UM)
    (tall,) = _back(low_sowing(plants=2, blocks=(block,)), tall_sowing()).all_placed()
    assert tall.plants == 1
