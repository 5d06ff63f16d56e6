"""Shared ground as the ideal season counts it (rules §30, §32), for pairs made up by hand.

The host stands from Monday 5 April to Monday 17 May, 42 days; the guest from Monday 3 May, ripe
after 14 days. Ours, no source.
"""

from datetime import date

import numpy as np
import pytest

from planner.climate import Climate
from planner.garden import Garden, SharedGround, SharingPattern
from planner.scheduling.ideal.ideal_season import IdealSeason
from planner.scheduling.ideal.tenure import ENDING, STANDING, held, provisions_of, tenures_of
from planner.scheduling.offers.crop_offers import CropOffers
from planner.scheduling.offers.worth import ONLY_WANTS
from planner.scheduling.question import Question
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.terms import Source
from tests.plan_text import own_crop
from tests.scheduling.by_hand import bed, paper_garden

_HOST = own_crop("host", days_from_sowing="42 days", hold_days="1 days", spacing="12 in")
_GUEST = own_crop("guest", days_from_sowing="14 days", hold_days="1 days", spacing="6 in")


def _pair(pattern: SharingPattern, **figures: float) -> SharedGround:
    told = {"closes_at": 0.5, "ground_share": 0.5, "yield_share": 0.8, "relay_days": 0, **figures}
    return SharedGround("host", "guest", pattern, source=Source("memory"), **told)  # type: ignore[arg-type]


def _garden() -> Garden:
    """A strip of two hosts or four rows of two guests; each crop wanted in the week of 17 May."""
    return paper_garden(
        _HOST + _GUEST,
        ("host", "1 heads", "2027-05-17", "2027-05-23"),
        ("guest", "8 heads", "2027-05-17", "2027-05-23"),
        beds=bed("Strip", "24 in", "12 in"),
    )


def _question() -> Question:
    garden = _garden()
    found = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    return Question(garden, {one.about.crop.name: one for one in found})


def _offers(crop: str) -> CropOffers:
    (offers,) = [one for one in _question().offers if one.crop.name == crop]
    assert len(offers) == 1
    return offers


_MONTH_DAYS = ((4, 5), (4, 26), (5, 3), (5, 10), (5, 17))
_DAYS = np.array([date(2027, month, day).toordinal() for month, day in _MONTH_DAYS])


def test_on_ground_of_its_own_a_sowing_holds_every_day_until_it_is_cleared() -> None:
    (own,) = tenures_of(_offers("host"), _DAYS, ())
    assert own.own is not None
    assert [places.tolist() for places in own.own] == [[0], [4]]
    assert (own.pool, own.yields) == (None, 1.0)


def test_a_guest_may_stand_under_a_host_at_the_best_that_any_allows() -> None:
    pairs = (
        _pair(SharingPattern.BETWEEN, yield_share=0.8),
        _pair(SharingPattern.BENEATH, yield_share=0.6),
    )
    own, guest = tenures_of(_offers("guest"), _DAYS, pairs)
    assert own.yields == 1.0
    assert guest.own is None
    assert guest.pool is not None
    pool, begins, ends = guest.pool
    assert (pool, begins.tolist(), ends.tolist(), guest.yields) == (STANDING, [2], [4], 0.8)
    # The host is guest of nobody.
    assert len(tenures_of(_offers("host"), _DAYS, pairs)) == 1


def test_a_guest_that_follows_its_host_has_ground_of_its_own_afterwards() -> None:
    """Seven days under a host about to end, from 3 to 10 May, and its ground until the 17th."""
    pairs = (_pair(SharingPattern.RELAY, relay_days=7, yield_share=0.9),)
    _, guest = tenures_of(_offers("guest"), _DAYS, pairs)
    assert guest.pool is not None
    assert guest.own is not None
    pool, begins, ends = guest.pool
    assert (pool, begins.tolist(), ends.tolist(), guest.yields) == (ENDING, [2], [3], 0.9)
    assert [places.tolist() for places in guest.own] == [[3], [4]]


@pytest.mark.parametrize(
    ("pair", "pool", "begins", "ends"),
    [
        # Half of 42 days are 21: the canopy closes on 26 April.
        (_pair(SharingPattern.BETWEEN, closes_at=0.5), STANDING, 0, 1),
        (_pair(SharingPattern.BENEATH), STANDING, 0, 4),
        # The last seven days, from 10 May.
        (_pair(SharingPattern.RELAY, relay_days=7), ENDING, 3, 4),
        (_pair(SharingPattern.RELAY, relay_days=60), ENDING, 0, 4),
    ],
)
def test_a_host_brings_its_ground_while_a_guest_may_stand_there(
    pair: SharedGround, pool: int, begins: int, ends: int
) -> None:
    (one,) = provisions_of(_offers("host"), _DAYS, (pair,))
    assert (one.pool, one.begins.tolist(), one.ends.tolist()) == (pool, [begins], [ends])
    assert one.share == 0.5
    assert provisions_of(_offers("guest"), _DAYS, (pair,)) == ()


def test_holding_ground_costs_the_price_of_every_day_held() -> None:
    prices = np.array([1.0, 2.0, 4.0, 8.0, 16.0])
    begins, ends = np.array([0, 1, 2, 3]), np.array([5, 3, 2, 5])
    assert held(prices, begins, ends).tolist() == [31, 6, 0, 24]
    two = held(np.array([prices, 10 * prices]), begins, ends)
    assert two.tolist() == [[31, 6, 0, 24], [310, 60, 0, 240]]


@pytest.mark.parametrize(
    ("pairs", "guests"),
    [
        # A host on one half of the strip leaves two rows of two guests beside it.
        ((), 4.0),
        # Beneath half the host's square foot two plants more, at six tenths each.
        ((_pair(SharingPattern.BENEATH, yield_share=0.6),), 4 + 2 * 0.6),
        # Its canopy has closed before they are sown.
        ((_pair(SharingPattern.BETWEEN, closes_at=0.5),), 4.0),
        # The guest enters two weeks before the host ends: too early for a relay of a week.
        ((_pair(SharingPattern.RELAY, relay_days=7, ground_share=1.0),), 4.0),
    ],
)
def test_the_bound_knows_how_many_guests_there_can_be(
    pairs: tuple[SharedGround, ...], guests: float
) -> None:
    """Each crop is worth 500; of eight guests those that find no ground go without."""
    question = _question()
    ideal = IdealSeason(question.offers, question.ground, ONLY_WANTS, pairs)
    assert ideal.lacking == pytest.approx(500 * (8 - guests) / 8)
