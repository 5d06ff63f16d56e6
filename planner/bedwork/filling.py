"""Filling a new bed: what lies in it from the bottom up (§44)."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from planner.garden import DEPTH_TOLERANCE_M, Bed, Crop, Garden, SoilMix, SoilWish
from planner.scheduling import Sowing

_MM_PER_M = 1000
_L_PER_M3 = 1000
_ROUNDING = 1e-9


class LayerKind(StrEnum):
    """What a bed is filled with, from the bottom up."""

    COARSE = "coarse wood and trimmings"
    FINER = "finer: leaves, shreds, grass, rough compost"
    GOOD_MIX = "good mix"


class Doubt(StrEnum):
    """What is to be minded before a bed is filled so."""

    TOO_SHALLOW = "too shallow"
    ONLY_RICH = "only rich"
    MUCH_COMPOST = "much compost"


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer across a whole bed."""

    kind: LayerKind
    depth_m: float
    volume_l: float


@dataclass(frozen=True, slots=True)
class Filling:
    """A new bed filled to its depth of soil.

    `layers` from the bottom up. `settles_l`: good mix to keep for topping it up when it has
    settled. `parts`: good mix by what it is made of, topping up included. `wet_kg`: the most it may
    weigh. `first_in`: the day something enters it; None where nothing is planned there.
    `shallow_for`: crops planned there that would have too little soil when it has settled.
    """

    bed: Bed
    layers: tuple[Layer, ...]
    mix: SoilMix
    parts: dict[str, float]
    settles_l: float
    wet_kg: float
    first_in: date | None
    doubts: tuple[Doubt, ...]
    shallow_for: tuple[str, ...]

    @property
    def volume_l(self) -> float:
        """All that goes in at first."""
        return math.fsum(layer.volume_l for layer in self.layers)


@dataclass(frozen=True, slots=True)
class TightDepth:
    """A crop in a bed whose soil is less deep than it would have."""

    bed: Bed
    crop: Crop


def fillings_of(garden: Garden, sowings: Sequence[Sowing]) -> tuple[Filling, ...]:
    """A filling for each new bed, in the order of the plan."""
    return tuple(_filling(garden, bed, sowings) for bed in garden.beds if bed.is_new)


def tight_depths(garden: Garden, sowings: Sequence[Sowing]) -> tuple[TightDepth, ...]:
    """Every crop planned where the soil is less deep than it would have, bed by bed."""
    return tuple(
        TightDepth(bed, crop)
        for bed in garden.beds
        for crop in _crops_in(garden, bed, sowings)
        if _wants_more(crop, bed)
    )


def _wants_more(crop: Crop, bed: Bed) -> bool:
    return crop.ground.soil_depth.high / _MM_PER_M > bed.soil_depth_m + DEPTH_TOLERANCE_M


def _crops_in(garden: Garden, bed: Bed, sowings: Sequence[Sowing]) -> list[Crop]:
    """The crops planned in a bed, in the order of the plan."""
    there = {
        sowing.crop.name for sowing in sowings for block in sowing.blocks if block.bed == bed.name
    }
    return [crop for name, crop in garden.crops.items() if name in there]


def _filling(garden: Garden, bed: Bed, sowings: Sequence[Sowing]) -> Filling:
    soil = garden.soil
    planned = _crops_in(garden, bed, sowings)
    fitting = [crop for crop in garden.crops.values() if crop.fits(bed)]
    layers = tuple(_layers(soil, bed, planned or fitting))
    settled_m = bed.soil_depth_m - soil.middle("settling") / _MM_PER_M
    mix = soil.mix if _is_own(soil.mix) or not _is_shallow(soil, bed) else soil.rich_mix
    settles_l = bed.area_m2 * soil.middle("settling")
    good_l = layers[-1].volume_l + settles_l
    return Filling(
        bed=bed,
        layers=layers,
        mix=mix,
        parts={part: share * good_l for part, share in mix.shares.items()},
        settles_l=settles_l,
        wet_kg=math.fsum(layer.volume_l for layer in layers) * soil.middle("wet_mix"),
        first_in=_first_in(bed, sowings),
        doubts=tuple(_doubts(soil, bed, mix)),
        shallow_for=tuple(
            crop.name for crop in planned if not crop.ground.is_deep_enough(settled_m)
        ),
    )


def _layers(soil: SoilWish, bed: Bed, crops: Sequence[Crop]) -> Iterator[Layer]:
    """From the bottom up; all good mix where what lies below it would be thin."""
    depth_m = bed.soil_depth_m
    wanted = [crop.ground.soil_depth.high for crop in crops]
    good_m = max([soil.middle("good_mix"), *wanted]) / _MM_PER_M
    lower_m = min(depth_m - good_m, depth_m * soil.figures["coarse_share"].high)
    if lower_m < soil.middle("least_coarse") / _MM_PER_M - DEPTH_TOLERANCE_M:
        lower_m = 0.0
    finer_m = lower_m * soil.middle("finer_share")
    for kind, layer_m in (
        (LayerKind.COARSE, lower_m - finer_m),
        (LayerKind.FINER, finer_m),
        (LayerKind.GOOD_MIX, depth_m - lower_m),
    ):
        if layer_m > 0:
            yield Layer(kind, layer_m, bed.area_m2 * layer_m * _L_PER_M3)


def _is_own(mix: SoilMix) -> bool:
    return mix.source.place is not None


def _is_shallow(soil: SoilWish, bed: Bed) -> bool:
    return bed.soil_depth_m < soil.middle("rich_below") / _MM_PER_M - DEPTH_TOLERANCE_M


def _doubts(soil: SoilWish, bed: Bed, mix: SoilMix) -> Iterator[Doubt]:
    if bed.soil_depth_m < soil.middle("least_depth") / _MM_PER_M - DEPTH_TOLERANCE_M:
        yield Doubt.TOO_SHALLOW
    elif _is_shallow(soil, bed):
        yield Doubt.ONLY_RICH
    compost = math.fsum(share for part, share in mix.shares.items() if "compost" in part.casefold())
    if compost > soil.figures["organic_share"].high + _ROUNDING:
        yield Doubt.MUCH_COMPOST


def _first_in(bed: Bed, sowings: Sequence[Sowing]) -> date | None:
    return min(
        (one.enter_on for sowing in sowings for one in sowing.blocks if one.bed == bed.name),
        default=None,
    )
