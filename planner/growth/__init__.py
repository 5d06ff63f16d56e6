"""Growth: how a crop moves through its life when started on a given day.

Takes a Crop, a Climate, and first harvests as they were predicted and came. Gives a Course:
emergence, setting out, first harvest (early, likely, late) and the time it may stand outdoors,
each explained; what heat, cold and long days close, and which nights kill; the garden's own pace.
"""

from planner.growth.begun_course import begun_course
from planner.growth.course import (
    HARDENING_DAYS,
    Conditions,
    Course,
    Refused,
    RefusedBy,
    Ripening,
    course_of,
    indoor_days,
    likely_ripe,
)
from planner.growth.frost_kill import NEVER, deadly_days, deadly_degc, killed_on
from planner.growth.limits import Limits, comes_up_on, harvest_limits, limits_of
from planner.growth.outdoor_time import OutdoorTime, outdoor_times
from planner.growth.own_crop_pace import at_own_pace
from planner.growth.own_pace import Observation, OwnPace, own_paces
from planner.growth.pace import Pace
from planner.growth.paces import CropPace, Paces

__all__ = [
    "HARDENING_DAYS",
    "NEVER",
    "Conditions",
    "Course",
    "CropPace",
    "Limits",
    "Observation",
    "OutdoorTime",
    "OwnPace",
    "Pace",
    "Paces",
    "Refused",
    "RefusedBy",
    "Ripening",
    "at_own_pace",
    "begun_course",
    "comes_up_on",
    "course_of",
    "deadly_days",
    "deadly_degc",
    "harvest_limits",
    "indoor_days",
    "killed_on",
    "likely_ripe",
    "limits_of",
    "outdoor_times",
    "own_paces",
]
