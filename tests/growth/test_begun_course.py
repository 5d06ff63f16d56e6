"""What stands goes on by its own real dates, also where it was begun before the season (§35).

Its dates are counted as those of a start that is only planned. Sites here are made up.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from planner.climate import Climate
from planner.garden import FreezeDates, FreezeDay, NoTemperatures, NoWeather, Site
from planner.growth import Conditions, Course, Pace, Paces, begun_course, course_of, outdoor_times
from planner.journal import Entry, Event, Journal
from planner.season import EarlierSeason, make_season
from planner.terms import UNITS, MonthDay, Place, Quantity, Source
from tests.growth.test_heat_growth import YEAR, crop_named, warm_summer
from tests.plan_text import MILD, bed, garden_of, own_crop, plan_head, target

_MADE_UP = Source("memory")
_LAST = date(2027, 12, 31)
_SEASON = date(2027, 1, 1)


def _by_calendar() -> Climate:
    freezes = (FreezeDay(MonthDay(*day), 11.7, _MADE_UP, _MADE_UP) for day in ((4, 15), (10, 20)))
    site = Site("Here", 47, FreezeDates(*freezes), NoTemperatures(), NoWeather())
    return Climate(site)


@pytest.mark.parametrize("climate", [_by_calendar(), warm_summer()], ids=["calendar", "heat"])
@pytest.mark.parametrize("days_before", [1, 60, 120, 300])
@pytest.mark.parametrize("days", [5, 30, 70])
def test_what_was_begun_before_a_season_ripens_as_if_the_season_had_begun_earlier(
    climate: Climate, days_before: int, days: int
) -> None:
    kale = crop_named("kale")
    start = _SEASON - timedelta(days=days_before)
    pace = Paces(climate, _SEASON, _LAST).of(kale)
    earlier = Paces(climate, _SEASON - timedelta(days=366), _LAST).of(kale)
    assert pace.ripe_on(start, days) == earlier.ripe_on(start, days)
    assert pace.day_after(start, days) == earlier.day_after(start, days)


def test_what_was_begun_years_ago_was_ripe_years_ago() -> None:
    """Days that nobody looks back on count in full."""
    pace = Paces(warm_summer(), _SEASON, _LAST).of(crop_named("kale"))
    start = _SEASON - timedelta(days=1000)
    assert pace.ripe_on(start, 60) == start + timedelta(days=60)


@pytest.mark.parametrize("last_year", ["", "heat"])
def test_a_sowing_of_last_year_that_the_journal_speaks_of_goes_on(last_year: str) -> None:
    """It ended the program where heat is counted; by the calendar it was never ripe."""
    means = (
        f"mean_high = {['60 degF'] * 12}\nmean_low = {['42 degF'] * 12}\n".replace("'", '"')
        if last_year
        else ""
    )
    kale = target("kale", "8 oz", "from = 2026-10-20", "to = 2026-12-20")
    days = "from = 2027-02-01\nto = 2027-12-31", "from = 2026-08-01\nto = 2026-12-31"
    before = garden_of(plan_head(MILD + means).replace(*days) + bed() + kale)
    old = make_season(before, before.wish.first, None, 0)
    told = tuple(
        Entry(date(2026, 12, 30), Event.LATE, one.id, Quantity(2, UNITS["days"]), "", Place("", 2))
        for one in old.sowings
    )
    wanted = target("kale", "8 oz", "from = 2027-05-20", "to = 2027-06-20")
    garden = garden_of(plan_head(MILD + means) + bed() + wanted)
    earlier = EarlierSeason(old.plan_id, old.sowings, old.names_given)
    season = make_season(garden, garden.wish.first, earlier, 0, journal=Journal(told))
    now = {one.id: one for one in season.sowings}
    for one in old.sowings:
        assert now[one.id].ripe.likely == one.ripe.likely + timedelta(days=2)


def _both(name: str, start: date, crops: str = "") -> tuple[Course, Course]:
    """The course of a crop's start in its first way as it is planned, and once it stands."""
    crop, climate = crop_named(name, crops), warm_summer()
    times = outdoor_times(crop, climate, 0.1, YEAR)
    conditions = Conditions(times, Paces(climate, YEAR[0], date(2028, 12, 31)).of(crop))
    planned = course_of(crop, crop.ways[0], start, conditions)
    assert isinstance(planned, Course)
    begun = begun_course(crop, planned.way, start, planned.set_out_on, conditions)
    return planned, begun


@pytest.mark.parametrize("name", ["radish", "carrot", "leaf lettuce", "garlic"])
def test_a_start_comes_up_and_is_counted_alike_before_and_after_it_is_begun(name: str) -> None:
    """Garlic's days have a winter in them, and are counted by the calendar either way (§10)."""
    planned, begun = _both(name, date(2027, 9, 1) if name == "garlic" else date(2027, 4, 20))
    assert begun.emerges_on == planned.emerges_on
    assert begun.counted == planned.counted
    assert begun.ripe == planned.ripe


def test_half_a_year_from_sowing_is_counted_by_the_calendar_after_weeks_indoors_too() -> None:
    """The published days have the winter in them, whatever part of them is spent indoors (§10)."""
    raised = own_crop(
        "slow leek",
        days_from_sowing="200 days",
        weeks_indoors="8 weeks",
        method="indoors",
        autumn_tolerance="overwinters",
    )
    leek = replace(crop_named("slow leek", raised), heat=crop_named("leek").heat)
    (way,) = leek.ways
    assert way.days.middle == 200
    climate = warm_summer()
    pace = Paces(climate, YEAR[0], date(2028, 12, 31)).of(leek)
    conditions = Conditions(outdoor_times(leek, climate, 0.1, YEAR), pace)
    start = date(2027, 3, 1)
    course = course_of(leek, way, start, conditions)
    assert isinstance(course, Course)
    assert course.counted == "by the calendar"
    assert course.ripe.likely == start + timedelta(days=200)


def test_no_day_before_what_is_counted_is_taken_from_the_other_end() -> None:
    pace = Pace(_by_calendar(), _SEASON, _LAST)
    long_ago = _SEASON - timedelta(days=2_000)
    assert pace.ripe_on(long_ago, 60) < _SEASON
