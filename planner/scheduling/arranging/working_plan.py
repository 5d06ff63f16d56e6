"""The working plan: sowings on real ground while they are chosen, and what the plan costs so far.

Crops, offers and beds are numbers here, days are ordinals: a plan is weighed thousands of times.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from operator import mul
from typing import NamedTuple

import numpy as np

from planner.ground import NOBODY, Ground, Holding
from planner.scheduling.offers import ELSEWHERE, GUEST, SPLIT, CropOffers, CropSums, Floats, Worth

_NOTHING = 1e-9
# An offer, and whether on ground of its own; a bed, and from where to where along it.
Together = tuple[int, bool]
Stretch = tuple[int, int, int]


class Piece(NamedTuple):
    """A stretch of a bed with so many of a sowing's plants, under a host or under nobody."""

    bed: int
    from_um: int
    to_um: int
    plants: int
    host: int = NOBODY


@dataclass(frozen=True, slots=True)
class Placed:
    """A sowing on the ground: its number, its crop, its offer, its pieces.

    `yields`: what its plants give against those on ground of their own.
    """

    number: int
    crop: int
    offer: int
    pieces: tuple[Piece, ...]
    yields: float = 1.0

    @property
    def plants(self) -> int:
        """All plants of the sowing."""
        return sum(piece.plants for piece in self.pieces)


class WorkingPlan:
    """Sowings by crop, the ground they hold, and what each crop's weeks lack."""

    def __init__(self, offers: Sequence[CropOffers], ground: Ground, worth: Worth) -> None:
        self.offers = offers
        self.ground = ground
        self.worth = worth
        self.placed: list[dict[int, Placed]] = [{} for _ in offers]
        self.before: list[dict[Together, list[Stretch]]] = [{} for _ in offers]
        self._lacks: list[list[list[float]]] = [[one.lacks.tolist()] for one in offers]
        self._sums = [CropSums(one, worth) for one in offers]
        self._costs = [0.0] * len(offers)
        self._stale = set(range(len(offers)))
        self._guests: dict[int, set[int]] = {}
        self._hosts: dict[str, dict[int, list[tuple[int, Holding]]]] = {}
        self._by_number: dict[int, Placed] = {}
        self._next = 0

    @property
    def cost(self) -> float:
        """What the plan costs: unmet wants, surplus, sowings, ground."""
        return math.fsum(self.cost_of(crop) for crop in range(len(self.offers)))

    def cost_of(self, crop: int) -> float:
        """A crop's part of the cost."""
        if crop in self._stale:
            self._weigh(crop)
        return self._costs[crop]

    def lacks(self, crop: int) -> list[list[float]]:
        """What a crop's weeks lack in each year it is weighed in, in its unit."""
        if crop in self._stale:
            self._weigh(crop)
        return self._lacks[crop]

    def all_placed(self) -> list[Placed]:
        """Every sowing, by crop, in the order they were placed."""
        return [one for sowings in self.placed for one in sowings.values()]

    def hosts(self, crop: str) -> Iterator[tuple[int, Holding]]:
        """Every stretch a crop's sowings hold on ground of their own, with its bed."""
        for holdings in self._hosts.get(crop, {}).values():
            yield from holdings

    def place(
        self, crop: int, offer: int, pieces: tuple[Piece, ...], yields: float = 1.0
    ) -> Placed:
        """Place a new sowing."""
        placed = Placed(self._next, crop, offer, pieces, yields)
        self._next += 1
        self.put_back(placed)
        return placed

    def put_back(self, placed: Placed) -> None:
        """Place a sowing that was taken out, where it was; its host must be back before it."""
        offers = self.offers[placed.crop]
        enters, leaves = int(offers.enters[placed.offer]), int(offers.leaves[placed.offer])
        family = offers.crop.family.text
        own = []
        for piece in placed.pieces:
            holding = Holding(
                piece.from_um, piece.to_um, enters, leaves, placed.number, family, piece.host
            )
            self.ground.hold(piece.bed, holding)
            if piece.host == NOBODY:
                own.append((piece.bed, holding))
            else:
                self._guests.setdefault(piece.host, set()).add(placed.number)
        self._hosts.setdefault(offers.crop.name, {})[placed.number] = own
        self.placed[placed.crop][placed.number] = placed
        self._by_number[placed.number] = placed
        self._stale.add(placed.crop)

    def take_out(self, placed: Placed) -> list[Placed]:
        """Take out a sowing and its guests; what was taken out, to be put back from the end."""
        taken = []
        for guest in sorted(self._guests.get(placed.number, ())):
            taken += self.take_out(self._by_number[guest])
        for piece in placed.pieces:
            self.ground.release(piece.bed, placed.number)
            if piece.host != NOBODY:
                self._guests[piece.host].discard(placed.number)
        del self._hosts[self.offers[placed.crop].crop.name][placed.number]
        del self.placed[placed.crop][placed.number]
        del self._by_number[placed.number]
        self._stale.add(placed.crop)
        return [*taken, placed]

    def is_placed(self, placed: Placed) -> bool:
        """Whether a sowing is in the plan."""
        return placed.number in self._by_number

    def has_guests(self, placed: Placed) -> bool:
        """Whether others stand on a sowing's ground."""
        return bool(self._guests.get(placed.number))

    def harvest(self, crop: int) -> dict[int, dict[int, float]]:
        """What each sowing of a crop brings to each of its weeks, by their places."""
        sums, offers = self._sums[crop], self.offers[crop]
        if offers.flows:
            return {
                one.number: {
                    week: one.plants * one.yields * each
                    for week, each in enumerate(sums.gives[one.offer])
                    if each > 0
                }
                for one in self.placed[crop].values()
            }
        shared: dict[int, dict[int, float]] = {one: {} for one in self.placed[crop]}
        for number, week, amount in self._eaten(crop, [*sums.lacks], (sums.gives, sums.last)):
            shared[number][week] = shared[number].get(week, 0.0) + amount
        return shared

    def _eaten(
        self, crop: int, lacks: list[float], year: tuple[list[list[float]], list[int]]
    ) -> Iterator[tuple[int, int, float]]:
        """Who feeds which week with how much, the first to end first; `lacks` shrinks with it.

        What is left of a sowing in the end falls into its last week.
        """
        sums, (gives, last_week) = self._sums[crop], year
        ready = sorted(
            (last_week[one.offer], number, one.offer) for number, one in self.placed[crop].items()
        )
        left = {
            number: one.plants * one.yields * sums.each for number, one in self.placed[crop].items()
        }
        for week, lack in enumerate(lacks):
            wanted = lack
            for last, number, offer in ready:
                if wanted <= _NOTHING:
                    break
                amount = left[number]
                if last >= week and amount > _NOTHING and gives[offer][week] > 0:
                    eaten = min(amount, wanted)
                    wanted -= eaten
                    left[number] = amount - eaten
                    yield number, week, eaten
            lacks[week] = max(wanted, 0.0)
        for last, number, _ in ready:
            if left[number] > _NOTHING:
                yield number, last, left[number]

    def _weigh(self, crop: int) -> None:
        """Work out what a crop's weeks lack, and what its part of the plan costs."""
        sums = self._sums[crop]
        weighed = [self._weigh_year(crop, sums, year) for year in sums.years]
        self._stale.discard(crop)
        self._lacks[crop] = [lacks for lacks, _ in weighed]
        worths = (map(mul, lacks, sums.worth) for lacks, _ in weighed)
        unmet = math.fsum(chain.from_iterable(worths))
        surplus = math.fsum(beyond for _, beyond in weighed)
        fixed = self._fixed(crop, sums)
        self._costs[crop] = (unmet + self.worth.surplus * surplus) / len(weighed) + fixed

    def _weigh_year(
        self, crop: int, sums: CropSums, year: tuple[list[list[float]], list[int]]
    ) -> tuple[list[float], float]:
        """What the weeks lack in a year, and what the surplus would be worth."""
        lacks = [*sums.lacks]
        if not self.offers[crop].flows:
            fed = list(self._eaten(crop, lacks, year))
            brought = math.fsum(amount for _, _, amount in fed)
            eaten = math.fsum(sums.lacks) - math.fsum(lacks)
            return lacks, max(0.0, brought - eaten) * sums.mean_worth
        surplus = 0.0
        for one in self.placed[crop].values():
            plants = one.plants * one.yields
            surplus += plants * sums.beyond[one.offer]
            lacks = [
                lack - plants * each for lack, each in zip(lacks, year[0][one.offer], strict=True)
            ]
        surplus += math.fsum(
            -lack * each for lack, each in zip(lacks, sums.worth, strict=True) if lack < 0
        )
        return [lack if lack > 0 else 0.0 for lack in lacks], surplus

    def _fixed(self, crop: int, sums: CropSums) -> float:
        """What sowings cost by being there: the work of them, and ground of their own.

        What is sown on one day to stand equally long is one sowing, in so many pieces.
        """
        together: dict[Together, list[Stretch]] = {}
        ground = 0.0
        for one in self.placed[crop].values():
            own = one.pieces[0].host == NOBODY
            together.setdefault((one.offer, own), []).extend(piece[:3] for piece in one.pieces)
            if own:
                held_um = sum(piece.to_um - piece.from_um for piece in one.pieces)
                ground += held_um * sums.days[one.offer]
        work = math.fsum(
            sums.sowing[offer] * (1 if own else GUEST) * (1 + SPLIT * (len(pieces) - 1))
            for (offer, own), pieces in together.items()
        )
        changes = self._changes(crop, together) * self.worth.change if self.worth.change else 0.0
        return work + changes + self.worth.metre_day * ground / 1e6

    def _changes(self, crop: int, together: dict[Together, list[Stretch]]) -> float:
        """Sowings that the earlier season did not have or that it had and are gone."""
        before = self.before[crop]
        changed = float(sum(key not in together for key in before))
        for key, pieces in together.items():
            was = before.get(key)
            if was is None:
                changed += 1
            elif was != sorted(pieces):
                changed += ELSEWHERE
        return changed

    def begin_from(self, crop: int) -> None:
        """Take a crop's sowings as they stand now for those of the earlier season."""
        self.before[crop] = {}
        for one in self.placed[crop].values():
            key = one.offer, one.pieces[0].host == NOBODY
            self.before[crop].setdefault(key, []).extend(piece[:3] for piece in one.pieces)
        for pieces in self.before[crop].values():
            pieces.sort()
        self._stale.add(crop)

    def leaning(self, crop: int) -> Floats | None:
        """What each offer would cost or save by its being a change; None where changes are free."""
        if not self.worth.change:
            return None
        leans = np.full(len(self.offers[crop]), -self.worth.change)
        here = {one.offer for one in self.placed[crop].values()}
        for offer, _ in self.before[crop]:
            leans[offer] = 0.0 if offer in here else self.worth.change
        return leans
