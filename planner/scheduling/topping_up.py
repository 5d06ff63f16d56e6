"""Topping up: rows that are not full take more plants where a week still lacks them."""

import math
from collections.abc import Sequence

from planner.ground import NOBODY
from planner.scheduling.filling import CropMarket
from planner.scheduling.working_plan import Placed, WorkingPlan

_TINY = 1e-9


def top_up(plan: WorkingPlan, markets: Sequence[CropMarket]) -> None:
    """Let every sowing whose last row has room take the plants that make the plan cost less."""
    for one in plan.all_placed():
        room = _room(one, markets)
        if room and plan.is_placed(one):
            _try_more(plan, one, min(room, _wanted(plan, one)))


def _room(one: Placed, markets: Sequence[CropMarket]) -> int:
    """How many more plants the stretch of a sowing in one piece of its own ground holds."""
    if len(one.pieces) != 1 or one.pieces[0].host != NOBODY:
        return 0
    piece = one.pieces[0]
    fit = markets[one.crop].places.by_bed[piece.bed]
    return max(0, fit.plants_in(piece.to_um - piece.from_um) - piece.plants)


def _wanted(plan: WorkingPlan, one: Placed) -> int:
    """How many more plants would fill the emptiest of the weeks it feeds."""
    offers = plan.offers[one.crop]
    gives = offers.gives[one.offer] * (1.0 if offers.flows else offers.crop.gives.middle)
    lacks = plan.lacks(one.crop)
    more = [lack / each for lack, each in zip(lacks, gives.tolist(), strict=True) if each > 0]
    return math.ceil(max(more, default=0.0) - _TINY)


def _try_more(plan: WorkingPlan, one: Placed, more: int) -> None:
    if more < 1 or plan.has_guests(one):
        return
    before = plan.cost_of(one.crop)
    plan.take_out(one)
    piece = one.pieces[0]
    fuller = plan.place(one.crop, one.offer, (piece._replace(plants=piece.plants + more),))
    if plan.cost_of(one.crop) >= before - _TINY:
        plan.take_out(fuller)
        plan.put_back(one)
