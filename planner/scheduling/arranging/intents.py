"""Intents: the ideal season made whole, with few sowings and full rows, and put on the ground.

In the ideal season many sowings are made in part, each paying only part of what a sowing costs.
Solved again and again with every sowing charged for the part it was taken in, the program draws
them together.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from planner.scheduling.arranging.filling import CropMarket
from planner.scheduling.arranging.regrowing import Draws
from planner.scheduling.arranging.working_plan import Placed, WorkingPlan
from planner.scheduling.ideal import IdealSeason, Part
from planner.scheduling.offers import SPLIT, Floats

_LEAST_PART = 0.02
_TINY = 1e-6
# Rows are rounded down when less than this share of the next one is filled.
_ROUND_UP = 0.4


class Intent(NamedTuple):
    """So many plants of an offer in these beds, which are alike."""

    crop: int
    offer: int
    beds: frozenset[int]
    plants: int


def intents_of(ideal: IdealSeason, rounds: tuple[int, ...]) -> Iterator[list[Intent]]:
    """What the ideal season would have sown, drawn together over each of these many rounds."""
    plain = np.array([ideal.cost_of(part) for part in ideal.parts])
    done = 0
    for many in sorted(rounds):
        for _ in range(many - done):
            ideal.reprice(plain + _charges(ideal))
        done = many
        yield _intents(ideal)


def _intents(ideal: IdealSeason) -> list[Intent]:
    plants: dict[tuple[int, int, int], float] = defaultdict(float)
    for part, amount in zip(ideal.parts, ideal.amounts, strict=True):
        if amount > _TINY and part.tenure == 0:
            plants[part.crop, part.offer, part.place] += amount * part.plants
    whole = (
        Intent(
            crop,
            offer,
            frozenset(ideal.ground.classes[place].beds),
            _whole(ideal, (crop, offer, place), many),
        )
        for (crop, offer, place), many in sorted(plants.items())
    )
    return [one for one in whole if one.plants]


_Start = tuple[int, int]
_Group = tuple[int, int, int]


def _charges(ideal: IdealSeason) -> Floats:
    """What every part is charged beyond its cost, for the parts it was taken in last."""
    starts: dict[_Start, float] = defaultdict(float)
    groups: dict[_Group, float] = defaultdict(float)
    for part, amount in zip(ideal.parts, ideal.amounts, strict=True):
        starts[_start(ideal, part)] += amount
        groups[part.crop, part.offer, part.place] += amount
    charges = []
    for part in ideal.parts:
        sowing = float(ideal.crops[part.crop].costs[part.offer])
        start = _share(starts[_start(ideal, part)])
        group = _share(groups[part.crop, part.offer, part.place])
        charges.append(sowing * (1 / start - 1 + SPLIT / group))
    return np.array(charges)


def _start(ideal: IdealSeason, part: Part) -> _Start:
    return part.crop, int(ideal.crops[part.crop].offers.starts[part.offer])


def _share(amount: float) -> float:
    return min(1.0, max(amount, _LEAST_PART)) if amount > _TINY else 1.0


def _whole(ideal: IdealSeason, group: _Group, plants: float) -> int:
    """Whole plants in whole rows, the nearest number of them."""
    crop, offer, place = group
    offers = ideal.crops[crop].offers
    in_row = ideal.ground.classes[place].plants_in_row(offers.crop)
    rows = int(plants / in_row + 1 - _ROUND_UP)
    if rows * in_row >= plants:
        return int(np.ceil(plants - _TINY))
    if rows:
        return rows * in_row
    useful = float(offers.largest[offer])
    return int(np.ceil(plants - _TINY)) if plants >= 0.5 * min(in_row, useful) else 0


def arrange(
    plan: WorkingPlan, markets: Sequence[CropMarket], intents: list[Intent], orders: int
) -> None:
    """Put the intents on the ground in several orders; keep the order in which most fits.

    First comes what enters first; then, order after order, what did not fit asks earlier.
    """
    draws = Draws(3)
    turns = [float(_enters(plan, one)) for one in intents]
    best: tuple[float, list[Placed]] | None = None
    for _ in range(orders):
        placed = _put(plan, markets, intents, turns)
        cost = plan.cost
        if best is None or cost < best[0]:
            best = cost, [one for one in placed if one is not None]
        for place, one in enumerate(placed):
            short = one is None or one.plants < intents[place].plants
            turns[place] += 2 * draws.next() - 1 - (10 + 10 * draws.next() if short else 0)
        for one in placed:
            if one is not None:
                plan.take_out(one)
    for one in best[1] if best else ():
        plan.put_back(one)


def _enters(plan: WorkingPlan, one: Intent) -> int:
    return int(plan.offers[one.crop].enters[one.offer])


def _put(
    plan: WorkingPlan, markets: Sequence[CropMarket], intents: list[Intent], turns: list[float]
) -> list[Placed | None]:
    placed: list[Placed | None] = [None] * len(intents)
    order = sorted(range(len(intents)), key=lambda i: (turns[i], -intents[i].plants, i))
    for place in order:
        one = intents[place]
        fit = markets[one.crop].places.find(plan, one.offer, one.plants, 3, one.beds)
        if fit is not None:
            placed[place] = plan.place(one.crop, one.offer, fit.pieces)
    return placed
