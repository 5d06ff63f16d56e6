"""Sowings and their blocks: the nouns of a schedule."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from planner.garden import Crop, RaisedIndoors, Way
from planner.growth import Ripening

# Amounts are kept to so many places, so that they are the same after being written and read.
HARVEST_PLACES = 9


class Method(StrEnum):
    """Where a sowing begins."""

    DIRECT = "direct"
    INDOORS = "indoors"


class SowingState(StrEnum):
    """Whether a sowing can still be moved, stands, or is gone: cleared, or lost."""

    PLANNED = "planned"
    BEGUN = "begun"
    CLEARED = "cleared"
    LOST = "lost"


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of a bed, held from one day to another; the next may enter the day it leaves.

    `under`: the name of the sowing whose ground it shares, empty on ground of its own.
    """

    bed: str
    from_um: int
    to_um: int
    enter_on: date
    leave_on: date
    under: str = ""


@dataclass(frozen=True, slots=True)
class HarvestDay:
    """An amount taken on a day, in the crop's unit."""

    day: date
    amount: float


@dataclass(frozen=True, slots=True)
class Sowing:
    """One batch of one crop started on one day. Its name, once given, stays.

    `counted` says how its dates were counted. `seeds` counts what goes into the ground or tray
    (cloves, sets, tubers and slips likewise). `mark` is what its guests know it by until it has
    a name.
    """

    id: str
    crop: Crop
    method: Method
    sow_on: date
    emerges_on: date
    set_out_on: date | None
    ripe: Ripening
    counted: str
    plants: int
    seeds: int
    blocks: tuple[Block, ...]
    harvest: tuple[HarvestDay, ...]
    clear_on: date
    state: SowingState
    why: tuple[str, ...]
    mark: str = ""

    @property
    def enters_on(self) -> date:
        """The day it takes up ground."""
        return self.set_out_on or self.sow_on

    @property
    def way(self) -> Way:
        """The crop's way by which it is begun."""
        raised = self.method is Method.INDOORS
        return next(way for way in self.crop.ways if isinstance(way, RaisedIndoors) is raised)
