"""What was chosen: sowings, what they leave unmet, and how near that comes to the best."""

from dataclasses import dataclass

from planner.scheduling.sowing import Sowing
from planner.scheduling.unmet import Unmet


@dataclass(frozen=True, slots=True)
class MoreGround:
    """What one more bed like another could bring at most: to everything wanted, and by crop."""

    like: str
    gain: float
    by_crop: dict[str, float]


@dataclass(frozen=True, slots=True)
class Bound:
    """The share of everything wanted that no plan can pass, and what one more bed would bring."""

    share: float
    more_ground: tuple[MoreGround, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """Sowings without names as yet, those standing with theirs, what stays unmet, and the bound.

    `movable` are those of the earlier season that could move, `missed` those never begun.
    """

    sowings: tuple[Sowing, ...]
    unmet: tuple[Unmet, ...]
    bound: Bound
    movable: tuple[Sowing, ...] = ()
    missed: tuple[Sowing, ...] = ()
