"""Candidates: every start a crop could have, with the weeks it could feed."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.garden import Crop, Cut, DirectSown, Once, Pick, RaisedIndoors, Store, Way
from planner.growth import HARDENING_DAYS, Conditions, Course, course_of, indoor_days
from planner.scheduling.starts.workdays import Workdays
from planner.terms import Week, days_between, week_of

# Leaves may be cut this much before they have fully regrown, so that cuts fall on garden
# days; the cut is smaller in proportion. Common practice, no source.
_EARLY_CUT = 0.8
# Picking begins this much above its mean and ends as much below it; that it declines is common
# practice, the share is from memory.
_PICKING_FALLS = 0.25


@dataclass(frozen=True, slots=True)
class Candidate:
    """A course and what one plant of it gives.

    `days` says on which day each week could be served; `flow`, for crops cut or picked again
    and again, how much each week brings whether wanted or not.
    """

    course: Course
    days: dict[Week, date]
    flow: dict[Week, float] = field(default_factory=dict)

    @property
    def is_direct(self) -> bool:
        """Whether it is sown in place."""
        return isinstance(self.course.way, DirectSown)


@dataclass(frozen=True, slots=True)
class CropTimes:
    """Everything about time that holds for all courses of one crop.

    Nothing is started before `begin`: the season's first day, or the day of planning.
    """

    crop: Crop
    conditions: Conditions
    workdays: Workdays
    begin: date
    last_wanted: date


def candidates_of(about: CropTimes) -> list[Candidate]:
    """Every candidate from the first day of planning on that ripens while the crop is wanted."""
    return [
        candidate
        for way in about.crop.ways
        for course in _courses(about, way)
        if course.ripe.likely <= about.last_wanted
        and (candidate := candidate_of(about, course)).days
    ]


def _courses(about: CropTimes, way: Way) -> Iterator[Course]:
    for start_on in about.workdays.between(about.begin, about.last_wanted):
        set_out_on = None
        if isinstance(way, RaisedIndoors):
            set_out_on = set_out_day(about.workdays, way, start_on)
            if set_out_on is None:
                continue
        course = course_of(about.crop, way, start_on, about.conditions, set_out_on)
        if isinstance(course, Course):
            yield course


def set_out_day(workdays: Workdays, way: RaisedIndoors, start_on: date) -> date | None:
    """The garden day within the crop's weeks indoors that is nearest to their middle."""
    middle = start_on + timedelta(days=indoor_days(way))
    first = start_on + timedelta(days=math.ceil(way.days_indoors.low))
    last = start_on + timedelta(days=int(way.days_indoors.high))
    days = [
        day
        for day in workdays.between(min(first, middle), max(last, middle))
        if _can_be_hardened(workdays, day)
    ]
    return min(days, key=lambda day: (abs((day - middle).days), day), default=None)


def _can_be_hardened(workdays: Workdays, set_out_on: date) -> bool:
    """Whether somebody is there a week or two before, to begin hardening off."""
    begin = set_out_on - timedelta(days=2 * HARDENING_DAYS)
    days = days_between(begin, set_out_on - timedelta(days=HARDENING_DAYS - 2))
    return any(not workdays.wish.is_away(day) for day in days)


def candidate_of(about: CropTimes, course: Course) -> Candidate:
    """What a plant of a course gives, and when."""
    match about.crop.habit:
        case Once(hold_days=hold):
            days = _usable_by_week(about, course, hold.middle)
            return Candidate(course, days)
        case Store(hold_days=hold, store_days=store):
            return Candidate(course, _stored_weeks(about, course, (hold.middle, store.middle)))
        case Cut():
            return _cut_candidate(about, course, about.crop.habit)
        case Pick(picking_days=picking):
            return _pick_candidate(about, course, int(picking.middle))


def _span(about: CropTimes, course: Course, days: float) -> tuple[date, date]:
    """From the likely first harvest so many days on, within the time outdoors and the wants."""
    first = course.ripe.likely
    return first, min(first + timedelta(days=int(days)), course.time.ends, about.last_wanted)


def _usable_by_week(about: CropTimes, course: Course, hold_days: float) -> dict[Week, date]:
    """The first garden day of each week in which the crop stands ready.

    In a week without one it may be picked on another day, when somebody is there.
    """
    first, last = _span(about, course, hold_days)
    workdays = about.workdays
    present = [day for day in days_between(first, last) if not workdays.wish.is_away(day)]
    days: dict[Week, date] = {}
    for day in (*workdays.between(first, last), *present):
        days.setdefault(week_of(day), day)
    return days


def _stored_weeks(
    about: CropTimes, course: Course, hold_and_store: tuple[float, float]
) -> dict[Week, date]:
    hold_days, store_days = hold_and_store
    usable = about.workdays.usable(*_span(about, course, hold_days))
    if not usable:
        return {}
    lifted = usable[0]
    last = min(lifted + timedelta(days=int(store_days)), about.last_wanted)
    return dict.fromkeys(week_of(lifted).until(week_of(last)), lifted)


def _cut_candidate(about: CropTimes, course: Course, habit: Cut) -> Candidate:
    days: dict[Week, date] = {}
    flow: dict[Week, float] = {}
    gives, regrow = about.crop.gives.middle, habit.regrow_days.middle
    last = min(course.time.ends, about.last_wanted)
    day = about.workdays.on_or_after(course.ripe.likely)
    share = 1.0
    for _ in range(int(habit.cuts.middle)):
        if day is None or day > last:
            break
        days.setdefault(week_of(day), day)
        flow[week_of(day)] = flow.get(week_of(day), 0.0) + gives * share
        earliest = about.conditions.pace.day_after(day, regrow * _EARLY_CUT)
        regrown = about.conditions.pace.day_after(day, regrow)
        following = about.workdays.on_or_after(earliest)
        if following is not None and regrown > day:
            share = min(1.0, (following - day).days / (regrown - day).days)
        day = following
    return Candidate(course, days, flow)


def _picking_curve(gives: float, picking_days: int) -> list[float]:
    """What ripens on each day of picking: most at first, less and less later, `gives` in all."""
    mean = gives / picking_days
    middle = (picking_days - 1) / 2
    fall = _PICKING_FALLS * mean / max(middle, 1)
    return [mean + fall * (middle - day) for day in range(picking_days)]


def _pick_candidate(about: CropTimes, course: Course, picking_days: int) -> Candidate:
    days: dict[Week, date] = {}
    flow: dict[Week, float] = {}
    first, last = _span(about, course, picking_days - 1)
    if last < first:
        return Candidate(course, days)
    by_day = _picking_curve(about.crop.gives.middle, picking_days)
    waiting = 0.0
    for week in week_of(first).until(week_of(last)):
        begin, end = max(first, week.monday), min(last, week.sunday)
        usable = about.workdays.between(begin, end)
        if not usable and not about.workdays.between(week.monday, min(week.sunday, last)):
            usable = about.workdays.usable(begin, end)
        ripened = math.fsum(by_day[(begin - first).days : (end - first).days + 1])
        if usable:
            days[week] = usable[0]
            flow[week] = ripened + waiting
        # What ripens after the last garden day of a week that only begins is picked the next.
        waiting = 0.0 if usable or about.workdays.wish.is_away(begin) else ripened
    return Candidate(course, days, flow)
