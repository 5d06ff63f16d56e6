"""Regrowing: part of the plan is taken out and filled anew, again and again (rules §33).

What is taken out is drawn by a fixed row of numbers, so that the same garden always gives the
same plan; the work is counted, not timed.
"""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from planner.ground import NOBODY
from planner.scheduling.arranging.filling import CropMarket, fill
from planner.scheduling.arranging.proposals import Mood
from planner.scheduling.arranging.working_plan import Placed, WorkingPlan
from planner.scheduling.offers import Floats

_MULTIPLIER, _STEP, _WIDTH = 6364136223846793005, 1442695040888963407, 1 << 64
_MOST_TAKEN = 7
_PRICE_LOW, _PRICE_HIGH = 0.6, 1.0
_SHAKEN = 0.15
_THRIFTS = (0.0, 0.0, 0.5, 1.0)
# At first a plan that costs this much more may be gone on from; in the end none.
_WARMTH = 0.3
_PATIENCE = 0.4
_NOTHING = 1e-9


@dataclass(slots=True)
class Draws:
    """A fixed row of numbers from 0 up to 1, by Knuth's linear congruence (MMIX)."""

    state: int = 7

    def next(self) -> float:
        """The next number."""
        self.state = (self.state * _MULTIPLIER + _STEP) % _WIDTH
        return (self.state >> 33) / (1 << 31)

    def below(self, many: int) -> int:
        """A whole number from 0 to `many` - 1."""
        return min(int(self.next() * many), many - 1)

    def around_one(self, many: int) -> Floats:
        """So many factors a little below or above 1."""
        start = self.below(len(_FACTORS))
        return np.take(_FACTORS, range(start, start + many), mode="wrap")


def _factors() -> Floats:
    draws = Draws(1)
    return np.array([1 + _SHAKEN * (2 * draws.next() - 1) for _ in range(4096)])


_FACTORS = _factors()


@dataclass(slots=True)
class Regrowing:
    """A plan being regrown, the best of it so far, and the draws that decide what goes."""

    plan: WorkingPlan
    markets: Sequence[CropMarket]
    draws: Draws = field(default_factory=Draws)

    def run(self, rounds: int) -> None:
        """Regrow so many times; the plan is then the best there was.

        Ends early when it has not been bettered for a good part of the rounds.
        """
        best, kept = self.plan.cost, self.plan.all_placed()
        bettered = 0
        for number in range(rounds):
            idle = number - bettered > _PATIENCE * rounds
            if not self.plan.all_placed() or idle:
                break
            before = self.plan.cost
            taken, added = self._regrow()
            cost = self.plan.cost
            if cost < before + self._warmth(1 - number / rounds):
                if cost < best - _NOTHING:
                    best, kept, bettered = cost, self.plan.all_placed(), number
                continue
            self._undo(taken, added)
        self._go_back_to(kept)

    def _warmth(self, left: float) -> float:
        return _WARMTH * left * 0.5 * -math.log(max(self.draws.next(), 1e-9))

    def _regrow(self) -> tuple[list[Placed], list[Placed]]:
        taken: list[Placed] = []
        for one in self._chosen():
            if self.plan.is_placed(one):
                taken += self.plan.take_out(one)
        factor = _PRICE_LOW + (_PRICE_HIGH - _PRICE_LOW) * self.draws.next()
        mood = Mood(factor, _THRIFTS[self.draws.below(len(_THRIFTS))])
        return taken, fill(self.plan, self.markets, mood, self.draws.around_one)

    def _undo(self, taken: list[Placed], added: list[Placed]) -> None:
        for one in reversed(added):
            if self.plan.is_placed(one):
                self.plan.take_out(one)
        for one in reversed(taken):
            self.plan.put_back(one)

    def _go_back_to(self, kept: list[Placed]) -> None:
        """Make the plan what it was; hosts before guests."""
        wanted = {one.number for one in kept}
        for one in self.plan.all_placed():
            if one.number not in wanted and self.plan.is_placed(one):
                self.plan.take_out(one)
        missing = [one for one in kept if not self.plan.is_placed(one)]
        for one in sorted(missing, key=lambda one: (one.pieces[0].host != NOBODY, one.number)):
            self.plan.put_back(one)

    def _chosen(self) -> list[Placed]:
        """What is to be taken out: neighbours in a bed, sowings of a crop or two, or any few.

        Of the few the first is one in several stretches, where there is such a one.
        """
        placed = self.plan.all_placed()
        one = placed[self.draws.below(len(placed))]
        way = self.draws.next()
        if way < 0.45:
            chosen = self._around_in_bed(one, placed)
        elif way < 0.8:
            chosen = self._around_in_crop(one, placed)
        else:
            chosen = [self._split(placed) or one]
            chosen += [placed[self.draws.below(len(placed))] for _ in range(2)]
        while len(chosen) > _MOST_TAKEN:
            chosen.pop(self.draws.below(len(chosen)))
        return chosen

    def _split(self, placed: list[Placed]) -> Placed | None:
        """One of the sowings that lie in several stretches."""
        together = Counter((one.crop, one.offer) for one in placed for _ in one.pieces)
        split = [one for one in placed if together[one.crop, one.offer] > 1]
        return split[self.draws.below(len(split))] if split else None

    def _around_in_bed(self, one: Placed, placed: list[Placed]) -> list[Placed]:
        beds = {one.pieces[0].bed}
        days = 20 + self.draws.below(50)
        if self.draws.next() > 0.6:
            beds.add(self.draws.below(len(self.plan.ground.beds)))
        day = self._enters(one)
        return [
            other
            for other in placed
            if any(piece.bed in beds for piece in other.pieces)
            and self._enters(other) < day + days
            and self._leaves(other) > day - 5
        ]

    def _around_in_crop(self, one: Placed, placed: list[Placed]) -> list[Placed]:
        crops = {one.crop}
        days = 15 + self.draws.below(30)
        if self.draws.next() > 0.5:
            crops.add(self.draws.below(len(self.markets)))
        day = self._enters(one)
        return [
            other
            for other in placed
            if other.crop in crops and abs(self._enters(other) - day) < days
        ]

    def _enters(self, one: Placed) -> int:
        return int(self.plan.offers[one.crop].enters[one.offer])

    def _leaves(self, one: Placed) -> int:
        return int(self.plan.offers[one.crop].leaves[one.offer])
