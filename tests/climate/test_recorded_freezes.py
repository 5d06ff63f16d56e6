"""Freeze years read off a record: where it never freezes, hardly freezes, or was hardly kept."""

import math
from collections.abc import Callable
from datetime import date
from itertools import pairwise

import pytest

from planner.climate import Climate, NoUsableYear, freeze_record_of
from planner.garden import DailyWeather, FreezesOnRecord, NoTemperatures, Site
from planner.terms import Source, days_between

_MADE_UP = Source("memory")
_NORTH, _SOUTH = 30.0, -30.0


def _record(
    low_on: Callable[[date], float], first: date = date(1995, 1, 1), last: date = date(2024, 12, 31)
) -> DailyWeather:
    lows = tuple(low_on(day) for day in days_between(first, last))
    return DailyWeather(first, lows, tuple(low + 10 for low in lows), _MADE_UP)


def _climate(weather: DailyWeather, latitude_deg: float) -> Climate:
    return Climate(Site("Here", latitude_deg, FreezesOnRecord(_MADE_UP), NoTemperatures(), weather))


def _mild(midwinter: int) -> Callable[[date], float]:
    """A freeze on the 10th of the month of midwinter in every fourth year."""
    return lambda day: -1.0 if (day.month, day.day, day.year % 4) == (midwinter, 10, 0) else 8.0


@pytest.mark.parametrize("latitude_deg", [_NORTH, _SOUTH])
def test_a_record_kept_all_through_without_a_freeze_never_freezes(latitude_deg: float) -> None:
    assert freeze_record_of(_record(lambda _: 8.0), latitude_deg).never


@pytest.mark.parametrize("latitude_deg", [_NORTH, _SOUTH])
def test_a_record_with_gaps_in_every_spring_and_fall_is_not_said_to_never_freeze(
    latitude_deg: float,
) -> None:
    gaps = {6, 9} if latitude_deg > 0 else {12, 3}
    record = freeze_record_of(
        _record(lambda day: math.nan if day.month in gaps else -5.0), latitude_deg
    )
    assert (record.spring, record.fall) == (NoUsableYear(), NoUsableYear())
    assert not record.never


def test_one_side_kept_without_a_freeze_is_not_enough_for_never() -> None:
    record = freeze_record_of(_record(lambda day: math.nan if day.month == 9 else 8.0), _NORTH)
    assert record.fall == NoUsableYear()
    assert not record.never


def test_of_a_record_that_was_kept_badly_later_the_latest_good_years_count() -> None:
    bad = _record(
        lambda day: math.nan if day.year > 1999 and day.month in {6, 9} else 8.0,
        last=date(2035, 12, 31),
    )
    record = freeze_record_of(bad, _NORTH)
    assert not isinstance(record.spring, NoUsableYear)
    assert record.spring.years == 5


@pytest.mark.parametrize(("latitude_deg", "month"), [(_NORTH, 1), (_SOUTH, 7)])
def test_where_it_hardly_freezes_each_freeze_year_goes_on_into_the_next(
    latitude_deg: float, month: int
) -> None:
    years = _climate(_record(_mild(month)), latitude_deg).freeze_years(
        date(2027, 1, 1), date(2028, 12, 31)
    )
    assert not any(year.has_spring_half for year in years)
    assert [year.spring_half for year in years] == [date(y, month, 1) for y in range(2025, 2030)]
    for year, following in pairwise(years):
        assert year.fall_half == following.spring_half
