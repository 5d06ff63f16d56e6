"""Courses: the predicted life of a crop started on a given day."""

import math
from dataclasses import dataclass, replace
from datetime import date, timedelta
from enum import Enum

from planner.garden import CountedFrom, Crop, DirectSown, RaisedIndoors, Way
from planner.growth.limits import Limits
from planner.growth.outdoor_time import OutdoorTime
from planner.growth.paces import CropPace
from planner.terms import Figure

# Hardening off takes one to two weeks (TRADE-S22).
HARDENING_DAYS = 7
_LEAST_DAYS_OUTDOORS = 7.0
_HALF_A_YEAR_DAYS = 180
_NO_LIMITS = Limits(date.min)


@dataclass(frozen=True, slots=True)
class Ripening:
    """When the first harvest is there: early, likely and late.

    The one, five and nine in ten of past years; without a record, the ends and the middle of
    the published range of days. `years` on record, and in how many of them it would not have
    been ripe before frost, heat or the season ended it; `late` then is the day of that end.
    """

    early: date
    likely: date
    late: date
    years: int = 0
    years_too_late: int = 0


@dataclass(frozen=True, slots=True)
class Conditions:
    """What a crop meets at a site: its outdoor times, its pace, its limits."""

    times: tuple[OutdoorTime, ...]
    pace: CropPace
    limits: Limits = _NO_LIMITS


@dataclass(frozen=True, slots=True)
class Course:
    """The predicted life of a sowing up to its first harvest, and what bounds it.

    `enters_on` is the day it takes up ground: sowing in place, or setting out.
    """

    crop: Crop
    way: Way
    start_on: date
    emerges_on: date
    set_out_on: date | None
    enters_on: date
    ripe: Ripening
    time: OutdoorTime
    fall_extra_days: float
    counted: str
    emerges_by: str


class RefusedBy(Enum):
    """What forbids a course."""

    NOT_YET = "frost is not over"
    FROST = "frost comes first"
    NO_TIME = "frost leaves no time"
    SOIL = "the soil is too cold or too hot"
    HEAT = "heat or long days"


@dataclass(frozen=True, slots=True)
class Refused:
    """A start that cannot be, and why."""

    by: RefusedBy
    why: str


def indoor_days(way: RaisedIndoors) -> int:
    """Whole weeks between sowing indoors and setting out, in days."""
    return 7 * math.ceil(way.days_indoors.middle / 7 - 1e-9)


def course_of(
    crop: Crop,
    way: Way,
    start_on: date,
    conditions: Conditions,
    set_out_on: date | None = None,
) -> Course | Refused:
    """The course of a crop started on a day, or what forbids it: frost, heat or cold.

    It must go into open ground within one outdoor time and be ripe before that time ends.
    Plants raised indoors are set out after the middle of their weeks unless told when.
    """
    limits, pace = conditions.limits, conditions.pace
    if isinstance(way, DirectSown):
        why_not_sown = limits.why_not_sown(start_on)
        if why_not_sown:
            return Refused(RefusedBy.SOIL, why_not_sown)
        set_out_on = None
    elif set_out_on is None:
        set_out_on = start_on + timedelta(days=indoor_days(way))
    enters_on = set_out_on or start_on
    fitting = [one for one in conditions.times if one.opens <= enters_on <= one.last_start]
    if not fitting:
        return _refused_by_frost(enters_on, conditions.times)
    time = max(fitting, key=lambda one: one.ends)
    ripe = ripening_of(way, start_on, enters_on, pace, time.ends)
    if ripe.likely > time.ends:
        return Refused(RefusedBy.FROST, time.why_ends)
    why_not_harvested = limits.why_not_harvested(ripe.likely)
    if why_not_harvested:
        return Refused(RefusedBy.HEAT, why_not_harvested)
    time = until_limit(time, ripe.likely, limits)
    emerges_on, emerges_by = emergence_of(crop, way, start_on, limits)
    return Course(
        crop=crop,
        way=way,
        start_on=start_on,
        emerges_on=emerges_on,
        set_out_on=set_out_on,
        enters_on=enters_on,
        ripe=_before(ripe, time.ends),
        time=time,
        fall_extra_days=0.0 if spans_winter(way) else pace.fall_extra_days(ripe.likely),
        counted=counted_words(way, pace),
        emerges_by=emerges_by,
    )


def _refused_by_frost(enters_on: date, times: tuple[OutdoorTime, ...]) -> Refused:
    """Whether a day lies before the next outdoor time, or rather after the last one."""
    before = [time for time in times if time.last_start < enters_on]
    after = [time for time in times if time.opens > enters_on]
    last = max(before, key=lambda time: time.last_start, default=None)
    following = min(after, key=lambda time: time.opens, default=None)
    if following is not None and (
        last is None or following.opens - enters_on <= enters_on - last.last_start
    ):
        return Refused(RefusedBy.NOT_YET, following.why_opens)
    if last is not None:
        return Refused(RefusedBy.FROST, last.why_ends)
    return Refused(RefusedBy.NO_TIME, "any night of the year may freeze here")


def likely_ripe(way: Way, start_on: date, set_out_on: date | None, pace: CropPace) -> date:
    """When a start would be ripe in the average year if nothing forbade it."""
    enters_on = set_out_on or start_on
    days = _days_in_ground(way, (enters_on - start_on).days)
    if spans_winter(way):
        return enters_on + timedelta(days=math.ceil(days.middle))
    return pace.ripe_on(enters_on, days.middle)


def emergence_of(crop: Crop, way: Way, start_on: date, limits: Limits) -> tuple[date, str]:
    """The day a start comes up and what tells it: in place the soil, where its warmth is known."""
    by_soil = limits.emerges_on(start_on) if isinstance(way, DirectSown) else None
    if by_soil is not None:
        return by_soil, limits.emergence_words
    days = crop.days_to_emerge
    return start_on + timedelta(days=math.ceil(days.middle)), f"{days} ({days.source})"


def until_limit(time: OutdoorTime, ripe_on: date, limits: Limits) -> OutdoorTime:
    """The outdoor time, ended early where heat or long days end the harvest."""
    closes = limits.harvest_closes(ripe_on)
    if closes is None or closes[0] >= time.ends:
        return time
    return replace(time, ends=closes[0], why_ends=closes[1])


def ripening_of(way: Way, start_on: date, enters_on: date, pace: CropPace, ends: date) -> Ripening:
    """When a start is ripe that must be harvested by the day its time outdoors ends."""
    days = _days_in_ground(way, (enters_on - start_on).days)
    if spans_winter(way):
        return Ripening(
            early=enters_on + timedelta(days=math.ceil(days.low)),
            likely=enters_on + timedelta(days=math.ceil(days.middle)),
            late=enters_on + timedelta(days=math.ceil(days.high)),
        )
    if pace.past:
        return _from_past_years(enters_on, days.middle, pace, ends)
    return Ripening(
        early=pace.ripe_on(enters_on, days.low),
        likely=pace.ripe_on(enters_on, days.middle),
        late=pace.ripe_on(enters_on, days.high),
    )


def _before(ripe: Ripening, ends: date) -> Ripening:
    """The ripening with no date beyond the end of the time outdoors."""
    return replace(ripe, late=min(ripe.late, max(ripe.likely, ends)))


def _from_past_years(enters_on: date, days: float, pace: CropPace, ends: date) -> Ripening:
    """The day by which one, five and nine past years in ten would have had it ripe."""
    dates = sorted(year.ripe_on(enters_on, days) for year in pace.past)
    last = len(dates) - 1
    early, likely, late = (dates[round(share * last)] for share in (0.1, 0.5, 0.9))
    too_late = sum(day > ends for day in dates)
    return Ripening(early, likely, late, len(dates), too_late)


def spans_winter(way: Way) -> bool:
    """Whether days to maturity are so many that the published figure has a winter in it.

    Then they are plain calendar days: winter must not be counted twice (rules §10).
    """
    return way.days.middle >= _HALF_A_YEAR_DAYS


def counted_words(way: Way, pace: CropPace) -> str:
    """How the dates of a start are counted, in words."""
    return "by the calendar" if spans_winter(way) else pace.words


def _days_in_ground(way: Way, days_indoors: int) -> Figure:
    """Days to maturity still to come when the crop enters the ground.

    Days counted from sowing go on indoors: two weeks indoors gain two weeks outdoors.
    """
    if isinstance(way, DirectSown) or way.counted_from is CountedFrom.SETTING_OUT:
        return way.days
    low = max(_LEAST_DAYS_OUTDOORS, way.days.low - days_indoors)
    high = max(_LEAST_DAYS_OUTDOORS, way.days.high - days_indoors)
    return Figure(low, high, way.days.unit, way.days.source)
