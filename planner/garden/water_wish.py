"""Water: what the grower tells of drip lines, rain and evaporation, and how thirsty crops are."""

from collections.abc import Mapping
from dataclasses import dataclass

from planner.terms import Figure, Flow, Source


@dataclass(frozen=True, slots=True)
class Drip:
    """What a bed's drip line gives in all, and how that is known."""

    flow: Flow
    source: Source


@dataclass(frozen=True, slots=True)
class NoDrip:
    """A bed of whose drip line nothing is told; it may be watered by hand."""


@dataclass(frozen=True, slots=True)
class MonthlyDepth:
    """Twelve depths of water, January first, millimetres in the whole month."""

    mm: tuple[float, ...]
    source: Source


@dataclass(frozen=True, slots=True)
class NotTold:
    """Monthly figures the plan does not state."""


@dataclass(frozen=True, slots=True)
class CropWater:
    """How thirsty a crop is over its life, against reference evapotranspiration.

    Coefficients at the start, in full leaf and at the end; `stages` are the days of the initial,
    development, mid-season and late stages as published, of which only the proportions count.
    """

    initial: float
    mid: float
    end: float
    stages: tuple[float, float, float, float]
    source: Source
    note: str


@dataclass(frozen=True, slots=True)
class WaterWish:
    """All that watering is counted with.

    `efficiency`: the share of drip water that roots get. `rain_used`: the share of rain they get.
    `rule_mm`: the plain rule for a week where evaporation is not known. `crops` by name; `other`
    is for kept ground and for crops without figures.
    """

    efficiency: Figure
    rain: MonthlyDepth | NotTold
    rain_used: Figure
    evaporation: MonthlyDepth | NotTold
    rule_mm: Figure
    runs_each_week: Figure
    longest_run_minutes: Figure
    crops: Mapping[str, CropWater]
    other: CropWater
