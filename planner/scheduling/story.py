"""Why each date of a sowing is what it is, in sentences."""

from planner.garden import CountedFrom, Cut, DirectSown, RaisedIndoors
from planner.growth import Course
from planner.scheduling.sowing import HarvestDay
from planner.terms import amount_words, week_of


def why_sowing(course: Course, plants: int, harvest: tuple[HarvestDay, ...]) -> tuple[str, ...]:
    """The rule, the figures and the sources behind a sowing's dates and size."""
    crop = course.crop
    sentences = [_why_start(course), _why_outdoors(course), _why_ripe(course)]
    if course.fall_extra_days >= 0.5:
        sentences.append(
            f"It ripens in fall, so {course.fall_extra_days:.0f} days are added (VCE-FALL, §9)."
        )
    weeks = sorted({week_of(one.day) for one in harvest})
    total = sum(one.amount for one in harvest)
    span = f"{weeks[0]}" if len(weeks) == 1 else f"{weeks[0]} to {weeks[-1]}"
    sentences.append(
        f"{'1 plant gives' if plants == 1 else f'{plants} plants give'} "
        f"{amount_words(total, crop.unit)} for {span}, at {crop.gives} a plant"
        f"{' and cut' if isinstance(crop.habit, Cut) else ''} ({crop.gives.source})."
    )
    return tuple(sentences)


def _why_start(course: Course) -> str:
    way = course.way
    if isinstance(way, RaisedIndoors):
        weeks = way.days_indoors
        return (
            f"Sown indoors on {course.start_on}, to stand {weeks.low / 7:g} to "
            f"{weeks.high / 7:g} weeks before setting out on {course.set_out_on} "
            f"({weeks.source}, §11): the latest start that serves its week (§12)."
        )
    return f"Sown in place on {course.start_on}, the latest garden day that serves its week (§12)."


def _why_outdoors(course: Course) -> str:
    return (
        f"It may go into open ground from {course.time.opens}: {course.time.why_opens}; "
        f"it must be done by {course.time.ends}: {course.time.why_ends}."
    )


def _why_ripe(course: Course) -> str:
    way = course.way
    days = way.days
    counted = way.counted_from if isinstance(way, RaisedIndoors) else CountedFrom.SOWING
    if isinstance(way, DirectSown) and course.crop.start_from.value != "seed":
        counted_word = "planting"
    else:
        counted_word = counted.value
    return (
        f"Likely ripe on {course.ripe.likely} (between {course.ripe.early} and "
        f"{course.ripe.late}): {days} from {counted_word} ({days.source}), counted by the "
        "calendar (§3)."
    )
