"""Unbeaten offers: those that no other beats in every way."""

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from planner.scheduling.offers.arrays import Floats


@dataclass(frozen=True, slots=True)
class OfferRow:
    """An offer while offers are made; see CropOffers for what its numbers are."""

    start: int
    enters: int
    leaves: int
    gives: Floats
    beyond: float
    direct: bool
    work: float
    years: Floats


def unbeaten(rows: list[OfferRow], weeks: int, taken: Collection[int]) -> list[OfferRow]:
    """The rows no other row beats; of equals the one sown in place, then the latest."""
    rows = sorted(
        rows,
        key=lambda row: (-row.gives.sum(), row.leaves - row.enters, not row.direct, -row.start),
    )
    enters, leaves = np.zeros(len(rows)), np.zeros(len(rows))
    every = weeks * (1 + len(rows[0].years)) if rows else weeks
    gives, direct = np.zeros((len(rows), every)), np.zeros(len(rows), bool)
    kept: list[OfferRow] = []
    for row in rows:
        many = len(kept)
        all_gives = np.concatenate([row.gives, row.years.ravel()])
        beats = (
            (enters[:many] >= row.enters)
            & (leaves[:many] <= row.leaves)
            & (direct[:many] | (not row.direct))
            & (gives[:many] >= all_gives - 1e-12).all(axis=1)
        )
        if beats.any() and id(row) not in taken:
            continue
        enters[many], leaves[many], direct[many] = row.enters, row.leaves, row.direct
        gives[many] = all_gives
        kept.append(row)
    return sorted(kept, key=lambda row: (row.enters, row.leaves, row.start))
