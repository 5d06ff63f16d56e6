"""A daily curve keeps its twelve monthly means and runs smoothly through the year."""

import math
from datetime import date
from itertools import pairwise
from statistics import fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.climate.monthly_curve import MONTH_DAYS, daily_curve, day_of_curve
from planner.terms import days_between

_monthly = st.lists(st.floats(-50, 50), min_size=12, max_size=12)
# A continental year, made up.
_CONTINENTAL = (-10.0, -7.0, 0.0, 8.0, 15.0, 20.0, 23.0, 21.0, 16.0, 9.0, 1.0, -7.0)


def _months(curve: tuple[float, ...]) -> list[tuple[float, ...]]:
    ends = [sum(MONTH_DAYS[: month + 1]) for month in range(12)]
    return [curve[end - days : end] for days, end in zip(MONTH_DAYS, ends, strict=True)]


@given(monthly=_monthly)
def test_each_month_keeps_its_mean(monthly: list[float]) -> None:
    curve = daily_curve(monthly)
    assert len(curve) == 365
    for days, mean in zip(_months(curve), monthly, strict=True):
        assert fmean(days) == pytest.approx(mean, abs=1e-9)


@given(monthly=_monthly)
def test_no_day_jumps_by_more_than_a_tenth_of_the_largest_step_of_months(
    monthly: list[float],
) -> None:
    """6/59 of it, at month ends, within months and over New Year alike."""
    curve = daily_curve(monthly)
    largest = max(abs(after - before) for before, after in pairwise([monthly[-1], *monthly]))
    for today, tomorrow in pairwise([curve[-1], *curve]):
        assert abs(tomorrow - today) <= largest * 6 / 59 + 1e-9


def test_month_ends_and_new_year_show_no_corner() -> None:
    """The change from day to day itself changes by under 0.05 degrees from one day to the next."""
    curve = daily_curve(_CONTINENTAL)
    steps = [after - before for before, after in pairwise([*curve, *curve[:2]])]
    assert max(abs(after - before) for before, after in pairwise(steps)) < 0.05


@given(mean=st.floats(-50, 50))
def test_a_year_of_one_temperature_stays_at_it(mean: float) -> None:
    assert daily_curve([mean] * 12) == pytest.approx([mean] * 365, abs=1e-9)


@pytest.mark.parametrize("warmest_day", range(0, 365, 30))
def test_the_monthly_means_of_a_sine_give_the_sine_back(warmest_day: int) -> None:
    """Mean 11 degrees C and swing 12, as in a temperate inland year; within 0.3."""
    sine = tuple(
        11 + 12 * math.cos(2 * math.pi * (day + 0.5 - warmest_day) / 365) for day in range(365)
    )
    curve = daily_curve([fmean(days) for days in _months(sine)])
    assert curve == pytest.approx(sine, abs=0.3)


@given(monthly=_monthly, factor=st.floats(-3, 3), shift=st.floats(-30, 30))
def test_another_unit_of_temperature_gives_the_same_curve(
    monthly: list[float], factor: float, shift: float
) -> None:
    curve = daily_curve(monthly)
    turned = daily_curve([mean * factor + shift for mean in monthly])
    assert turned == pytest.approx([value * factor + shift for value in curve], abs=1e-8)


def test_the_turning_days_lie_within_their_months() -> None:
    curve = daily_curve(_CONTINENTAL)
    assert 181 <= curve.index(max(curve)) < 212
    assert 0 <= curve.index(min(curve)) < 31


def test_every_date_has_its_day_and_29_february_that_of_28_february() -> None:
    common = [day_of_curve(day) for day in days_between(date(2027, 1, 1), date(2027, 12, 31))]
    assert common == list(range(365))
    leap = [day_of_curve(day) for day in days_between(date(2028, 1, 1), date(2028, 12, 31))]
    assert leap == [*range(59), 58, *range(59, 365)]


def test_a_leap_february_keeps_its_mean_nearly() -> None:
    """Off by a twenty-ninth of how far 28 February lies from the mean of its month."""
    curve = daily_curve(_CONTINENTAL)
    february = days_between(date(2028, 2, 1), date(2028, 2, 29))
    mean = fmean(curve[day_of_curve(day)] for day in february)
    assert mean - _CONTINENTAL[1] == pytest.approx((curve[58] - _CONTINENTAL[1]) / 29)
    assert mean == pytest.approx(_CONTINENTAL[1], abs=0.15)


def test_a_year_has_twelve_months() -> None:
    with pytest.raises(ValueError, match="twelve"):
        daily_curve([1.0] * 11)
