"""Weeks are those of ISO 8601: Monday to Sunday, numbered by their Thursday."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.terms import Week, days_between, week_of

_DAYS = st.dates(date(1900, 1, 1), date(2200, 12, 31))
# Years of 53 weeks by ISO 8601: those that begin on a Thursday, and leap years that begin on a
# Wednesday.
_LONG_YEARS = (2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048)


@given(_DAYS)
def test_a_day_lies_in_the_week_the_calendar_says(day: date) -> None:
    week = week_of(day)
    assert (week.year, week.number) == day.isocalendar()[:2]
    assert week.monday.isoweekday() == 1
    assert week.sunday.isoweekday() == 7
    assert week.monday <= day <= week.sunday
    assert day in week.days
    assert len(week.days) == 7


@given(_DAYS)
def test_a_week_belongs_to_the_year_of_its_thursday(day: date) -> None:
    week = week_of(day)
    assert week.thursday.year == week.year
    assert week.thursday.isoweekday() == 4


@given(_DAYS, st.integers(-600, 600))
def test_weeks_are_counted_on_and_back_across_new_year(day: date, weeks: int) -> None:
    assert week_of(day).after(weeks) == week_of(day + timedelta(weeks=weeks))


@given(_DAYS, _DAYS)
def test_the_order_of_weeks_is_the_order_of_time(one: date, other: date) -> None:
    if week_of(one) < week_of(other):
        assert one < other


@pytest.mark.parametrize("year", _LONG_YEARS)
def test_a_long_year_has_a_week_53(year: int) -> None:
    assert week_of(date(year, 12, 31)) == Week(year, 53)
    assert Week(year, 52).after(1) == Week(year, 53)
    assert Week(year, 53).after(1) == Week(year + 1, 1)


def test_71_years_in_400_are_long() -> None:
    long = [year for year in range(2000, 2400) if week_of(date(year, 12, 28)).number == 53]
    assert len(long) == 71
    assert set(_LONG_YEARS) <= set(long)


def test_new_years_day_2027_is_a_friday_of_the_year_before() -> None:
    assert str(week_of(date(2027, 1, 1))) == "2026-W53"
    assert str(week_of(date(2027, 1, 4))) == "2027-W01"
    assert str(week_of(date(2027, 5, 10))) == "2027-W19"


def test_weeks_run_from_one_to_another_both_included() -> None:
    weeks = list(Week(2026, 52).until(Week(2027, 2)))
    assert [str(week) for week in weeks] == ["2026-W52", "2026-W53", "2027-W01", "2027-W02"]
    assert list(Week(2027, 2).until(Week(2027, 1))) == []


def test_days_run_from_one_to_another_both_included() -> None:
    days = list(days_between(date(2028, 2, 28), date(2028, 3, 1)))
    assert days == [date(2028, 2, 28), date(2028, 2, 29), date(2028, 3, 1)]
    assert list(days_between(date(2028, 3, 1), date(2028, 2, 28))) == []
