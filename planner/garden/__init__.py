"""Garden: what the grower asks for and has.

Takes nothing but terms. Gives Garden: the site, the season's wishes, beds, crops, targets.
Every value here is complete; what may be missing in the text stays in the reading room.
"""

from planner.garden.bed import Bed, BedNote, Sun, rectangular_bed_line, round_bed_line
from planner.garden.crop import (
    Crop,
    Frost,
    FrostTolerance,
    Ground,
    Hardiness,
    HarvestUnit,
    StartFrom,
)
from planner.garden.garden import Garden
from planner.garden.habit import Cut, Habit, Once, Pick, Store
from planner.garden.season_wish import AwayTime, SeasonWish
from planner.garden.site import (
    FreezeDates,
    FreezeDay,
    Freezes,
    FreezesAllYear,
    MonthlyTemperatures,
    NeverFreezes,
    Site,
    spread_between,
)
from planner.garden.target import OnceTarget, Target, WeeklyTarget
from planner.garden.way import CountedFrom, DirectSown, RaisedIndoors, Way

__all__ = [
    "AwayTime",
    "Bed",
    "BedNote",
    "CountedFrom",
    "Crop",
    "Cut",
    "DirectSown",
    "FreezeDates",
    "FreezeDay",
    "Freezes",
    "FreezesAllYear",
    "Frost",
    "FrostTolerance",
    "Garden",
    "Ground",
    "Habit",
    "Hardiness",
    "HarvestUnit",
    "MonthlyTemperatures",
    "NeverFreezes",
    "Once",
    "OnceTarget",
    "Pick",
    "RaisedIndoors",
    "SeasonWish",
    "Site",
    "StartFrom",
    "Store",
    "Sun",
    "Target",
    "Way",
    "WeeklyTarget",
    "rectangular_bed_line",
    "round_bed_line",
    "spread_between",
]
