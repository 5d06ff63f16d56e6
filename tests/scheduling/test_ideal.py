"""The ideal season beside a linear program of textbook form, solved by scipy (rules §32).

The textbook program has a column for every start, every day its ground could be given back and
every week it could feed; ours makes its columns as they prove useful. Both let plants be
fractions, so both must find the same least amount that goes without.
"""

from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import linprog

from planner.scheduling.bound import bound_of
from planner.scheduling.ideal.ideal_season import IdealSeason
from planner.scheduling.offers.worth import ONLY_WANTS
from planner.scheduling.question import Question
from tests.scheduling.by_hand import bed, found_of, paper_crop, paper_garden, wanted
from tests.scheduling.test_small_cases import Small, Wish, question_of

# Every week wants at least the two heads of a row, so no row is ever part full.
_CASES = {
    "less ground than wanted": Small(2, (Wish((4, 4)),)),
    "a week that wants much": Small(3, (Wish((2, 9, 2), days=14),)),
    "held two weeks": Small(2, (Wish((4, 4, 4), hold_days=13),)),
    "two crops": Small(3, (Wish((4, 6), days=21), Wish((4, 4, 4), days=7))),
    "a wide crop": Small(3, (Wish((2, 2), rows_wide=2), Wish((4, 2, 4), days=14))),
    "ground that rests": Small(2, (Wish((4, 4, 4), days=14),), turnover_days=3),
    "enough for all": Small(8, (Wish((2, 2)),)),
}
_ROW_M = 6 * 0.0254


def _textbook(question: Question, small: Small, free_m: float) -> float:
    """The least worth that goes without, in thousandths of everything wanted."""
    days = sorted({int(day) for one in question.offers for day in one.enters})
    costs: list[float] = []
    ground: list[list[float]] = []
    fed: list[list[float]] = []
    weeks = sum(len(one.weeks) for one in question.offers)
    first = 0
    wanted: list[float] = []
    for offers, wish in zip(question.offers, small.wishes, strict=True):
        # A wide crop has one plant in two rows, a narrow one two in a row.
        plant_m = _ROW_M * wish.rows_wide / (2 // wish.rows_wide)
        for offer in range(len(offers)):
            held = [
                plant_m if offers.enters[offer] <= day < offers.leaves[offer] else 0.0
                for day in days
            ]
            for week in np.flatnonzero(offers.gives[offer] > 0).tolist():
                costs.append(0.0)
                ground.append(held)
                fed.append([float(row == first + week) for row in range(weeks)])
        for week in range(len(offers.weeks)):
            costs.append(float(offers.worth[week]))
            ground.append([0.0] * len(days))
            fed.append([float(row == first + week) for row in range(weeks)])
        wanted += offers.lacks.tolist()
        first += len(offers.weeks)
    solved = linprog(
        costs,
        A_ub=np.array(ground).T,
        b_ub=np.full(len(days), free_m),
        A_eq=np.array(fed).T,
        b_eq=wanted,
    )
    assert solved.status == 0
    return float(solved.fun)


@pytest.mark.parametrize("small", _CASES.values(), ids=_CASES)
def test_no_more_is_met_than_by_the_textbook_program(small: Small) -> None:
    question = question_of(small)
    least = _textbook(question, small, small.rows * _ROW_M)
    assert question.loosest.lacking == pytest.approx(least, abs=1e-6)
    never = 1000 - sum(float(one.lacks @ one.worth) for one in question.offers)
    assert bound_of(question).share == pytest.approx(1 - (least + never) / 1000)


@pytest.mark.parametrize("small", _CASES.values(), ids=_CASES)
def test_one_more_bed_brings_what_the_textbook_program_gains_by_it(small: Small) -> None:
    question = question_of(small)
    line_m = small.rows * _ROW_M
    once, twice = (_textbook(question, small, number * line_m) for number in (1, 2))
    more = bound_of(question).more_ground
    assert sum(one.gain for one in more) == pytest.approx((once - twice) / 1000)
    for one in more:
        assert one.like == "Strip"
        assert sum(one.by_crop.values()) == pytest.approx(one.gain)
        assert set(one.by_crop) == {offers.crop.name for offers in question.offers}


def test_where_nothing_can_be_sown_nothing_can_be_met() -> None:
    """Wanted in the first week, four weeks before anything is ripe; or in it and in one that is."""
    first_week, other = ("2027-03-01", "2027-03-07"), ("2027-05-03", "2027-05-09")
    garden = paper_garden(paper_crop(), wanted(*first_week))
    assert bound_of(Question(garden, {"paper crop": found_of(garden)})).share == 0
    garden = paper_garden(paper_crop(), wanted(*first_week), wanted(*other, "12 heads"))
    bound = bound_of(Question(garden, {"paper crop": found_of(garden)}))
    assert bound.share == pytest.approx(12 / 16)
    assert bound.more_ground == ()


def test_the_program_is_as_it_was_after_other_ground_was_tried() -> None:
    small = _CASES["two crops"]
    question = question_of(small)
    ideal, free_m = question.loosest, question.ground.free_m
    before = ideal.lacking_by_week.tolist()
    assert sum(ideal.with_free(2 * free_m)) < sum(before)
    assert ideal.lacking_by_week.tolist() == pytest.approx(before)
    assert (ideal.ground.free_m == free_m).all()


@pytest.mark.parametrize("name", ["less ground than wanted", "two crops", "a wide crop"])
def test_a_price_of_ground_is_what_a_little_more_of_it_would_save(name: str) -> None:
    """The shadow price of the textbooks: the slope of the least cost, for a millimetre more.

    Where the slope changes just there, the price lies between that of more and that of less.
    """
    small = _CASES[name]
    question = question_of(small)
    prices = question.loosest.ground_prices[0]
    lacking = question.loosest.lacking
    for day in range(len(question.ground.days)):
        slopes = []
        for step in (0.001, -0.001):
            free = question.ground.free_m.copy()
            free[0, day] += step
            other = replace(question.ground, free_m=free)
            without = IdealSeason(question.offers, other, ONLY_WANTS).lacking
            slopes.append((lacking - without) / step)
        assert slopes[0] - 1e-3 <= prices[day] <= slopes[1] + 1e-3


def test_with_everything_weighed_the_ideal_season_costs_no_more_than_the_best_plan() -> None:
    """One week wants two heads, one row of them: a sowing, its 28 days of ground, and no more.

    By §31 a sowing costs 1.5 in 100 of an average wanted week, here of all that is wanted; all
    ground for the whole season costs 1, and the one row of two stands for 28 of 34 days.
    """
    small = Small(2, (Wish((2,)),))
    question = question_of(small)
    ideal = IdealSeason(question.offers, question.ground, question.worth)
    (part,) = (one for one, much in zip(ideal.parts, ideal.amounts, strict=True) if much > 1e-9)
    assert ideal.lacking == pytest.approx(0)
    assert part.plants == pytest.approx(2)
    assert part.line_m == pytest.approx(_ROW_M)
    assert ideal.cost_of(part) == pytest.approx(15 + 28 / 34 / 2)
    assert ideal.solution.cost == pytest.approx(15 + 28 / 34 / 2)


def test_leaves_cut_again_are_met_no_more_than_by_the_textbook_program_either() -> None:
    """A column for every start and every number of cuts: what it brings beyond wants is lost."""
    crop = paper_crop(habit="cut", cuts="3 cuts", regrow_days="14 days", **{"yield": "8 oz"})
    garden = paper_garden(
        crop,
        wanted(last="2027-06-27", amount="60 oz"),
        beds=bed("Strip", "12 in", "12 in"),
        wishes="turnover_days = 2",
    )
    question = Question(garden, {"paper crop": found_of(garden)})
    (offers,) = question.offers
    days = question.ground.days
    held = (offers.enters[:, None] <= days) & (days < offers.leaves[:, None])
    many = len(offers.weeks)
    solved = linprog(
        np.concatenate([np.zeros(len(offers)), offers.worth]),
        A_ub=np.block(
            [
                [held.T * _ROW_M / 2, np.zeros((len(days), many))],
                [-offers.gives.T, -np.eye(many)],
            ]
        ),
        b_ub=np.concatenate([np.full(len(days), 2 * _ROW_M), -offers.lacks]),
    )
    assert solved.status == 0
    assert 0 < question.loosest.lacking < 1000
    assert question.loosest.lacking == pytest.approx(solved.fun, abs=1e-6)


@pytest.mark.parametrize("order", [1, -1])
def test_each_bed_feeds_by_its_own_ground(order: int) -> None:
    """Ten plants one behind another in a narrow bed, and twice four side by side in a wide one.

    Two weeks want a hundred each; what feeds one stands in the way of the other. The order in
    which beds are written changes nothing.
    """
    beds = [bed("Narrow", "60 in", "6 in"), bed("Wide", "24 in", "12 in")][::order]
    crop = paper_crop(spacing="6 in", hold_days="6 days")
    garden = paper_garden(crop, wanted("2027-05-03", "2027-05-16", "100 heads"), beds="".join(beds))
    question = Question(garden, {"paper crop": found_of(garden)})
    assert len(question.ground.classes) == len(question.ground.days) == 2
    assert bound_of(question).share == pytest.approx((10 + 8) / 200)
