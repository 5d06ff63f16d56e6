"""Tenures: on which ground a crop's offers may stand, its own or a host's, and for what price."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planner.garden import SharedGround, SharingPattern
from planner.scheduling.offers import CropOffers, Floats, Whole


@dataclass(frozen=True, slots=True)
class Tenure:
    """A way for offers to hold ground; days are places in the list of days something enters.

    `own`: from which to which day each offer holds ground of its own; None under a host to the
    end. `pool`: from which to which day it draws on ground shared by hosts, and on which pool.
    `yields`: what a plant gives against one on its own ground.
    """

    own: tuple[Whole, Whole] | None
    pool: tuple[int, Whole, Whole] | None
    yields: float


# The two pools of shared ground: under hosts that stand, and under hosts about to end.
STANDING, ENDING = 0, 1


@dataclass(frozen=True, slots=True)
class Provision:
    """Shared ground that a host's offers bring to a pool: from, to, and the share of theirs."""

    pool: int
    begins: Whole
    ends: Whole
    share: float


def tenures_of(
    offers: CropOffers, days: Whole, pairs: Sequence[SharedGround]
) -> tuple[Tenure, ...]:
    """Every tenure of a crop's offers; those of a guest count at the best its hosts allow."""
    enters = np.searchsorted(days, offers.enters)
    leaves = np.searchsorted(days, offers.leaves)
    found = [Tenure((enters, leaves), None, 1.0)]
    mine = [pair for pair in pairs if pair.guest == offers.crop.name]
    standing = [pair.yield_share for pair in mine if pair.pattern is not SharingPattern.RELAY]
    if standing:
        found.append(Tenure(None, (STANDING, enters, leaves), max(standing)))
    relay = [pair for pair in mine if pair.pattern is SharingPattern.RELAY]
    if relay:
        longest = max(pair.relay_days for pair in relay)
        after = np.searchsorted(days, np.minimum(offers.enters + longest, offers.leaves))
        share = max(pair.yield_share for pair in relay)
        found.append(Tenure((after, leaves), (ENDING, enters, after), share))
    return tuple(found)


def provisions_of(
    offers: CropOffers, days: Whole, pairs: Sequence[SharedGround]
) -> tuple[Provision, ...]:
    """What a host's offers bring to the pools, at the most that any guest may take."""
    found = []
    for pattern in SharingPattern:
        mine = [p for p in pairs if p.host == offers.crop.name and p.pattern is pattern]
        if not mine:
            continue
        share = max(pair.ground_share for pair in mine)
        begins, ends = offers.enters, offers.leaves
        if pattern is SharingPattern.BETWEEN:
            closes = max(pair.closes_at for pair in mine)
            ends = begins + np.ceil(closes * (ends - begins)).astype(np.int64)
        if pattern is SharingPattern.RELAY:
            begins = np.maximum(begins, ends - max(pair.relay_days for pair in mine))
        pool = ENDING if pattern is SharingPattern.RELAY else STANDING
        places = (np.searchsorted(days, begins), np.searchsorted(days, ends))
        found.append(Provision(pool, *places, share))
    return tuple(found)


def held(prices: Floats, begins: Whole, ends: Whole) -> Floats:
    """The price of holding from one place in the days to another, for every offer.

    `prices` are by day along the last axis; what is returned has the offers there.
    """
    nothing = np.zeros((*prices.shape[:-1], 1))
    summed = np.concatenate([nothing, np.cumsum(prices, axis=-1)], axis=-1)
    price: Floats = summed[..., ends] - summed[..., begins]
    return price
