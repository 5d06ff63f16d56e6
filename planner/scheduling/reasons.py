"""Why a week stays unmet, in the grower's words, with what would help."""

import math
from datetime import timedelta

from planner.garden import Crop
from planner.growth import Course
from planner.scheduling.candidate import Candidate
from planner.scheduling.draft import CropDraft
from planner.scheduling.unmet import Reason, UnmetKind
from planner.scheduling.workdays import Workdays
from planner.terms import Week

# A course that enters the ground this long after frost allowed it was held up by something else.
_NEAR_OPENING_DAYS = 10
_HARVEST_CLOSED_DAYS = 240


def no_candidate_reason(draft: CropDraft, week: Week, workdays: Workdays) -> Reason:
    """Why no sowing at all could feed a week."""
    crop = draft.crop
    if not workdays.in_week(week) and any(workdays.wish.is_away(day) for day in week.days):
        return Reason(
            UnmetKind.AWAY,
            f"Nobody is there to harvest in {week}.",
            "ask somebody to pick that week, or take the week out of the target.",
        )
    closed = draft.limits.why_not_harvested(week.days[3])
    if closed:
        return Reason(
            UnmetKind.HEAT,
            f"{crop.label} is not harvested then: {closed}.",
            "shade it, choose a variety that stands heat, or want another crop then.",
        )
    if draft.earliest is None:
        return Reason(
            UnmetKind.FROST,
            f"No {crop.name} started while the season lasts ripens before frost ends it.",
            "grow it under cover, choose a quicker variety, or lengthen the season.",
        )
    if not draft.candidates or week < min(min(one.days) for one in draft.candidates):
        return _too_early(draft, draft.earliest, workdays)
    last = max(draft.candidates, key=lambda one: (max(one.days), one.course.start_on))
    if week > max(last.days):
        return _too_late(crop, last)
    return _between(draft, week, workdays)


def _too_early(draft: CropDraft, earliest: Course, workdays: Workdays) -> Reason:
    return Reason(
        UnmetKind.TOO_EARLY,
        f"The first {draft.crop.name}, started {earliest.start_on}, is ripe about "
        f"{earliest.ripe.likely}: {_what_held_up(draft, earliest, workdays)}.",
        "start the season earlier, raise plants indoors, or use a cover and a higher freeze_risk.",
    )


def _what_held_up(draft: CropDraft, earliest: Course, workdays: Workdays) -> str:
    """What kept a crop's earliest course from an earlier start."""
    if (earliest.enters_on - earliest.time.opens).days <= _NEAR_OPENING_DAYS:
        return earliest.time.why_opens
    limits = draft.limits
    cold = limits.why_not_sown(earliest.start_on - timedelta(days=_NEAR_OPENING_DAYS))
    if cold:
        return f"before that {cold}"
    for days in range(1, _HARVEST_CLOSED_DAYS):
        closed = limits.why_not_harvested(earliest.ripe.likely - timedelta(days=days))
        if closed:
            return f"started earlier it would be ripe when {closed}"
    return f"nothing is started before this plan begins (season from {workdays.wish.first})"


def _between(draft: CropDraft, week: Week, workdays: Workdays) -> Reason:
    crop = draft.crop
    before = [
        (max(earlier), one.course.start_on)
        for one in draft.candidates
        if (earlier := [served for served in one.days if served < week])
    ]
    after = [
        (min(later), one.course.start_on)
        for one in draft.candidates
        if (later := [served for served in one.days if served > week])
    ]
    words = []
    if before:
        words.append(f"started {max(before)[1]} it last feeds {max(before)[0]} before that")
    if after:
        words.append(f"started {min(after)[1]} it feeds {min(after)[0]} next")
    why = "no garden day gives one that is ready then"
    remedy = "add a garden day, or a variety with other days to maturity."
    away = [
        time
        for time in workdays.wish.away
        if before and after and max(before)[1] <= time.last and time.first <= min(after)[1]
    ]
    if away:
        why = f"nobody is there to start it between {away[0].first} and {away[0].last}"
        remedy = "ask somebody to start it while you are away, or take the week out of the target."
    return Reason(
        UnmetKind.BETWEEN,
        f"No {crop.name} is ready in {week}: {', '.join(words)}; {why}.",
        remedy,
    )


def _too_late(crop: Crop, last: Candidate) -> Reason:
    course = last.course
    return Reason(
        UnmetKind.TOO_LATE,
        f"The last {crop.name}, started {course.start_on}, feeds until {max(last.days)}: "
        f"{course.time.why_ends}.",
        "end the target earlier, cover the bed, or store some of the harvest before.",
    )


def no_ground_reason(draft: CropDraft, week: Week, lacking: float) -> Reason:
    """Why a week stays short although a sowing could feed it."""
    crop = draft.crop
    per_plant = crop.gives.middle
    flows = [one.flow[week] for one in draft.serving(week) if week in one.flow]
    if flows:
        per_plant = max(flows)
    plants = math.ceil(lacking / per_plant)
    area_m2 = plants * (crop.ground.spacing_um / 1e6) ** 2
    return Reason(
        UnmetKind.NO_GROUND,
        f"Every bed deep and light enough for {crop.name} is full while it would grow; about "
        f"{area_m2:.2g} square metres ({area_m2 / 0.09290304:.2g} sq ft) are missing.",
        "add ground, want less of a crop that stands long, or buy that week.",
    )


def partial_reason(crop: Crop, week: Week) -> Reason:
    """Why the first or last week of a flow is short."""
    return Reason(
        UnmetKind.COMING_IN,
        f"{crop.label} is only coming into harvest or ending in {week}.",
        "begin the target a week later, or start the season earlier.",
    )


def too_little_reason(crop: Crop, week: Week) -> Reason:
    """Why a week that nearly has enough gets no sowing of its own."""
    return Reason(
        UnmetKind.TOO_LITTLE,
        f"Less than a tenth of the {crop.name} wanted is lacking in {week}.",
        "take it as met, or want a little less.",
    )
