"""What may still move is put back where it was (rules §36), on ground counted on paper."""

from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest

from planner.climate import Climate
from planner.garden import Garden, SharedGround, SharingPattern
from planner.scheduling import Block, HarvestDay, Sowing, crop_candidates
from planner.scheduling.choice import markets_of
from planner.scheduling.earlier_plan import offers_taken, put_back
from planner.scheduling.offers import Was
from planner.scheduling.question import Question
from planner.scheduling.working_plan import WorkingPlan
from planner.terms import Source
from tests.plan_text import own_crop
from tests.scheduling.by_hand import FIRST, bed, paper_garden
from tests.scheduling.sown_by_hand import sowing_of

_INCH_UM = 25_400
_SOWN, _RIPE = date(2027, 4, 5), date(2027, 5, 3)
_WEEK = timedelta(days=7)
_CROPS = own_crop(
    "low", days_from_sowing="28 days", hold_days="13 days", spacing="6 in"
) + own_crop("tall", days_from_sowing="56 days", hold_days="13 days", spacing="12 in")
_PAIR = SharedGround("tall", "low", SharingPattern.BENEATH, 1.0, 0.5, 0.6, 0, Source("memory"))


def _garden(rest: int = 0) -> Garden:
    """A strip of ten rows of two low plants, or five of one tall one."""
    garden = paper_garden(
        _CROPS,
        ("low", "4 heads", "2027-05-03", "2027-06-27"),
        ("tall", "1 heads", "2027-05-31", "2027-06-27"),
        beds=bed("Strip", "60 in", "12 in"),
        wishes=f"turnover_days = {rest}",
    )
    return replace(garden, shared=(_PAIR,))


def _low(first_in: int = 0, last_in: int = 12, **told: object) -> Sowing:
    """Four in two rows, sown on 5 April and cleared on 3 May."""
    block = Block("Strip", first_in * _INCH_UM, last_in * _INCH_UM, _SOWN, _RIPE)
    one = sowing_of(
        _garden().crops["low"],
        "low 1",
        _SOWN,
        plants=4,
        harvest=(HarvestDay(_RIPE, 4.0),),
        blocks=(block,),
    )
    return replace(one, **told)  # type: ignore[arg-type]


def _tall() -> Sowing:
    """One in a row of a foot, the last of the bed, from 5 April to 31 May."""
    ripe = _SOWN + 8 * _WEEK
    block = Block("Strip", 48 * _INCH_UM, 60 * _INCH_UM, _SOWN, ripe)
    return sowing_of(
        _garden().crops["tall"],
        "tall 1",
        _SOWN,
        plants=1,
        harvest=(HarvestDay(ripe, 1.0),),
        blocks=(block,),
    )


def _back(*movable: Sowing, rest: int = 0, standing: tuple[Sowing, ...] = ()) -> WorkingPlan:
    garden = _garden(rest)
    found = {
        one.about.crop.name: one for one in crop_candidates(garden, Climate(garden.site), FIRST)
    }
    question = Question(garden, found, standing, movable)
    plan = WorkingPlan(question.offers, question.beds, question.worth)
    markets = markets_of(question, np.zeros_like(question.ground.free_m))
    put_back(plan, markets, movable, question.hosts)
    return plan


def _pieces(plan: WorkingPlan) -> list[tuple[float, float, int]]:
    """From where to where in inches, with how many plants."""
    return [
        (piece.from_um / _INCH_UM, piece.to_um / _INCH_UM, piece.plants)
        for one in plan.all_placed()
        for piece in one.pieces
    ]


@pytest.mark.parametrize("rest", [0, 3])
def test_a_sowing_is_put_back_on_its_ground_for_its_days(rest: int) -> None:
    plan = _back(_low(), rest=rest)
    assert _pieces(plan) == [(0, 12, 4)]
    (one,) = plan.all_placed()
    offers = plan.offers[one.crop]
    assert offers.enters[one.offer] == _SOWN.toordinal()
    assert offers.leaves[one.offer] == _RIPE.toordinal() + rest
    assert one.yields == 1.0


def test_put_back_it_is_no_change() -> None:
    """Dropped it would be one, eight sowings' worth."""
    plan = _back(_low())
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
    plan = _back(_low(clear_on=_RIPE + timedelta(days=2)))
    (one,) = plan.all_placed()
    assert plan.offers[one.crop].leaves[one.offer] == (_RIPE + _WEEK).toordinal()


def test_what_can_no_longer_be_had_is_not_put_back() -> None:
    assert _pieces(_back(_low(sow_on=_SOWN + timedelta(days=1)))) == []
    assert _pieces(_back(_low(clear_on=_RIPE + 4 * _WEEK))) == []
    assert _pieces(_back(_low(blocks=(replace(_low().blocks[0], bed="Gone"),)))) == []


def test_what_no_longer_fits_its_ground_is_not_put_back() -> None:
    """A row of six inches holds two of the four."""
    assert _pieces(_back(_low(0, 6))) == []
    assert _pieces(_back(_low(0, 12), _low(6, 18, id="low 2"))) == [(0, 12, 4)]
    both = [(0, 12, 4), (12, 24, 4)]
    assert _pieces(_back(_low(0, 12), _low(12, 24, id="low 2"))) == both


def test_positions_rounded_in_a_record_still_hold_their_plants() -> None:
    block = replace(_low().blocks[0], to_um=12 * _INCH_UM - 1)
    (piece,) = _pieces(_back(_low(blocks=(block,))))
    assert piece[2] == 4


def test_in_two_stretches_it_is_put_back_in_two() -> None:
    first, second = _low(0, 6).blocks[0], _low(30, 36).blocks[0]
    assert _pieces(_back(_low(blocks=(first, second)))) == [(0, 6, 2), (30, 36, 2)]


def test_a_guest_is_put_back_under_its_host() -> None:
    """Beneath half a square foot two low plants, at six tenths; told before its host."""
    guest = _low(
        48,
        60,
        plants=2,
        blocks=(replace(_low(48, 60).blocks[0], under="tall 1"),),
    )
    plan = _back(guest, _tall())
    low, tall = plan.all_placed()
    assert low.pieces[0].host == tall.number
    assert (low.plants, low.yields, tall.yields) == (2, 0.6, 1.0)
    # Three would be more than half the host's ground.
    assert len(_back(replace(guest, plants=3), _tall()).all_placed()) == 1
    # Without its host there is nothing to stand under.
    assert _back(guest).all_placed() == []


def test_a_guest_is_put_back_under_a_host_that_stands() -> None:
    guest = _low(48, 60, plants=2, blocks=(replace(_low(48, 60).blocks[0], under="tall 1"),))
    plan = _back(guest, standing=(_tall(),))
    (low,) = plan.all_placed()
    assert (low.plants, low.yields) == (2, 0.6)


def test_offers_once_taken_are_told_with_the_day_their_ground_has_rested() -> None:
    later = _low(id="low 2", sow_on=_SOWN + _WEEK, clear_on=_RIPE + _WEEK)
    assert offers_taken((_low(), later, _tall()), 3) == {
        "low": [
            Was(_SOWN, _SOWN, _RIPE + timedelta(days=3)),
            Was(_SOWN + _WEEK, _SOWN + _WEEK, _RIPE + _WEEK + timedelta(days=3)),
        ],
        "tall": [Was(_SOWN, _SOWN, _SOWN + 8 * _WEEK + timedelta(days=3))],
    }
