"""Pricing: what every offer of a crop would gain at the prices of the moment."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from planner.ground import BedClass
from planner.scheduling.ideal.tenure import Provision, Tenure, held
from planner.scheduling.offers import CropOffers, Floats, Whole

_TINY = 1e-9


@dataclass(frozen=True, slots=True)
class GroundThereIs:
    """Classes of beds, the days on which anything enters, and metres free of each by day."""

    classes: tuple[BedClass, ...]
    days: Whole
    free_m: Floats


@dataclass(frozen=True, slots=True)
class Prices:
    """What one week in full is worth, a metre of a class on a day, a square metre of a pool.

    `metre_day` is what holding a metre for a day costs whatever its price.
    """

    weeks: Floats
    ground: Floats
    pools: Floats
    metre_day: float


@dataclass(frozen=True, slots=True)
class CropRows:
    """A crop in the program, and where its weeks' rows begin.

    On what its offers may stand, what they bring to hosts' pools, what a sowing of each costs, and
    what a plant of each costs by what it brings for nobody.
    """

    offers: CropOffers
    first_row: int
    tenures: tuple[Tenure, ...]
    provisions: tuple[Provision, ...]
    costs: Floats
    wasted: Floats


@dataclass(frozen=True, slots=True)
class Gains:
    """What each offer gains on one tenure in one class; -1 is no class.

    `feeds` tells which weeks it is made for, `plants` how many plants that takes.
    """

    tenure: int
    place: int
    gain: Floats
    feeds: NDArray[np.bool_]
    plants: Floats


def gains_of(crop: CropRows, ground: GroundThereIs, prices: Prices) -> Iterator[Gains]:
    """The gains of a crop's offers on every tenure and class that suits it."""
    offers = crop.offers
    weeks = prices.weeks[crop.first_row : crop.first_row + len(offers.weeks)]
    for number, tenure in enumerate(crop.tenures):
        for place in _places(crop, tenure, ground):
            metre = _metre(tenure, place, offers, prices)
            shared = _shared(crop, tenure, prices)
            bed_class = ground.classes[place] if place >= 0 else None
            if bed_class is not None and tenure.pool is None:
                metre = metre - _brings(crop, prices) * bed_class.alike.width_um / 1e6
            costs = _PlantCosts(offers, bed_class, metre, shared)
            if offers.flows:
                yield _flowing(crop, (number, place), tenure, costs, weeks)
            else:
                yield _at_once(crop, (number, place), tenure, costs, weeks)


def _places(crop: CropRows, tenure: Tenure, ground: GroundThereIs) -> list[int]:
    if tenure.own is None:
        return [-1]
    name = crop.offers.crop.name
    return [place for place, one in enumerate(ground.classes) if name in one.crops]


def _metre(tenure: Tenure, place: int, offers: CropOffers, prices: Prices) -> Floats:
    """What a metre of the line costs each offer for as long as it holds it."""
    if tenure.own is None:
        return np.zeros(len(offers))
    days = offers.leaves - offers.enters
    return held(prices.ground[place], *tenure.own) + prices.metre_day * days


def _shared(crop: CropRows, tenure: Tenure, prices: Prices) -> Floats:
    """What a square metre of plants costs each offer for shared ground."""
    if tenure.pool is None:
        return np.zeros(len(crop.offers))
    pool, begins, ends = tenure.pool
    return held(prices.pools[pool], begins, ends)


def _brings(crop: CropRows, prices: Prices) -> Floats:
    """What a square metre of each offer's own ground brings by being shared."""
    brought = np.zeros(len(crop.offers))
    for one in crop.provisions:
        brought += one.share * held(prices.pools[one.pool], one.begins, one.ends)
    return brought


@dataclass(frozen=True, slots=True)
class _PlantCosts:
    """What a plant of each offer costs for its ground, fewer than a row costing as much as one."""

    offers: CropOffers
    bed_class: BedClass | None
    metre: Floats
    shared: Floats

    def each(self, plants: Floats) -> Floats:
        """The cost of one of so many plants."""
        spacing_m = self.offers.crop.ground.spacing_um / 1e6
        costs = self.shared * spacing_m * spacing_m
        if self.bed_class is not None:
            row_m = self.bed_class.row_m(self.offers.crop)
            in_row = np.minimum(
                np.maximum(plants, 1.0), self.bed_class.plants_in_row(self.offers.crop)
            )
            costs = costs + self.metre * row_m / in_row
        return costs


def _flowing(
    crop: CropRows, where: tuple[int, int], tenure: Tenure, costs: _PlantCosts, weeks: Floats
) -> Gains:
    offers = crop.offers
    plants = offers.largest / tenure.yields
    value = (offers.gives @ (weeks / offers.lacks)) * tenure.yields
    value = value - crop.wasted * tenure.yields
    gain = plants * (value - costs.each(plants)) - crop.costs
    return Gains(*where, gain, offers.gives > 0, plants)


def _at_once(
    crop: CropRows, where: tuple[int, int], tenure: Tenure, costs: _PlantCosts, weeks: Floats
) -> Gains:
    """For each offer the weeks worth their plants; taken twice, as few plants cost more each."""
    offers = crop.offers
    needed = offers.plants / tenure.yields
    each = costs.each(np.full(len(offers), np.inf))
    for _ in range(2):
        value = offers.gives * (weeks - each[:, None] * needed)
        feeds = value > _TINY
        plants = feeds @ needed
        each = costs.each(plants)
    gain = (np.where(feeds, offers.gives * (weeks - each[:, None] * needed), 0.0)).sum(axis=1)
    return Gains(*where, gain - crop.costs, feeds, plants)
