"""Monthly curves: a smooth year of days that keeps twelve monthly means.

The curve is a parabola within each month, whose value and slope run on into the next month and
across New Year: the slope of a periodic cubic spline through the running sum of the year, hence
each monthly mean is kept exactly. With v the value at a month's start, w at its end, y its mean
and u the share of the month gone by,

    T(u) = v + b u + c u^2,   b = 6 y - 4 v - 2 w,   c = w - v - b

and equal slopes on both sides of a month's start, h being the days of a month, ask for

    v[i-1]/h[i-1] + 2 v[i] (1/h[i-1] + 1/h[i]) + v[i+1]/h[i] = 3 (y[i-1]/h[i-1] + y[i]/h[i]).

Two days in a row never differ by more than 6/59 (about a tenth) of the largest step between two
months in a row. Between months that jump up and down the curve may swing beyond the means.

Source: spline algebra, worked out here (derived); that the running sum is what to put the spline
through is common practice, from memory.
"""

import calendar
from collections.abc import Sequence
from datetime import date

MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
_MONTHS = 12
_LEAP_DAY = 31 + 28  # days before 29 February
# Each sweep leaves less than a quarter of the error; 40 leave nothing a float could hold.
_SWEEPS = 40


def daily_curve(monthly: Sequence[float]) -> tuple[float, ...]:
    """The 365 days of a common year, 1 January first, from twelve monthly means.

    Unit as given. Each month's days average to its mean (to rounding).

    Raises:
        ValueError: there are not twelve means.
    """
    if len(monthly) != _MONTHS:
        message = f"a year has twelve monthly means, not {len(monthly)}"
        raise ValueError(message)
    starts = _month_starts(monthly)
    return tuple(
        value
        for month in range(_MONTHS)
        for value in _days_of_month(
            starts[month], starts[(month + 1) % _MONTHS], monthly[month], MONTH_DAYS[month]
        )
    )


def day_of_curve(day: date) -> int:
    """Where a date stands in a daily curve: 0 on 1 January, 364 on 31 December.

    29 February takes the value of 28 February, so the mean of a leap February is kept only
    nearly: it may be off by a twenty-ninth of how far 28 February lies from the mean.
    """
    index = day.timetuple().tm_yday - 1
    return index - 1 if calendar.isleap(day.year) and index >= _LEAP_DAY else index


def _month_starts(monthly: Sequence[float]) -> list[float]:
    """The curve's value where each month begins, by sweeps over the twelve equations."""
    weights = [1 / days for days in MONTH_DAYS]
    starts = [(monthly[month - 1] + monthly[month]) / 2 for month in range(_MONTHS)]
    for _ in range(_SWEEPS):
        for month in range(_MONTHS):
            before, after = weights[month - 1], weights[month]
            asked = 3 * (monthly[month - 1] * before + monthly[month] * after)
            beside = starts[month - 1] * before + starts[(month + 1) % _MONTHS] * after
            starts[month] = (asked - beside) / (2 * (before + after))
    return starts


def _days_of_month(start: float, end: float, mean: float, days: int) -> list[float]:
    """The mean of the month's parabola over each of its days."""
    rise = 6 * mean - 4 * start - 2 * end
    bend = end - start - rise
    values = []
    for day in range(days):
        first, last = day / days, (day + 1) / days
        squares = (first * first + first * last + last * last) / 3
        values.append(start + rise * (first + last) / 2 + bend * squares)
    return values
