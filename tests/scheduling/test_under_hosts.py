"""Where guests stand under their hosts (rules §30, §33), counted on paper. Ours, no source.

Half of a host's ground is the low crop's: two plants of it take two rows of six inches.
"""

import pytest

from planner.garden import SharingPattern
from planner.scheduling.arranging.places import Fit
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.offers.crop_offers import CropOffers
from tests.scheduling.low_and_tall import (
    INCH_UM,
    RIPE,
    SOWN,
    TALL_RIPE,
    free_markets,
    question_of,
    strip_garden,
)

_QUESTION = question_of(strip_garden())
_LOW, _TALL = 0, 1


def _offer(offers: CropOffers, leaves: int) -> int:
    (one,) = (
        number
        for number in range(len(offers))
        if offers.enters[number] == SOWN.toordinal() and offers.leaves[number] == leaves
    )
    return one


def _under(plants: int, pattern: SharingPattern = SharingPattern.BENEATH) -> Fit | None:
    """Where low plants would stand: two tall ones hold the first 24 inches, one the last 12."""
    plan = WorkingPlan(_QUESTION.offers, _QUESTION.beds, _QUESTION.worth)
    tall = _offer(plan.offers[_TALL], TALL_RIPE.toordinal())
    for first, last, many in ((0, 24, 2), (48, 60, 1)):
        plan.place(_TALL, tall, (Piece(0, first * INCH_UM, last * INCH_UM, many),))
    places = free_markets(_QUESTION)[_LOW].places
    return places.find_under(plan, _offer(plan.offers[_LOW], RIPE.toordinal()), plants, pattern)


@pytest.mark.parametrize(
    ("plants", "stands", "first_in", "last_in"),
    [
        # Two fill the tighter one; three no longer fit there; four fill the wider.
        (2, 2, 48, 60),
        (3, 3, 0, 18),
        (4, 4, 0, 24),
        # Six fit under nobody: as many as the wider one takes.
        (6, 4, 0, 24),
    ],
)
def test_a_guest_stands_under_the_tightest_host_that_has_room(
    plants: int, stands: int, first_in: int, last_in: int
) -> None:
    fit = _under(plants)
    assert fit is not None
    (piece,) = fit.pieces
    assert (fit.plants, piece.plants) == (stands, stands)
    assert (piece.from_um, piece.to_um) == (first_in * INCH_UM, last_in * INCH_UM)


def test_in_a_pattern_that_no_pair_has_there_is_no_room() -> None:
    assert _under(2, SharingPattern.RELAY) is None
