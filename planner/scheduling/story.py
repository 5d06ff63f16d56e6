"""Why each date of a sowing is what it is, in sentences."""

import math
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from planner.garden import (
    CountedFrom,
    Cut,
    DirectSown,
    Once,
    Pick,
    RaisedIndoors,
    SharedGround,
    SharingPattern,
    StartFrom,
    Store,
)
from planner.growth import Course
from planner.scheduling.sowing import HarvestDay
from planner.terms import Figure, amount_words, week_of


class Chosen(StrEnum):
    """Why this start was chosen among those that serve its week."""

    BEST = "the latest such start that has it ready for its week (§12)"
    FOR_GROUND = "a start that serves its week and for which ground is free (§12)"


_FAR_OFF_DAYS = 250
_PART_OF_ITS_HARVEST = 0.9


@dataclass(frozen=True, slots=True)
class Made:
    """What a sowing was made of and for: its course, size, harvest and end.

    A guest has the pair it stands by. `kept_until`: until when its ground is its own.
    """

    course: Course
    plants: int
    harvest: tuple[HarvestDay, ...]
    clear_on: date
    chosen: Chosen
    kept_until: date
    pair: SharedGround | None = None


def why_sowing(made: Made) -> tuple[str, ...]:
    """The rule, the figures and the sources behind a sowing's dates and size."""
    course = made.course
    sentences = [
        _why_start(made),
        _why_shows(course),
        _why_outdoors(course),
        _why_ripe(course),
        _why_fall(course),
        _why_harvest(made),
        _why_size(made),
        _why_shared(made),
    ]
    return tuple(sentence for sentence in sentences if sentence)


def _days(figure: Figure) -> str:
    return f"{figure} ({figure.source})"


def _why_start(made: Made) -> str:
    course = made.course
    way = course.way
    if isinstance(way, RaisedIndoors):
        weeks = way.days_indoors
        return (
            f"Sown indoors on {course.start_on}, {made.chosen}, to stand {weeks.low / 7:g} to "
            f"{weeks.high / 7:g} weeks ({weeks.source}) before setting out on "
            f"{course.set_out_on}; hardening off takes the last week (TRADE-S22, §11)."
        )
    verb = "Sown" if course.crop.start_from is StartFrom.SEED else "Planted"
    return f"{verb} in place on {course.start_on}, {made.chosen}."


def _why_shows(course: Course) -> str:
    sown = isinstance(course.way, DirectSown) and course.crop.start_from is StartFrom.SEED
    thinned = "; thinning follows a week later" if sown else ""
    return f"The first green shows about {course.emerges_on}: {course.emerges_by}{thinned}."


def _why_outdoors(course: Course) -> str:
    time = course.time
    opens = f"It may go into open ground from {time.opens}: {time.why_opens}"
    if (time.ends - course.ripe.likely).days > _FAR_OFF_DAYS:
        return f"{opens}; nothing ends it."
    return f"{opens}; it must be done by {time.ends}: {time.why_ends}."


def _why_ripe(course: Course) -> str:
    way = course.way
    counted = CountedFrom.SOWING.value
    if isinstance(way, RaisedIndoors):
        counted = way.counted_from.value
    elif isinstance(way, DirectSown) and course.crop.start_from is not StartFrom.SEED:
        counted = "planting"
    return (
        f"Likely ripe on {course.ripe.likely} (between {course.ripe.early} and "
        f"{course.ripe.late}): {way.days} from {counted} ({way.days.source}), counted "
        f"{course.counted} (§3{_rule(course)}).{_years_too_late(course)}"
    )


def _years_too_late(course: Course) -> str:
    ripe = course.ripe
    if not ripe.years_too_late:
        return ""
    return (
        f" In {ripe.years_too_late} of {ripe.years} past years it would not have been ripe in time."
    )


def _rule(course: Course) -> str:
    return ", §21" if course.counted.startswith("by heat") else ""


def _why_fall(course: Course) -> str:
    if course.fall_extra_days < 0.5:
        return ""
    return f"It ripens in fall, so {course.fall_extra_days:.0f} days are added (VCE-FALL, §9)."


def _why_harvest(made: Made) -> str:
    match made.course.crop.habit:
        case Once(hold_days=hold):
            how = f"It stands at usable size for {_days(hold)}"
        case Cut(cuts=cuts, regrow_days=regrow):
            how = f"It is cut {cuts.low:g} to {cuts.high:g} times, {_days(regrow)} apart"
        case Pick(picking_days=picking):
            how = f"It is picked over {_days(picking)}"
        case Store(store_days=store):
            how = f"It is lifted at once and keeps for {_days(store)}"
    first, last = made.harvest[0].day, made.harvest[-1].day
    span = f"on {first}" if first == last else f"from {first} to {last}"
    return f"{how}; it is harvested {span} and cleared on {made.clear_on} (§14).{_kept(made)}"


def _kept(made: Made) -> str:
    if made.kept_until <= made.clear_on or not made.course.ripe.years:
        return ""
    return f" Its ground is kept until {made.kept_until}, for years that bring it later (§39)."


def _why_size(made: Made) -> str:
    crop = made.course.crop
    weeks = sorted({week_of(one.day) for one in made.harvest})
    total = math.fsum(one.amount for one in made.harvest)
    span = f"{weeks[0]}" if len(weeks) == 1 else f"{weeks[0]} to {weeks[-1]}"
    many = "1 plant gives" if made.plants == 1 else f"{made.plants} plants give"
    each_cut = " and cut" if isinstance(crop.habit, Cut) else ""
    part = ""
    whole = made.plants * crop.gives.middle
    if not isinstance(crop.habit, Cut) and total < _PART_OF_ITS_HARVEST * whole:
        part = "; only part of its harvest falls into the time it is wanted and can be picked"
    return (
        f"{many} {amount_words(total, crop.unit)} for {span}, at {crop.gives} a plant{each_cut} "
        f"({crop.gives.source}){part}."
    )


_SHARES = {
    SharingPattern.BETWEEN: "between young plants of {host}, and is out before those close over it",
    SharingPattern.BENEATH: "beneath {host}, while that stands",
    SharingPattern.RELAY: "under {host} in its last weeks, and follows it",
}


def _why_shared(made: Made) -> str:
    pair = made.pair
    if pair is None:
        return ""
    where = _SHARES[pair.pattern].format(host=pair.host)
    return (
        f"It shares ground: it grows {where} ({pair.source}); its plants are counted at "
        f"{pair.yield_share:.0%} of a full harvest (§30)."
    )
