"""Ground may be kept for years that are late (rules §39), over thirty made-up years.

Twenty-nine springs have 20 degrees on every day. In 1994, the first of the five years that stand
for all, every day has less, and heat comes more slowly.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

import pytest

from planner.climate import Climate
from planner.scheduling import crop_candidates
from planner.scheduling.offers.crop_offers import CropOffers
from planner.scheduling.question import Question
from planner.scheduling.starts.years import in_years
from planner.terms import Week, week_of
from tests.trial.records import plan_of, recorded_garden

_WANTED = ("radish", "10 roots", "2027-05-31", "2027-07-25")


@dataclass(frozen=True)
class _Spring:
    """One start, its harvest by the likely dates and in the late year, and its offers."""

    offers: CropOffers
    numbers: tuple[int, ...]
    likely: dict[Week, date]
    late: dict[Week, date]

    def weeks(self, year: int, number: int) -> set[Week]:
        gives = self.offers.years[year][number]
        return {week for week, each in zip(self.offers.weeks, gives, strict=True) if each > 0}


@cache
def _spring(late_degc: float) -> _Spring:
    garden = recorded_garden(plan_of(_WANTED), lambda day: late_degc if day.year == 1994 else 20.0)
    (found,) = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    (offers,) = Question(garden, {"radish": found}).offers
    start = next(
        number
        for number, one in enumerate(found.candidates)
        if one.course.ripe.likely >= date(2027, 6, 9)
    )
    one = found.candidates[start]
    numbers = [number for number in range(len(offers)) if offers.starts[number] == start]
    late, *_ = in_years(one, found.years)
    return _Spring(offers, tuple(numbers), one.days, late.days)


def _cleared(spring: _Spring, number: int) -> date:
    return date.fromordinal(int(spring.offers.leaves[number]))


def test_one_offer_keeps_the_ground_until_the_late_year_is_ripe() -> None:
    spring = _spring(13.0)
    last = max(spring.likely.values())
    first_late = min(spring.late.values())
    assert last < first_late <= last + timedelta(weeks=3)
    kept = [number for number in spring.numbers if _cleared(spring, number) > last]
    assert kept
    by_day = {_cleared(spring, number): number for number in kept}
    assert first_late in by_day
    # It feeds in the late year what it would have lost.
    number = by_day[first_late]
    assert week_of(first_late) in spring.weeks(0, number)
    sooner = min(spring.numbers, key=lambda one: _cleared(spring, one))
    assert spring.weeks(0, sooner) == set()
    # In the other years it feeds what the likely dates say.
    assert spring.weeks(1, number) == set(spring.likely)


@pytest.mark.parametrize("late_degc", [13.0, 12.0])
def test_but_in_no_more_than_three_weeks_beyond_its_likely_end(late_degc: float) -> None:
    spring = _spring(late_degc)
    last = max(spring.likely.values())
    later = {_cleared(spring, number) for number in spring.numbers} - set(spring.likely.values())
    assert 1 <= len(later) <= 3
    assert all(day > last for day in later)
    assert later <= set(spring.late.values())
    assert len({week_of(day) for day in later}) == len(later)
