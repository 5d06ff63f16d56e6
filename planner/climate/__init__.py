"""Climate: the year at this site and its odds.

Takes a Site. Gives Climate: the last freeze of spring and the first of fall at any risk, in
either hemisphere and across New Year, temperatures of the average year and of past years, what
evaporates, and the length of any day.
"""

from planner.climate.climate import Climate, FreezeYearOdds
from planner.climate.day_length import day_length_h, shortest_day
from planner.climate.evapotranspiration import reference_evapotranspiration_mm
from planner.climate.freeze_odds import NoSuchDay, NoUsableYear, numbered_day
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
    "FreezeRecord",
    "FreezeYearOdds",
    "KnownTemperatures",
    "NoSuchDay",
    "NoUsableYear",
    "SeasonTemperatures",
    "UnknownTemperatures",
    "day_length_h",
    "freeze_record_of",
    "numbered_day",
    "reference_evapotranspiration_mm",
    "shortest_day",
]
