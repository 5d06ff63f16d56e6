"""Filling: the plan grows by the sowing that gains most, until none gains any more."""

import heapq
import math
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from planner.garden import SharingPattern
from planner.ground import NOBODY
from planner.scheduling.arranging.places import CropPlaces, Fit, yields_of
from planner.scheduling.arranging.proposals import CropProposals, Mood, Proposal
from planner.scheduling.arranging.working_plan import Piece, Placed, WorkingPlan
from planner.scheduling.offers import SPLIT, Floats

_ANY_GAIN = 1e-9
# A last row filled less than this is left away where there are other rows.
_LAST_ROW = 0.3
# A crop that found no ground for so many offers asks no more.
_MOST_FAILED = 3


@dataclass(frozen=True, slots=True)
class CropMarket:
    """What one crop may propose, and where it may stand."""

    proposals: CropProposals
    places: CropPlaces


Shake = Callable[[int], Floats]


def calm(offers: int) -> Floats:
    """No shaking: each proposal counts as it is."""
    return np.ones(offers)


def fill(
    plan: WorkingPlan, markets: Sequence[CropMarket], mood: Mood, shake: Shake = calm
) -> list[Placed]:
    """Place sowing after sowing; what was placed, in that order.

    A proposal waits with its gain; the best is tried, and tried again smaller where only part of
    it fits. After a placing the crop proposes anew.
    """
    filling = _Filling(plan, markets, mood, shake)
    for crop in range(len(markets)):
        filling.ask(crop)
    while filling.waiting:
        filling.serve()
    return filling.added


class _Filling:
    def __init__(
        self, plan: WorkingPlan, markets: Sequence[CropMarket], mood: Mood, shake: Shake
    ) -> None:
        self.plan, self.markets = plan, markets
        self.mood, self.shake = mood, shake
        self.waiting: list[tuple[float, int, int, int, Proposal, bool]] = []
        self.added: list[Placed] = []
        self._turn = [0] * len(markets)
        self._alive: dict[tuple[int, SharingPattern | None], Floats] = {}
        self._failed: dict[tuple[int, SharingPattern | None], int] = defaultdict(int)
        self._count = 0

    def ask(self, crop: int) -> None:
        """Let a crop propose; what it proposed before no longer counts."""
        self._turn[crop] += 1
        market = self.markets[crop].proposals
        shake = self.shake(len(market.offers))
        leaning = self.plan.leaning(crop)
        for pattern in market.patterns:
            if self._failed[crop, pattern] >= _MOST_FAILED:
                continue
            alive = self._alive.get((crop, pattern))
            shaken = shake if alive is None else shake * alive
            best = market.best(pattern, self.plan.lacks(crop), self.mood, shaken, leaning)
            for one in best:
                self._wait(crop, one, cut=False)

    def _wait(self, crop: int, proposal: Proposal, *, cut: bool) -> None:
        self._count += 1
        entry = (-proposal.rank, self._count, crop, self._turn[crop], proposal, cut)
        heapq.heappush(self.waiting, entry)

    def serve(self) -> None:
        """Try the best proposal."""
        _, _, crop, turn, proposal, cut = heapq.heappop(self.waiting)
        if turn != self._turn[crop]:
            return
        places = self.markets[crop].places
        fit = self._fit(places, proposal)
        if fit is None:
            self._rule_out(crop, proposal)
            return
        if fit.plants < proposal.plants and not cut:
            self._wait_smaller(crop, proposal, fit)
            return
        yields = yields_of(places.pairs, proposal.pattern)
        before = self.plan.cost_of(crop)
        placed = self.plan.place(crop, proposal.offer, self._trimmed(places, fit), yields)
        if self.plan.cost_of(crop) >= before - _ANY_GAIN:
            self.plan.take_out(placed)
            return
        self.added.append(placed)
        self.ask(crop)

    def _rule_out(self, crop: int, proposal: Proposal) -> None:
        """Ground only gets less while the plan is filled: what found none finds none later."""
        key = crop, proposal.pattern
        if key not in self._alive:
            self._alive[key] = np.ones(len(self.markets[crop].proposals.offers))
        self._alive[key][proposal.offer] = 0.0
        self._failed[key] += 1

    def _fit(self, places: CropPlaces, proposal: Proposal) -> Fit | None:
        if proposal.pattern is None:
            return places.find(self.plan, proposal.offer, proposal.plants)
        return places.find_under(self.plan, proposal.offer, proposal.plants, proposal.pattern)

    def _wait_smaller(self, crop: int, proposal: Proposal, fit: Fit) -> None:
        """Only part of it fits: let it wait with what that part gains."""
        share = fit.plants / proposal.plants
        sowing = self.plan.worth.sowing * (1 + SPLIT * (len(fit.pieces) - 1))
        gain = proposal.gain * share - sowing * (1 - share)
        if gain > _ANY_GAIN:
            smaller = Proposal(
                proposal.rank * gain / proposal.gain,
                gain,
                proposal.offer,
                fit.plants,
                proposal.pattern,
            )
            self._wait(crop, smaller, cut=True)

    def _trimmed(self, places: CropPlaces, fit: Fit) -> tuple[Piece, ...]:
        """In a thrifty mood, without a last row that would stand nearly empty."""
        if len(fit.pieces) > 1 or not self.mood.thrift:
            return fit.pieces
        piece = fit.pieces[0]
        bed = self.plan.ground.beds[piece.bed]
        spacing_um = places.crop.ground.spacing_um
        in_row = bed.across(spacing_um)
        if piece.host != NOBODY or in_row == 0 or piece.plants <= in_row:
            return fit.pieces
        rows = math.ceil(piece.plants / in_row)
        if piece.plants - (rows - 1) * in_row >= _LAST_ROW * in_row:
            return fit.pieces
        plants = (rows - 1) * in_row
        to_um = piece.from_um + bed.stretch_for(plants, spacing_um)
        return (piece._replace(to_um=to_um, plants=plants),)
