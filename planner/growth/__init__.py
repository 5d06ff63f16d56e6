"""Growth: how a crop moves through its life when started on a given day.

Takes a Crop and a Climate. Gives a Course: emergence, setting out, first harvest (early,
likely, late) and the time it may stand outdoors, each explained.
"""

from planner.growth.course import HARDENING_DAYS, Course, Ripening, course_of, indoor_days
from planner.growth.outdoor_time import OutdoorTime, outdoor_times
from planner.growth.pace import Pace

__all__ = [
    "HARDENING_DAYS",
    "Course",
    "OutdoorTime",
    "Pace",
    "Ripening",
    "course_of",
    "indoor_days",
    "outdoor_times",
]
