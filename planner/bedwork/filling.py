"""Filling a new bed: how much soil it takes."""

from dataclasses import dataclass

from planner.garden import Bed, Garden


@dataclass(frozen=True, slots=True)
class Filling:
    """What fills a new bed to its depth of soil, in litres."""

    bed: Bed
    volume_l: float


def fillings_of(garden: Garden) -> tuple[Filling, ...]:
    """A filling for each new bed, in the order of the plan."""
    return tuple(
        Filling(bed, bed.area_m2 * bed.soil_depth_m * 1000) for bed in garden.beds if bed.is_new
    )
