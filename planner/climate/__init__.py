"""Climate: the year at this site and its odds.

Takes a Site. Gives Climate: the last freeze of spring and the first of fall at any risk, in
either hemisphere and across New Year, temperatures of the average year and of past years, what
evaporates, and the length of any day.
"""

from planner.climate.climate import Climate, FreezeYear, FreezeYearOdds
from planner.climate.day_length import day_length_h, shortest_day
from planner.climate.evapotranspiration import hargreaves_mm, reference_evapotranspiration_mm
from planner.climate.freeze_odds import (
    FreezeLaw,
    FreezeOdds,
    FreezeSide,
    NoSuchDay,
    NoUsableYear,
    TooFewFreezes,
    day_number,
    first_freeze_odds,
    last_freeze_odds,
    numbered_day,
)
from planner.climate.freeze_record import (
    FallEnd,
    Freeze,
    FreezeOn,
    FreezeSeason,
    NoFreeze,
    RecordBroken,
    freeze_seasons,
)
from planner.climate.recorded_freezes import FreezeRecord, freeze_record_of
from planner.climate.temperatures import (
    BEYOND,
    LEAD,
    KnownTemperatures,
    SeasonTemperatures,
    UnknownTemperatures,
)

__all__ = [
    "BEYOND",
    "LEAD",
    "Climate",
    "FallEnd",
    "Freeze",
    "FreezeLaw",
    "FreezeOdds",
    "FreezeOn",
    "FreezeRecord",
    "FreezeSeason",
    "FreezeSide",
    "FreezeYear",
    "FreezeYearOdds",
    "KnownTemperatures",
    "NoFreeze",
    "NoSuchDay",
    "NoUsableYear",
    "RecordBroken",
    "SeasonTemperatures",
    "TooFewFreezes",
    "UnknownTemperatures",
    "day_length_h",
    "day_number",
    "first_freeze_odds",
    "freeze_record_of",
    "freeze_seasons",
    "hargreaves_mm",
    "last_freeze_odds",
    "numbered_day",
    "reference_evapotranspiration_mm",
    "shortest_day",
]
