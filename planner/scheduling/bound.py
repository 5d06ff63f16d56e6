"""The bound: what no plan for these beds and days can pass, and what more ground would bring."""

import math
from collections.abc import Iterator

import numpy as np

from planner.scheduling.chosen import Bound, MoreGround
from planner.scheduling.ideal import IdealSeason
from planner.scheduling.offers import EVERYTHING, CropOffers, Floats
from planner.scheduling.question import Question

_WORTH_TELLING = 0.002
_MOST_TRIED = 3


def bound_of(question: Question) -> Bound:
    """The bound of a garden: the ideal season in which only unmet wants count (rules §32)."""
    lacking = math.fsum(
        amount * question.worth_by_week[name][week]
        for name, weeks in question.lacks.items()
        for week, amount in weeks.items()
    )
    if not any(len(one) for one in question.offers):
        return Bound(1.0 - lacking / EVERYTHING, ())
    ideal = question.loosest
    weighed = math.fsum(float(one.lacks @ one.worth) for one in question.offers)
    least = lacking - weighed + ideal.lacking
    share = min(1.0, 1.0 - least / EVERYTHING)
    return Bound(share, tuple(_more_ground(question, ideal)))


def _more_ground(question: Question, ideal: IdealSeason) -> Iterator[MoreGround]:
    """For the beds whose like would be worth most at the prices of ground: what it would bring."""
    if ideal.lacking < _WORTH_TELLING * EVERYTHING:
        return
    ground, beds = question.ground, question.garden.beds
    prices = ideal.ground_prices.sum(axis=1)
    lines = [max(beds[bed].line_um for bed in one.beds) / 1e6 for one in ground.classes]
    order = np.argsort(-prices * np.array(lines), kind="stable")[:_MOST_TRIED]
    before = ideal.lacking_by_week
    for place in order:
        if prices[place] <= 0:
            continue
        free = ground.free_m.copy()
        free[place] += lines[place]
        gained = before - ideal.with_free(free)
        by_crop = dict(_by_crop(question.offers, gained))
        like = max(ground.classes[place].beds, key=lambda bed: beds[bed].line_um)
        gain = math.fsum(by_crop.values())
        if gain >= _WORTH_TELLING:
            yield MoreGround(beds[like].name, gain, by_crop)


def _by_crop(offers: list[CropOffers], gained: Floats) -> Iterator[tuple[str, float]]:
    first = 0
    for one in offers:
        weeks = gained[first : first + len(one.weeks)]
        yield one.crop.name, float(weeks @ (one.lacks * one.worth)) / EVERYTHING
        first += len(one.weeks)
