"""In the end sowings take more plants, and ground is given back, on a strip counted on paper.

Four low heads are wanted each week, two to a row of six inches. Ours, no source.
"""

from datetime import timedelta

import pytest

from planner.scheduling.arranging.tightening import tighten
from planner.scheduling.arranging.topping_up import top_up
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.question import Question
from tests.scheduling.low_and_tall import (
    INCH_UM,
    RIPE,
    SOWN,
    WEEK,
    free_markets,
    question_of,
    strip_garden,
)

_QUESTION = question_of(strip_garden())


def _plan(
    *blocks: tuple[int, int, int], weeks: int = 0, question: Question = _QUESTION
) -> WorkingPlan:
    """Low plants sown on one day, each block with its inches, held so many weeks after ripening."""
    plan = WorkingPlan(question.offers, question.beds, question.worth)
    offers = plan.offers[0]
    (offer,) = (
        number
        for number in range(len(offers))
        if offers.enters[number] == SOWN.toordinal()
        and offers.leaves[number] == (RIPE + weeks * WEEK).toordinal()
    )
    for first, last, plants in blocks:
        plan.place(0, offer, (Piece(0, first * INCH_UM, last * INCH_UM, plants),))
    return plan


def _blocks(plan: WorkingPlan) -> list[tuple[float, float, int]]:
    return sorted(
        (piece.from_um / INCH_UM, piece.to_um / INCH_UM, piece.plants)
        for one in plan.all_placed()
        for piece in one.pieces
    )


@pytest.mark.parametrize(
    ("blocks", "topped"),
    [
        # A row that is not full is filled; with room above it grows upward.
        ([(0, 6, 1)], [(0, 12, 4)]),
        ([(12, 18, 2)], [(12, 24, 4)]),
        # With the end of the bed above it grows down.
        ([(54, 60, 2)], [(48, 60, 4)]),
        # It takes no more than the week wants.
        ([(0, 12, 4)], [(0, 12, 4)]),
    ],
)
def test_a_sowing_takes_the_plants_its_week_still_wants(
    blocks: list[tuple[int, int, int]], topped: list[tuple[int, int, int]]
) -> None:
    plan = _plan(*blocks)
    before = plan.cost
    top_up(plan, free_markets(_QUESTION))
    assert _blocks(plan) == topped
    assert plan.cost <= before


def test_held_longer_it_takes_what_its_emptiest_week_wants() -> None:
    """Two of four in the first week and none of four in the second: four more."""
    plan = _plan((0, 6, 2), weeks=1)
    top_up(plan, free_markets(_QUESTION))
    assert _blocks(plan) == [(0, 18, 6)]


def test_plants_of_which_two_make_a_head_are_as_many_again() -> None:
    """One plant stands for half a head of the four that are wanted: seven more."""
    question = question_of(strip_garden(low_gives="0.5 heads"))
    plan = _plan((0, 6, 1), question=question)
    top_up(plan, free_markets(question))
    assert _blocks(plan) == [(0, 24, 8)]


def test_a_sowing_gives_its_ground_back_after_the_last_week_that_eats_of_it() -> None:
    """Four heads are all eaten in their first week; held a week longer, it goes then."""
    plan = _plan((0, 12, 4), weeks=1)
    tighten(plan)
    (one,) = plan.all_placed()
    assert plan.offers[0].leaves[one.offer] == RIPE.toordinal()
    assert plan.harvest(0)[one.number] == {0: 4.0}


def test_what_the_next_week_eats_keeps_its_ground_for_it() -> None:
    plan = _plan((0, 18, 6), weeks=1)
    tighten(plan)
    (one,) = plan.all_placed()
    assert plan.offers[0].leaves[one.offer] == (RIPE + timedelta(days=7)).toordinal()
