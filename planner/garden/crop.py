"""Crops: one vegetable with every figure its dates and its ground depend on."""

from dataclasses import dataclass
from enum import Enum, StrEnum

from planner.garden.bed import Bed, Sun
from planner.garden.habit import Habit
from planner.garden.heat_needs import HeatNeeds, NoHeatNeeds
from planner.garden.way import Way
from planner.terms import Fact, Figure, Unit

# Beds and needs are told in round inches or round centimetres: 30 cm stand for 12 in.
DEPTH_TOLERANCE_M = 0.01


class Hardiness(StrEnum):
    """How much frost the young plant stands, in four classes."""

    VERY_HARDY = "very hardy"
    HARDY = "hardy"
    TENDER = "tender"
    WARM_LOVING = "warm loving"

    @property
    def killed_by_frost(self) -> bool:
        """Whether a freeze kills it, so that the grower's freeze risk decides."""
        return self in {Hardiness.TENDER, Hardiness.WARM_LOVING}


class FrostTolerance(StrEnum):
    """How far into fall the grown crop goes on."""

    NONE = "none"
    LIGHT_FROST = "light frost"
    SEVERAL_FREEZES = "several freezes"
    OVERWINTERS = "overwinters"


class StartFrom(Enum):
    """What goes into the ground or tray."""

    SEED = "seed"
    SETS = "sets"
    CLOVES = "cloves"
    TUBERS = "tubers"
    SLIPS = "slips"


@dataclass(frozen=True, slots=True)
class Frost:
    """What frost does to a crop, early and late in the season.

    `weeks_from_last_freeze`: earliest time outdoors against the half-of-years last freeze,
    negative before it. `days_after_first_freeze`: how long the grown crop goes on after the
    first one.
    """

    hardiness: Hardiness
    weeks_from_last_freeze: Figure
    tolerance: FrostTolerance
    days_after_first_freeze: Figure


@dataclass(frozen=True, slots=True)
class Ground:
    """The ground one plant needs, and how tall it grows; lengths in millimetres."""

    spacing: Figure
    sowing_depth: Figure
    soil_depth: Figure
    sun: Sun
    height: Figure

    @property
    def spacing_um(self) -> float:
        """Distance between plants, micrometres, in every direction."""
        return self.spacing.middle * 1000

    @property
    def least_soil_m(self) -> float:
        """The least depth of soil, metres."""
        return self.soil_depth.low / 1000

    def is_deep_enough(self, depth_m: float) -> bool:
        """Whether soil of this depth holds it, within what rounding to whole units takes."""
        return depth_m >= self.least_soil_m - DEPTH_TOLERANCE_M - 1e-9


@dataclass(frozen=True, slots=True)
class Crop:
    """A crop. `gives` is what one plant gives: in all, or at each cut for a crop cut again."""

    name: str
    label: str
    family: Fact
    start_from: StartFrom
    ways: tuple[Way, ...]
    habit: Habit
    gives: Figure
    unit: Unit
    days_to_emerge: Figure
    frost: Frost
    ground: Ground
    heat: HeatNeeds | NoHeatNeeds

    @property
    def height_m(self) -> float:
        """How tall the grown crop stands, metres, on its trellis if it has one."""
        return self.ground.height.middle / 1000

    def fits(self, bed: Bed) -> bool:
        """Whether a bed is deep and light enough and holds at least one plant."""
        return (
            self.ground.is_deep_enough(bed.soil_depth_m)
            and bed.sun >= self.ground.sun
            and bed.stretch_for(1, self.ground.spacing_um) <= bed.line_um
        )
