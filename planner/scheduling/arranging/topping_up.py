"""Topping up: sowings take more plants, in rows that are not full or free ground beside them."""

import math
from collections.abc import Iterator, Sequence

from planner.ground import NOBODY
from planner.scheduling.arranging.filling import CropMarket
from planner.scheduling.arranging.places import BedFit
from planner.scheduling.arranging.working_plan import Piece, Placed, WorkingPlan

_TINY = 1e-9


def top_up(plan: WorkingPlan, markets: Sequence[CropMarket]) -> None:
    """Let every sowing take the plants that make the plan cost less, where there is room."""
    for one in plan.all_placed():
        alone = len(one.pieces) == 1 and one.pieces[0].host == NOBODY
        if alone and plan.is_placed(one) and not plan.has_guests(one):
            _try_more(plan, one, markets[one.crop].places.by_bed[one.pieces[0].bed])


def _try_more(plan: WorkingPlan, one: Placed, fit: BedFit) -> None:
    """The first larger piece that makes the plan cost less takes the place of the sowing's."""
    wanted = _wanted(plan, one)
    if wanted < 1:
        return
    before = plan.cost_of(one.crop)
    pieces = list(_larger(plan, one, fit, one.plants + wanted))
    for piece in pieces:
        plan.take_out(one)
        fuller = plan.place(one.crop, one.offer, (piece,))
        if plan.cost_of(one.crop) < before - _TINY:
            return
        plan.take_out(fuller)
        plan.put_back(one)


def _wanted(plan: WorkingPlan, one: Placed) -> int:
    """How many more plants would fill the emptiest of the weeks it feeds."""
    offers = plan.offers[one.crop]
    gives = offers.gives[one.offer] * (1.0 if offers.flows else offers.crop.gives.middle)
    years = plan.lacks(one.crop)
    lacks = [math.fsum(week) / len(years) for week in zip(*years, strict=True)]
    more = [lack / each for lack, each in zip(lacks, gives.tolist(), strict=True) if each > 0]
    return math.ceil(max(more, default=0.0) - _TINY)


def _larger(plan: WorkingPlan, one: Placed, fit: BedFit, plants: int) -> Iterator[Piece]:
    """The piece with up to so many plants: grown to either side, or with its rows filled."""
    piece, offers = one.pieces[0], plan.offers[one.crop]
    span = int(offers.enters[one.offer]), int(offers.leaves[one.offer])
    below, above = piece.from_um, piece.to_um
    for gap in plan.ground.gaps(piece.bed, *span):
        if gap.to_um == piece.from_um:
            below = gap.from_um
        if gap.from_um == piece.to_um:
            above = gap.to_um
    up = min(plants, fit.plants_in(above - piece.from_um))
    if up > piece.plants:
        to_um = max(piece.to_um, piece.from_um + fit.stretch_um(up))
        yield piece._replace(to_um=to_um, plants=up)
    down = min(plants, fit.plants_in(piece.to_um - below))
    if down > piece.plants:
        from_um = min(piece.from_um, piece.to_um - fit.stretch_um(down))
        yield piece._replace(from_um=from_um, plants=down)
