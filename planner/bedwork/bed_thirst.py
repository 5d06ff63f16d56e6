"""A bed's thirst: the mean coefficient of what stands in it, weighed by ground (§49)."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from planner.bedwork.crop_coefficient import coefficient_at
from planner.garden import CropWater, Garden
from planner.scheduling import Sowing


@dataclass(frozen=True, slots=True)
class Stand:
    """A stretch of a bed that something holds for some days, and how thirsty that is."""

    from_um: int
    to_um: int
    first: date
    last: date
    water: CropWater
    keeps: bool = False

    def coefficient(self, day: date) -> float:
        """The coefficient on a day; what stays for years is in the middle of its life."""
        if self.keeps:
            return self.water.mid
        return coefficient_at(self.water, (day - self.first) / (self.last - self.first))


@dataclass(frozen=True, slots=True)
class Thirst:
    """What a bed's plants take: their mean coefficient, and the share of the bed they hold."""

    coefficient: float
    planted: float


BARE = Thirst(0.0, 0.0)


def stands_of(garden: Garden, sowings: Iterable[Sowing]) -> dict[str, list[Stand]]:
    """Everything that stands in each bed, sowings and kept ground."""
    water = garden.water
    stands: dict[str, list[Stand]] = {bed.name: [] for bed in garden.beds}
    for sowing in sowings:
        thirst = water.crops.get(sowing.crop.name, water.other)
        for block in sowing.blocks:
            one = Stand(block.from_um, block.to_um, block.enter_on, block.leave_on, thirst)
            stands[block.bed].append(one)
    for kept in garden.kept:
        one = Stand(kept.from_um, kept.to_um, kept.first, kept.last, water.other, keeps=True)
        stands[kept.bed].append(one)
    return stands


def thirst_on(day: date, stands: Sequence[Stand], line_um: int) -> Thirst:
    """The thirst of a bed on a day; where two share ground the thirstier of them counts."""
    here = [(one, one.coefficient(day)) for one in stands if one.first <= day < one.last]
    if not here:
        return BARE
    ends = sorted({end for one, _ in here for end in (one.from_um, one.to_um)})
    planted, weighed = 0, 0.0
    for first, last in pairwise(ends):
        over = [thirst for one, thirst in here if one.from_um <= first and last <= one.to_um]
        if over:
            planted += last - first
            weighed += (last - first) * max(over)
    return Thirst(weighed / planted, planted / line_um)
