"""Years: a few past years stand for all, and sowings are weighed in each of them (rules §40)."""

from dataclasses import replace
from datetime import date

from planner.garden import Pick
from planner.growth import Paces, begun_course, killed_on
from planner.scheduling.starts.candidate import Candidate, CropTimes, candidate_of
from planner.scheduling.starts.crop_years import (
    CropYears,
    YearOfCrop,
    crop_years,
    evenly,
    open_days_only,
)

# So many past years, taken evenly from those on record, stand for all of them.
_MOST_YEARS = 5


def few_years(usual: CropTimes, paces: Paces) -> CropYears:
    """A crop in a few past years; in none where no record tells them."""
    known = paces.temperatures
    past = len(known.past) if known is not None else 0
    return crop_years(usual, paces, evenly(_MOST_YEARS, past))


def in_years(candidate: Candidate, crop: CropYears) -> list[Candidate]:
    """The same start in each of the years, up to the night that kills it."""
    return [_in_year(candidate, crop, year) for year in crop.years]


def _in_year(candidate: Candidate, crop: CropYears, year: YearOfCrop) -> Candidate:
    was = candidate.course
    course = begun_course(was.crop, was.way, was.start_on, was.set_out_on, year.about.conditions)
    there = candidate_of(year.about, course)
    if isinstance(was.crop.habit, Pick):
        there = open_days_only(there, year, date.max)
    stands = crop.stands_from(was.enters_on, course.set_out_on or course.emerges_on)
    killed = killed_on(year.deadly, (stands, max(there.days.values(), default=stands)))
    return replace(there, days={week: day for week, day in there.days.items() if day <= killed})
