"""What a plan costs by the weights of §31 and §36, counted on paper.

Everything wanted is worth 1000. Ten weeks of four heads: a week is worth 100, a head 25, and a
sowing costs 1.5 in 100 of a week, 1.5.
"""

from datetime import date, timedelta

import pytest

from planner.garden import Garden
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.offers.worth import work_of, worth_of
from planner.scheduling.question import Question
from tests.scheduling.by_hand import bed, found_of, paper_crop, paper_garden, wanted

_ROW_UM = 152_400
_TEN_WEEKS = wanted("2027-05-03", "2027-07-11")
_WORK = 1.5
_HEAD = 25.0


def _garden(**figures: str) -> Garden:
    """A strip of ten rows of two heads, from 1 March to 31 October, 244 days apart."""
    strip = bed("Strip", "60 in", "12 in")
    return paper_garden(paper_crop(**{"hold_days": "7 days", **figures}), _TEN_WEEKS, beds=strip)


def _plan(garden: Garden) -> WorkingPlan:
    question = Question(garden, {"paper crop": found_of(garden)})
    return WorkingPlan(question.offers, question.beds, question.worth)


def _offer(plan: WorkingPlan, start_on: date, leaves_on: date) -> int:
    """The offer begun on a day and cleared on another."""
    (offers,) = plan.offers
    (found,) = (
        number
        for number in range(len(offers))
        if offers.candidates[int(offers.starts[number])].course.start_on == start_on
        and int(offers.leaves[number]) == leaves_on.toordinal()
    )
    return found


def _rows(from_row: int, to_row: int, plants: int) -> Piece:
    return Piece(0, from_row * _ROW_UM, to_row * _ROW_UM, plants)


def _ground(rows: int, days: int) -> float:
    """All ten rows for all 244 days would cost 1."""
    return rows / 10 * days / 244


_SOWN, _RIPE, _NEXT = date(2027, 4, 5), date(2027, 5, 3), date(2027, 5, 10)


def test_an_empty_plan_costs_all_that_is_wanted() -> None:
    assert _plan(_garden()).cost == pytest.approx(1000)


def test_a_sowing_costs_its_work_and_its_ground_and_saves_what_it_feeds() -> None:
    """Four heads in two rows for 28 days feed one week."""
    plan = _plan(_garden())
    plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(0, 2, 4),))
    assert plan.cost == pytest.approx(1000 - 4 * _HEAD + _WORK + _ground(2, 28))
    assert plan.lacks(0) == [[0.0, *[4.0] * 9]]


def test_held_a_week_longer_it_feeds_two_weeks() -> None:
    plan = _plan(_garden())
    sowing = plan.place(0, _offer(plan, _SOWN, _NEXT), (_rows(0, 3, 6),))
    assert plan.cost == pytest.approx(1000 - 6 * _HEAD + _WORK + _ground(3, 35))
    assert plan.lacks(0) == [[0.0, 2.0, *[4.0] * 8]]
    assert plan.harvest(0) == {sowing.number: {0: 4.0, 1: 2.0}}


def test_heads_nobody_wants_cost_two_in_a_hundred_of_their_worth() -> None:
    plan = _plan(_garden())
    sowing = plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(0, 3, 6),))
    surplus = 2 * 0.02 * _HEAD
    assert plan.cost == pytest.approx(1000 - 4 * _HEAD + surplus + _WORK + _ground(3, 28))
    # They are told for the last week the sowing feeds.
    assert plan.harvest(0) == {sowing.number: {0: 6.0}}


def test_what_ends_first_is_eaten_first() -> None:
    """Of two that are ready the one that ends now feeds now, the other what is left."""
    plan = _plan(_garden())
    longer = plan.place(0, _offer(plan, _SOWN, _NEXT), (_rows(0, 2, 4),))
    shorter = plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(2, 3, 2),))
    assert plan.harvest(0) == {shorter.number: {0: 2.0}, longer.number: {0: 2.0, 1: 2.0}}


def test_each_further_stretch_costs_as_much_as_one_and_a_half_sowings() -> None:
    together, apart = _plan(_garden()), _plan(_garden())
    offer = _offer(together, _SOWN, _RIPE)
    together.place(0, offer, (_rows(0, 2, 4),))
    apart.place(0, offer, (_rows(0, 1, 2), _rows(5, 6, 2)))
    assert apart.cost - together.cost == pytest.approx(1.5 * _WORK)
    # Two sowings of one day that stand equally long are one sowing in two stretches.
    as_two = _plan(_garden())
    as_two.place(0, offer, (_rows(0, 1, 2),))
    as_two.place(0, offer, (_rows(5, 6, 2),))
    assert as_two.cost == pytest.approx(apart.cost)


def test_what_is_taken_out_costs_nothing_more() -> None:
    plan = _plan(_garden())
    sowing = plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(0, 2, 4),))
    assert plan.is_placed(sowing)
    plan.take_out(sowing)
    assert not plan.is_placed(sowing)
    assert plan.cost == pytest.approx(1000)
    plan.put_back(sowing)
    assert plan.all_placed() == [sowing]


@pytest.mark.parametrize(("elsewhere", "changed"), [(False, 0.0), (True, 0.5)])
def test_what_stands_elsewhere_than_before_costs_half_a_change(
    elsewhere: bool,  # noqa: FBT001 - the case
    changed: float,
) -> None:
    """A change costs as much as eight sowings: twelve in a hundred of a week."""
    plan = _plan(_garden())
    plan.worth = worth_of(10, 1.524, 244, changes_count=True)
    sowing = plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(0, 2, 4),))
    plan.begin_from(0)
    kept = plan.cost
    plan.take_out(sowing)
    begin = 4 if elsewhere else 0
    plan.place(0, sowing.offer, (_rows(begin, begin + 2, 4),))
    assert plan.cost - kept == pytest.approx(changed * 12)


def test_a_sowing_dropped_and_one_added_are_a_change_each() -> None:
    plan = _plan(_garden())
    plan.worth = worth_of(10, 1.524, 244, changes_count=True)
    sowing = plan.place(0, _offer(plan, _SOWN, _RIPE), (_rows(0, 2, 4),))
    plan.begin_from(0)
    plan.take_out(sowing)
    assert plan.cost == pytest.approx(1000 + 12)
    plan.place(0, _offer(plan, _SOWN, _NEXT), (_rows(0, 2, 4),))
    assert plan.cost == pytest.approx(1000 - 4 * _HEAD + _WORK + _ground(2, 35) + 24)


def test_the_work_of_a_sowing() -> None:
    """Raised indoors a fifth more; a twentieth more for each week in the store before its time."""
    assert work_of(direct=True, weeks_waiting=0) == 1
    assert work_of(direct=False, weeks_waiting=0) == pytest.approx(1.2)
    assert work_of(direct=True, weeks_waiting=3) == pytest.approx(1.15)
    assert work_of(direct=False, weeks_waiting=10) == pytest.approx(1.8)


def test_the_weights_of_a_season() -> None:
    """Sixteen weeks are wanted of 20 m of beds for 100 days."""
    worth = worth_of(16, 20.0, 100, changes_count=True)
    assert worth.sowing == pytest.approx(0.015 * 1000 / 16)
    assert worth.metre_day == pytest.approx(1 / (20 * 100))
    assert worth.surplus == pytest.approx(0.02)
    assert worth.change == pytest.approx(8 * worth.sowing)
    assert worth_of(16, 20.0, 100, changes_count=False).change == 0


def test_leaves_beyond_what_a_week_wants_are_surplus() -> None:
    """Ten weeks of 48 oz; eight plants cut twice, three weeks apart, bring 64 oz each time."""
    garden = paper_garden(
        paper_crop(habit="cut", cuts="2 cuts", regrow_days="21 days", **{"yield": "8 oz"}),
        wanted("2027-05-03", "2027-07-11", "48 oz"),
        beds=bed("Strip", "60 in", "12 in"),
    )
    ounce = 1000 / 480
    twice, once = _plan(garden), _plan(garden)
    twice.place(0, _offer(twice, _SOWN, date(2027, 5, 24)), (_rows(0, 4, 8),))
    surplus = 0.02 * 2 * 16 * ounce
    assert twice.cost == pytest.approx(1000 - 2 * 48 * ounce + surplus + _WORK + _ground(4, 49))
    # Cut once only, what it could still bring counts two fifths of a surplus.
    once.place(0, _offer(once, _SOWN, _RIPE), (_rows(0, 4, 8),))
    surplus = 0.02 * (16 + 0.4 * 64) * ounce
    assert once.cost == pytest.approx(1000 - 48 * ounce + surplus + _WORK + _ground(4, 28))
    # So does what each of two sowings could still bring.
    once.place(0, _offer(once, _SOWN + timedelta(days=7), _NEXT), (_rows(4, 8, 8),))
    assert once.cost == pytest.approx(
        1000 - 2 * 48 * ounce + 2 * (surplus + _WORK + _ground(4, 28))
    )
