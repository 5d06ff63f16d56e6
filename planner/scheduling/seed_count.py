"""How many seeds to sow so that surely enough plants remain (§20)."""

import math
from functools import lru_cache

from planner.garden import Crop, SeedKind, SeedWish, StartFrom

# Of seed as old as its life half of what came up when fresh still does (§51; from memory).
_LEFT_AT_END = 0.5


@lru_cache(maxsize=4096)
def seeds_to_sow(plants: int, share: float, confidence: float) -> int:
    """The fewest seeds of which at least so many become plants, with a confidence.

    Each becomes one with the same chance, whatever becomes of the others (binomial, exact).
    For 12 plants of seed of which 72 in 100 become plants, 20 seeds at a confidence of 0.9.
    """
    if plants < 1:
        return 0
    if share >= 1:
        return plants
    # The chance that the last plant wanted comes of just the n-th seed, n from `plants` on.
    seeds = plants
    chance = plants * math.log(share)
    enough = math.exp(chance)
    while enough < confidence:
        chance += math.log(seeds) - math.log(seeds - plants + 1) + math.log1p(-share)
        enough += math.exp(chance)
        seeds += 1
    return seeds


def comes_up_in(kind: SeedKind, year: int) -> float:
    """The share of a crop's seed that comes up in a year.

    It falls evenly with age to half at the end of the seed's life. Seed older than that is not
    sown any more; fresh seed is counted with.
    """
    fresh = kind.comes_up.middle
    if not is_usable(kind, year):
        return fresh
    age = max(0, year - kind.packed_in)
    return fresh * (1 - (1 - _LEFT_AT_END) * age / kind.life_years.middle)


def is_usable(kind: SeedKind, year: int) -> bool:
    """Whether what lies in the seed box is still worth sowing in a year."""
    return kind.packed_in > 0 and year - kind.packed_in <= kind.life_years.middle


def seeds_for(crop: Crop, plants: int, year: int, wish: SeedWish) -> int:
    """Seeds to sow for so many plants of a crop; cloves, sets, tubers and slips one each."""
    if crop.start_from is not StartFrom.SEED:
        return plants
    share = comes_up_in(wish.kinds[crop.name], year) * wish.kept.middle
    return seeds_to_sow(plants, share, wish.confidence)
