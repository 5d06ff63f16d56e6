"""Garden: what the grower asks for and has.

Takes nothing but terms. Gives Garden: the site, the season's wishes, beds, crops, targets, kept
ground, which crops may share ground, and what bed work is counted with.
Every value here is complete; what may be missing in the text stays in the reading room.
"""

from planner.garden.bed import (
    Bed,
    BedNote,
    Sun,
    SunnyEnd,
    rectangular_bed_line,
    round_bed_line,
)
from planner.garden.caution import Caution, CautionTime
from planner.garden.crop import (
    DEPTH_TOLERANCE_M,
    Crop,
    Frost,
    FrostTolerance,
    Ground,
    Hardiness,
    StartFrom,
)
from planner.garden.garden import Garden
from planner.garden.habit import Cut, Habit, Once, Pick, Store
from planner.garden.heat_needs import (
    Emergence,
    HeatNeeds,
    NeverBolts,
    NoEmergenceTable,
    NoHeatNeeds,
)
from planner.garden.kept_ground import KeptGround
from planner.garden.paper import Paper, PaperByUnits, usual_paper
from planner.garden.portion import AmountBasis, Portion, PublishedAmount
from planner.garden.season_wish import AwayTime, SeasonWish
from planner.garden.seed_wish import SeedKind, SeedWish
from planner.garden.shared_ground import SharedGround, SharingPattern
from planner.garden.site import (
    FreezeDates,
    FreezeDay,
    Freezes,
    FreezesAllYear,
    FreezesOnRecord,
    MonthlyTemperatures,
    NeverFreezes,
    NoTemperatures,
    NoWeather,
    Site,
    spread_between,
)
from planner.garden.soil_wish import (
    CropSoil,
    EatenPart,
    Feeding,
    Manure,
    NoPrice,
    Parcel,
    SoilMix,
    SoilWish,
)
from planner.garden.target import USUAL_PRIORITY, OnceTarget, Target, WeeklyTarget
from planner.garden.water_wish import (
    CropWater,
    Drip,
    MonthlyDepth,
    NoDrip,
    NotTold,
    WaterWish,
)
from planner.garden.way import CountedFrom, DirectSown, RaisedIndoors, Way
from planner.garden.weather import DailyWeather

__all__ = [
    "DEPTH_TOLERANCE_M",
    "USUAL_PRIORITY",
    "AmountBasis",
    "AwayTime",
    "Bed",
    "BedNote",
    "Caution",
    "CautionTime",
    "CountedFrom",
    "Crop",
    "CropSoil",
    "CropWater",
    "Cut",
    "DailyWeather",
    "DirectSown",
    "Drip",
    "EatenPart",
    "Emergence",
    "Feeding",
    "FreezeDates",
    "FreezeDay",
    "Freezes",
    "FreezesAllYear",
    "FreezesOnRecord",
    "Frost",
    "FrostTolerance",
    "Garden",
    "Ground",
    "Habit",
    "Hardiness",
    "HeatNeeds",
    "KeptGround",
    "Manure",
    "MonthlyDepth",
    "MonthlyTemperatures",
    "NeverBolts",
    "NeverFreezes",
    "NoDrip",
    "NoEmergenceTable",
    "NoHeatNeeds",
    "NoPrice",
    "NoTemperatures",
    "NoWeather",
    "NotTold",
    "Once",
    "OnceTarget",
    "Paper",
    "PaperByUnits",
    "Parcel",
    "Pick",
    "Portion",
    "PublishedAmount",
    "RaisedIndoors",
    "SeasonWish",
    "SeedKind",
    "SeedWish",
    "SharedGround",
    "SharingPattern",
    "Site",
    "SoilMix",
    "SoilWish",
    "StartFrom",
    "Store",
    "Sun",
    "SunnyEnd",
    "Target",
    "WaterWish",
    "Way",
    "WeeklyTarget",
    "rectangular_bed_line",
    "round_bed_line",
    "spread_between",
    "usual_paper",
]
