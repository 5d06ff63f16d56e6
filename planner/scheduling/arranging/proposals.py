"""Proposals: which offers of a crop would mend most of what its weeks lack, and how many plants."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.garden import SharedGround, SharingPattern
from planner.ground import BedClass
from planner.scheduling.ideal import held
from planner.scheduling.offers import GUEST, CropOffers, Floats, Whole, Worth

# A crop whose weeks each lack less than this share of their want gets no sowing for it.
_CRUMBS = 0.03
# Sizes tried for a crop that flows, as shares of what would fill its emptiest week.
_SIZES = (1.0, 0.65, 0.4)
_ANY_GAIN = 1e-9
_MOST = 4
_FREE = {SharingPattern.BETWEEN, SharingPattern.BENEATH}


@dataclass(frozen=True, slots=True)
class Proposal:
    """So many plants of an offer, on own ground or as a guest in a pattern, and their gain.

    `rank`: what comes first; the gain itself, or more of it for less ground.
    """

    rank: float
    gain: float
    offer: int
    plants: int
    pattern: SharingPattern | None


@dataclass(frozen=True, slots=True)
class Mood:
    """How proposals are ranked.

    Ground of its own is paid at its price times `price_factor`, a host's is free. `thrift`: 0
    ranks by gain alone, 1 by gain for ground and time.
    """

    price_factor: float = 1.0
    thrift: float = 0.0


@dataclass(frozen=True)
class CropProposals:
    """What can be proposed for one crop: its offers, the price of its ground, its hosts.

    `prices`: metres of each class by day, from the ideal season; `pairs`: those it is guest of.
    """

    offers: CropOffers
    classes: tuple[tuple[int, BedClass], ...]
    days: Whole
    prices: Floats
    worth: Worth
    pairs: tuple[SharedGround, ...]

    @cached_property
    def rents(self) -> tuple[Floats, ...]:
        """What a metre of each class costs each offer for its time, in the order of `classes`."""
        begins = np.searchsorted(self.days, self.offers.enters)
        ends = np.searchsorted(self.days, self.offers.leaves)
        return tuple(held(self.prices[place], begins, ends) for place, _ in self.classes)

    @cached_property
    def _ground(self) -> Floats:
        """What a plant of each offer pays for ground of its own, where it is cheapest."""
        crop = self.offers.crop
        each = [
            one.row_m(crop) / one.plants_in_row(crop) * rent
            for (_, one), rent in zip(self.classes, self.rents, strict=True)
        ]
        return np.min(each, axis=0) if each else np.full(len(self.offers), np.inf)

    @cached_property
    def _by_pattern(self) -> dict[SharingPattern, float]:
        return {pair.pattern: pair.yield_share for pair in self.pairs}

    @property
    def patterns(self) -> tuple[SharingPattern | None, ...]:
        """On its own ground, and the patterns in which it may be a guest."""
        return (None, *self._by_pattern)

    def best(
        self,
        pattern: SharingPattern | None,
        lacks: list[list[float]],
        mood: Mood,
        shake: Floats,
        leaning: Floats | None = None,
    ) -> list[Proposal]:
        """The proposals that rank first; `shake` multiplies each offer's gain.

        `leaning` is added to it: what each offer saves or costs by being a change.
        """
        lacking = np.array(lacks)
        if not len(self.offers) or (lacking / self.offers.lacks).max() < _CRUMBS:
            return []
        shared = pattern in _FREE
        price = self._ground * (0.0 if shared else mood.price_factor)
        yields = self._by_pattern.get(pattern, 1.0) if pattern else 1.0
        weigh = self._flowing if self.offers.flows else self._at_once
        gain, plants = weigh(lacking, yields, price)
        work = self.offers.work * (GUEST if pattern else 1.0)
        gain = gain - self.worth.sowing * work
        if leaning is not None:
            gain = gain + leaning
        gain = gain * shake
        rank = gain / (plants * self._plant_days) ** mood.thrift if mood.thrift else gain
        order = np.argsort(-rank, kind="stable")[:_MOST]
        return [
            Proposal(float(rank[i]), float(gain[i]), int(i), int(plants[i]), pattern)
            for i in order
            if gain[i] > _ANY_GAIN
        ]

    @cached_property
    def _plant_days(self) -> Floats:
        """Ground times days a plant of each offer takes, square metres and months."""
        spacing_m = self.offers.crop.ground.spacing_um / 1e6
        return spacing_m * spacing_m * (self.offers.leaves - self.offers.enters) / 30

    def _at_once(self, lacking: Floats, yields: float, price: Floats) -> tuple[Floats, Floats]:
        offers = self.offers
        each = offers.crop.gives.middle * yields
        eaten = np.einsum("yow,yw->yo", offers.years, lacking)
        worth = np.einsum("yow,yw->yo", offers.years, lacking * offers.worth)
        plants = np.maximum(1.0, np.ceil(eaten.mean(axis=0) / each - 1e-9))
        with np.errstate(divide="ignore", invalid="ignore"):
            part = np.where(eaten > 0, np.minimum(1.0, plants * each / eaten), 0.0)
        return (worth * part).mean(axis=0) - plants * price, plants

    def _flowing(self, lacking: Floats, yields: float, price: Floats) -> tuple[Floats, Floats]:
        offers, worth = self.offers, self.offers.worth
        gives = offers.years * yields
        mean, lacks = gives.mean(axis=0), lacking.mean(axis=0)
        with np.errstate(divide="ignore", invalid="ignore"):
            most = np.where(mean > 1e-12, lacks / mean, 0.0).max(axis=1)
        wasted = offers.beyond * yields * offers.mean_worth
        best, sizes = np.full(len(offers), -np.inf), np.ones(len(offers))
        for size in _SIZES:
            plants = np.maximum(1.0, np.ceil(most * size - 1e-9))
            brought = plants[:, None] * gives
            useful = (np.minimum(brought, lacking[:, None]) @ worth).mean(axis=0)
            beyond = (np.maximum(brought - lacking[:, None], 0.0) @ worth).mean(axis=0)
            surplus = beyond + plants * wasted
            gain = useful - self.worth.surplus * surplus - plants * price
            better = gain > best
            best[better], sizes[better] = gain[better], plants[better]
        return best, sizes
