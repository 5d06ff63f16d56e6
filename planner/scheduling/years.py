"""Years: what a crop meets in a few past years, so that its sowings do in more than the middle one.

The years are taken evenly from those on record. Frost is left to the odds here (§7); what differs
from year to year is how fast heat brings a crop on, and when heat ends its harvest.
"""

from collections.abc import Iterator
from dataclasses import replace

from planner.growth import Conditions, Paces, begun_course, harvest_limits
from planner.scheduling.candidate import Candidate, CropTimes, candidate_of

# So many past years stand for all of them.
_MOST_YEARS = 5


def years_of(about: CropTimes, paces: Paces) -> Iterator[CropTimes]:
    """A crop's times in a few past years; none where no record tells them."""
    past = about.conditions.pace.past
    known = paces.temperatures
    if not past or known is None:
        return
    many = min(_MOST_YEARS, len(past))
    for number in range(many):
        place = (2 * number + 1) * len(past) // (2 * many)
        limits = harvest_limits(about.crop, paces.climate, known.past[place])
        conditions = Conditions(about.conditions.times, past[place], limits)
        yield replace(about, conditions=conditions)


def in_years(candidate: Candidate, years: tuple[CropTimes, ...]) -> list[Candidate]:
    """The same start in each of the years."""
    course = candidate.course
    return [
        candidate_of(
            about,
            begun_course(
                course.crop, course.way, course.start_on, course.set_out_on, about.conditions
            ),
        )
        for about in years
    ]
