"""The ideal season: every sowing of any size, ground counted by classes of beds (rules §32).

A linear program in which plants need not be whole, rows are only whole where a sowing fills
less than one, and blocks need not hang together. No plan can do better, so it gives the bound;
its prices tell what a week and a stretch of ground are worth on each day. Its columns are made
as they prove useful: those that would lower the cost at the prices of the moment.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from planner.garden import SharedGround
from planner.scheduling.ideal.pricing import CropRows, Gains, GroundThereIs, Prices, gains_of
from planner.scheduling.ideal.tenure import provisions_of, tenures_of
from planner.scheduling.offers import CropOffers, Floats, Whole, Worth
from planner.solver import Column, LinearProgram, Solution

_POOLS = 2
_MOST_ROUNDS = 300
_TINY = 1e-6


@dataclass(frozen=True, slots=True)
class Part:
    """A sowing as a column: so many plants of an offer in a class of beds, for some weeks."""

    crop: int
    offer: int
    tenure: int
    place: int
    plants: float
    line_m: float
    weeks: tuple[int, ...]


class IdealSeason:
    """The linear program of a garden. With `ONLY_WANTS` for its worth only those count."""

    def __init__(
        self,
        offers: Sequence[CropOffers],
        ground: GroundThereIs,
        worth: Worth,
        pairs: Sequence[SharedGround] = (),
    ) -> None:
        self.ground = ground
        self._worth = worth
        self.crops = list(_crop_rows(offers, ground, worth, pairs))
        self._full = np.concatenate([one.worth * one.lacks for one in offers] or [np.zeros(0)])
        self._weeks = len(self._full)
        self._program = LinearProgram()
        self._add_rows(bool(pairs))
        self._seen: set[tuple[int, ...]] = set()
        self.parts: list[Part] = []
        self.solution = self._solved()

    @property
    def lacking(self) -> float:
        """What stays unmet in this program, in thousandths of everything wanted."""
        return float(self.lacking_by_week @ self._full)

    @property
    def lacking_by_week(self) -> Floats:
        """The share of each week's want that stays unmet, crop after crop."""
        return self.solution.amounts[: 2 * self._weeks : 2]

    @property
    def amounts(self) -> Floats:
        """How much of each part is taken; 1 is all of its plants."""
        return self.solution.amounts[2 * self._weeks :]

    @property
    def ground_prices(self) -> Floats:
        """What a metre of each class is worth on each day, classes by days."""
        return self._prices(self.solution).ground

    def reprice(self, costs: Floats) -> None:
        """Solve again with other costs of the parts there are."""
        self._program.set_costs(2 * self._weeks, costs)
        self.solution = self._program.solve()

    def with_free(self, free_m: Floats) -> Floats:
        """What would stay unmet by week with other ground; the program is then as it was."""
        before = self.ground.free_m
        self._set_free(free_m)
        lacking = self.lacking_by_week
        self._set_free(before)
        return lacking

    def _set_free(self, free_m: Floats) -> None:
        self.ground = replace(self.ground, free_m=free_m)
        for row, metres in enumerate(free_m.ravel()):
            self._program.set_row(self._weeks + row, -np.inf, float(metres))
        self.solution = self._solved()

    def _add_rows(self, shares: bool) -> None:  # noqa: FBT001 - whether there are rows to add
        self._program.add_rows(np.ones(self._weeks), np.ones(self._weeks))
        free = self.ground.free_m.ravel()
        self._program.add_rows(np.full(len(free), -np.inf), free)
        pools = _POOLS * len(self.ground.days) if shares else 0
        self._program.add_rows(np.full(pools, -np.inf), np.zeros(pools))
        rows = [np.array([row], np.int64) for row in range(self._weeks)]
        columns = [
            column
            for row, full in zip(rows, self._full, strict=True)
            for column in (
                Column(full, row, np.ones(1)),
                Column(self._worth.surplus * full, row, -np.ones(1)),
            )
        ]
        self._program.add(columns)

    def _solved(self) -> Solution:
        """Solve, adding parts until none would lower the cost."""
        for _ in range(_MOST_ROUNDS):
            solution = self._program.solve()
            prices = self._prices(solution)
            new = [
                part
                for number, crop in enumerate(self.crops)
                for part in self._worthwhile(number, crop, prices)
            ]
            if not new:
                return solution
            self._program.add([self._column(part) for part in new])
            self.parts += new
        message = f"the ideal season was not found in {_MOST_ROUNDS} rounds"
        raise RuntimeError(message)

    def _prices(self, solution: Solution) -> Prices:
        rows, days = solution.prices, len(self.ground.days)
        after = self._weeks + self.ground.free_m.size
        ground, pools = -rows[self._weeks : after], -rows[after:]
        shared = pools.reshape(_POOLS, days) if len(pools) else np.zeros((_POOLS, days))
        return Prices(rows[: self._weeks], ground.reshape(-1, days), shared, self._worth.metre_day)

    def _worthwhile(self, number: int, crop: CropRows, prices: Prices) -> Iterator[Part]:
        """For every start of a crop the part that gains most, where any gains at all."""
        if not len(crop.offers):
            return
        gains = list(gains_of(crop, self.ground, prices))
        every = np.array([one.gain for one in gains])
        best = every.argmax(axis=0)
        gain = every.max(axis=0)
        taken: set[int] = set()
        for offer in np.argsort(-gain, kind="stable"):
            if gain[offer] <= _TINY:
                return
            start = int(crop.offers.starts[offer])
            if start in taken:
                continue
            taken.add(start)
            part = self._part(number, int(offer), gains[int(best[offer])])
            if part is not None:
                yield part

    def _part(self, number: int, offer: int, gains: Gains) -> Part | None:
        weeks = tuple(np.flatnonzero(gains.feeds[offer]).tolist())
        plants = float(gains.plants[offer])
        key = (number, offer, gains.tenure, gains.place, *weeks)
        if key in self._seen or plants <= 0:
            return None
        self._seen.add(key)
        line_m = 0.0
        if gains.place >= 0:
            crop = self.crops[number].offers.crop
            line_m = self.ground.classes[gains.place].least_line_m(crop, plants)
        return Part(number, offer, gains.tenure, gains.place, plants, line_m, weeks)

    def _column(self, part: Part) -> Column:
        crop = self.crops[part.crop]
        tenure, days = crop.tenures[part.tenure], len(self.ground.days)
        weeks = list(part.weeks)
        rows: list[Whole] = [crop.first_row + np.array(weeks, np.int64)]
        parts: list[Floats] = [_fed(crop.offers, part, tenure.yields)[weeks]]
        if tenure.own is not None:
            begins, ends = int(tenure.own[0][part.offer]), int(tenure.own[1][part.offer])
            rows.append(self._weeks + part.place * days + np.arange(begins, ends))
            parts.append(np.full(ends - begins, part.line_m))
        for pool, begins, ends, m2 in self._shares(crop, part):
            first = self._weeks + self.ground.free_m.size + pool * days
            rows.append(first + np.arange(begins, ends))
            parts.append(np.full(ends - begins, m2))
        # A host may bring to one pool twice on a day; a row stands in a column once.
        places, index = np.unique(np.concatenate(rows), return_inverse=True)
        amounts: Floats = np.bincount(index, weights=np.concatenate(parts)).astype(float)
        return Column(self.cost_of(part), places.astype(np.int64), amounts)

    def _shares(self, crop: CropRows, part: Part) -> Iterator[tuple[int, int, int, float]]:
        """What a part draws on shared ground, and what it brings to it, in square metres."""
        tenure, offer = crop.tenures[part.tenure], part.offer
        spacing_m = crop.offers.crop.ground.spacing_um / 1e6
        if tenure.pool is not None:
            pool, begins, ends = tenure.pool
            yield pool, int(begins[offer]), int(ends[offer]), part.plants * spacing_m * spacing_m
        elif part.place >= 0:
            width_m = self.ground.classes[part.place].alike.width_um / 1e6
            for one in crop.provisions:
                m2 = -one.share * part.line_m * width_m
                yield one.pool, int(one.begins[offer]), int(one.ends[offer]), m2

    def cost_of(self, part: Part) -> float:
        """What a part costs whatever its prices: a sowing, the ground it holds, what it wastes."""
        crop = self.crops[part.crop]
        offers = crop.offers
        days = int(offers.leaves[part.offer] - offers.enters[part.offer])
        held_for = self._worth.metre_day * part.line_m * days
        wasted = crop.wasted[part.offer] * part.plants * crop.tenures[part.tenure].yields
        return float(crop.costs[part.offer] + held_for + wasted)


def _crop_rows(
    offers: Sequence[CropOffers],
    ground: GroundThereIs,
    worth: Worth,
    pairs: Sequence[SharedGround],
) -> Iterator[CropRows]:
    first = 0
    for one in offers:
        costs = worth.sowing * one.work
        tenures = tenures_of(one, ground.days, pairs)
        provisions = provisions_of(one, ground.days, pairs)
        wasted = worth.surplus * one.mean_worth * one.beyond
        yield CropRows(one, first, tenures, provisions, costs, wasted)
        first += len(one.weeks)


def _fed(offers: CropOffers, part: Part, yields: float) -> Floats:
    """The share of each week's want that a part brings."""
    if offers.flows:
        fed: Floats = part.plants * yields * offers.gives[part.offer] / offers.lacks
        return fed
    return np.ones(len(offers.weeks))
