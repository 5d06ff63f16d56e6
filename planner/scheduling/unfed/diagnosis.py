"""Why no sowing at all can feed a week: every start that would is asked what forbids it.

Starts that would be ripe in time, if nothing forbade it, are tried day by day; the reason given
is the one that forbids most of them.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Crop, Cut, Once, Pick, RaisedIndoors, StartFrom, Store, Way
from planner.growth import Course, Refused, RefusedBy, course_of, likely_ripe
from planner.scheduling.starts import CropTimes, set_out_day
from planner.scheduling.unmet import Reason, UnmetKind
from planner.terms import Week


@dataclass(frozen=True, slots=True)
class Forbidden:
    """What forbids a start: a kind of unmet, why, and how a growth rule refused it, if one did."""

    kind: UnmetKind
    why: str
    by: RefusedBy | None = None


_NOBODY_STARTS = "the starts that would feed it fall while nobody is there"
_KINDS = {
    RefusedBy.NOT_YET: UnmetKind.TOO_EARLY,
    RefusedBy.FROST: UnmetKind.TOO_LATE,
    RefusedBy.NO_TIME: UnmetKind.FROST,
    RefusedBy.SOIL: UnmetKind.SOIL,
    RefusedBy.HEAT: UnmetKind.HEAT,
}


def why_unfed(about: CropTimes, week: Week) -> Reason:
    """Why no sowing could feed a week, and what would help."""
    crop = about.crop
    wish = about.workdays.wish
    if week.sunday < about.begin:
        return Reason(
            UnmetKind.PAST,
            f"That week had passed on {about.begin}, when this was planned.",
            "nothing; it is told so that the sums are right.",
        )
    if all(wish.is_away(day) for day in week.days if day.weekday() in wish.garden_weekdays):
        return Reason(
            UnmetKind.AWAY,
            f"Nobody is there to harvest in {week}.",
            "ask somebody to pick that week, or take the week out of the target.",
        )
    forbidden = Counter(one for way in crop.ways for one in _forbidden(about, way, week))
    if not forbidden:
        return _no_day(crop, week)
    first = max(forbidden, key=lambda one: (forbidden[one], one.kind, one.why))
    why = f"{crop.label} for that week: {first.why}."
    return Reason(first.kind, why, _remedy(first, about))


def _forbidden(about: CropTimes, way: Way, week: Week) -> Iterator[Forbidden]:
    """What forbids each start of one way that would be ripe in time for a week."""
    first_ripe = week.monday - timedelta(days=_feeding_days(about.crop))
    start_on = week.sunday
    reached = False
    while start_on >= about.begin:
        set_out_on = _set_out_if_raised(about, way, start_on)
        ripe = likely_ripe(way, start_on, set_out_on, about.conditions.pace)
        if ripe < first_ripe:
            return
        if ripe <= week.sunday:
            reached = True
            yield from _what_forbids(about, way, start_on, week)
        start_on -= timedelta(days=1)
    if not reached:
        yield _nothing_is_early_enough(about, way)


def _nothing_is_early_enough(about: CropTimes, way: Way) -> Forbidden:
    """Why even the first day of planning is too late, or frost and cold soil keep it waiting."""
    set_out_on = _set_out_if_raised(about, way, about.begin)
    course = course_of(about.crop, way, about.begin, about.conditions, set_out_on)
    if isinstance(course, Refused) and course.by in {RefusedBy.NOT_YET, RefusedBy.SOIL}:
        return _refused(course)
    ripe = likely_ripe(way, about.begin, set_out_on, about.conditions.pace)
    return Forbidden(UnmetKind.TOO_EARLY, _begins_too_late(about, ripe))


def _begins_too_late(about: CropTimes, ripe: date) -> str:
    if about.begin > about.workdays.wish.first:
        return (
            f"planned on {about.begin}, it is too late to start it; started that day it would be "
            f"ripe about {ripe}"
        )
    return f"started on the season's first day, {about.begin}, it would be ripe about {ripe}"


def _set_out_if_raised(about: CropTimes, way: Way, start_on: date) -> date | None:
    """The day a start would be set out, whether somebody is there or not."""
    if not isinstance(way, RaisedIndoors):
        return None
    middle = start_on + timedelta(days=round(way.days_indoors.middle))
    return set_out_day(about.workdays, way, start_on) or middle


def _what_forbids(about: CropTimes, way: Way, start_on: date, week: Week) -> Iterator[Forbidden]:
    wish = about.workdays.wish
    if wish.is_away(start_on):
        yield Forbidden(UnmetKind.AWAY, _NOBODY_STARTS)
        return
    set_out_on = _set_out_if_raised(about, way, start_on)
    course = course_of(about.crop, way, start_on, about.conditions, set_out_on)
    if isinstance(course, Refused):
        yield _refused(course)
    elif set_out_on is not None and wish.is_away(set_out_on):
        yield Forbidden(UnmetKind.AWAY, "nobody is there to set it out")
    elif course.time.ends < week.sunday:
        yield _over_before(about, course)


def _over_before(about: CropTimes, course: Course) -> Forbidden:
    """What ends a course before a week it would otherwise feed."""
    closes = about.conditions.limits.harvest_closes(course.ripe.likely)
    by_limit = closes is not None and closes[0] <= course.time.ends
    kind = UnmetKind.HEAT if by_limit else UnmetKind.TOO_LATE
    return Forbidden(kind, f"it is over by {course.time.ends} ({course.time.why_ends})")


def _refused(course: Refused) -> Forbidden:
    return Forbidden(_KINDS[course.by], _in_words(course), course.by)


def _in_words(refused: Refused) -> str:
    match refused.by:
        case RefusedBy.NOT_YET:
            return f"it would have to go out too early ({refused.why})"
        case RefusedBy.FROST:
            return f"it would be ripe too late ({refused.why})"
        case RefusedBy.NO_TIME:
            return f"it cannot stand outdoors at all ({refused.why})"
        case RefusedBy.SOIL:
            return f"it would have to be sown when {refused.why}"
        case RefusedBy.HEAT:
            return f"it would be ripe when {refused.why}"


def _feeding_days(crop: Crop) -> int:
    """How long after it is ripe a sowing can still feed a week."""
    match crop.habit:
        case Once(hold_days=hold):
            return int(hold.middle)
        case Store(hold_days=hold, store_days=store):
            return int(hold.middle + store.middle)
        case Pick(picking_days=picking):
            return int(picking.middle)
        case Cut(cuts=cuts, regrow_days=regrow):
            return int(cuts.middle * regrow.middle)


def _no_day(crop: Crop, week: Week) -> Reason:
    return Reason(
        UnmetKind.BETWEEN,
        f"No garden day gives {crop.name} that is ready in {week}: it is ripe between two of "
        "them, or between two cuts.",
        "add a garden day, or a variety with other days to maturity.",
    )


_REMEDIES = {
    UnmetKind.FROST: "grow it in a heated house, or want a crop that stands frost.",
    UnmetKind.AWAY: "ask somebody to do it while you are away, or take the week out of the target.",
    UnmetKind.TOO_LATE: "end the target earlier, grow a quicker variety, or cover the bed.",
    UnmetKind.HEAT: "shade it, choose a variety that stands heat, or want another crop then.",
}


def _remedy(forbidden: Forbidden, about: CropTimes) -> str:
    if forbidden.kind in _REMEDIES:
        return _REMEDIES[forbidden.kind]
    raised = any(isinstance(way, RaisedIndoors) for way in about.crop.ways)
    seed = about.crop.start_from is StartFrom.SEED
    can_be_raised = seed and not raised and about.crop.unit.name != "roots"
    indoors = ", or raise plants indoors" if can_be_raised else ""
    if forbidden.kind is UnmetKind.SOIL:
        return f"warm or shade the soil, or want it at another time{indoors}."
    if forbidden.by is RefusedBy.NOT_YET:
        if about.crop.frost.hardiness.killed_by_frost:
            return f"a cover (cover_weeks) or a higher freeze_risk lets it out earlier{indoors}."
        return f"want it later, or grow a quicker variety{indoors}."
    if about.begin > about.workdays.wish.first:
        return "take it as lost, or buy it that week."
    return "begin the season (from) earlier, or want it later."
