"""Begun courses: the life of a sowing that stands already, on whatever day it was started."""

from dataclasses import replace
from datetime import date, timedelta

from planner.garden import Crop, Way
from planner.growth.course import (
    Conditions,
    Course,
    Ripening,
    counted_words,
    emergence_of,
    ripening_of,
    until_limit,
)
from planner.growth.outdoor_time import OutdoorTime

# Where no time outdoors can be told, a sowing is let stand so long beyond its ripening.
_LET_STAND = timedelta(days=60)
_STANDS = "it stands already"


def begun_course(
    crop: Crop,
    way: Way,
    start_on: date,
    set_out_on: date | None,
    conditions: Conditions,
    late_days: int = 0,
) -> Course:
    """The course of a sowing that has begun: nothing forbids it any more (rules §35).

    `late_days`: by how much it is behind what is expected of it, below 0 where it is ahead.
    """
    enters_on = set_out_on or start_on
    time = _time_of(enters_on, conditions)
    ends = time.ends if time else date.max
    late = timedelta(days=late_days)
    ripe = _later(ripening_of(way, start_on, enters_on, conditions.pace, ends), late)
    if time is None or time.ends < ripe.likely:
        time = OutdoorTime(enters_on, enters_on, ripe.likely + _LET_STAND, _STANDS, _STANDS)
    emerges_on, emerges_by = emergence_of(crop, way, start_on, conditions.limits)
    return Course(
        crop=crop,
        way=way,
        start_on=start_on,
        emerges_on=emerges_on,
        set_out_on=set_out_on,
        enters_on=enters_on,
        ripe=ripe,
        time=until_limit(time, ripe.likely, conditions.limits),
        fall_extra_days=0.0,
        counted=counted_words(way, conditions.pace),
        emerges_by=emerges_by,
    )


def _time_of(enters_on: date, conditions: Conditions) -> OutdoorTime | None:
    """The time outdoors that a day lies in, or the next to come."""
    inside = [one for one in conditions.times if one.opens <= enters_on <= one.last_start]
    if inside:
        return max(inside, key=lambda one: one.ends)
    fitting = [one for one in conditions.times if enters_on <= one.ends]
    return min(fitting, key=lambda one: one.ends, default=None)


def _later(ripe: Ripening, by: timedelta) -> Ripening:
    return replace(ripe, early=ripe.early + by, likely=ripe.likely + by, late=ripe.late + by)
