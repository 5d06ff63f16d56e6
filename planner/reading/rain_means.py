"""Rain of a daily record: what an average month brings, where enough days tell it."""

from calendar import monthrange
from collections import defaultdict
from collections.abc import Mapping
from datetime import date
from statistics import fmean

from planner.garden import MonthlyDepth, NotTold
from planner.terms import Source

# The most rain of a day ever measured is less (1825 mm; from memory).
_BEYOND_MM = 2000.0
# So many days must tell of each month, a month's worth over all years; from memory.
_FEWEST_DAYS = 28
# Of a long record the latest thirty years count (§27).
_MOST_YEARS = 30


def rain_by_month(by_day_mm: Mapping[int, float], source: Source) -> MonthlyDepth | NotTold:
    """Mean depths of twelve months; not told where a month has too few days with a value.

    `by_day_mm` goes by ordinal day. Values that cannot be are left out.
    """
    by_month: dict[int, list[float]] = defaultdict(list)
    days = {date.fromordinal(day): depth for day, depth in by_day_mm.items()}
    last = max((day.year for day in days), default=0)
    for day, depth in days.items():
        if day.year > last - _MOST_YEARS and 0 <= depth <= _BEYOND_MM:
            by_month[day.month].append(depth)
    if any(len(by_month[month]) < _FEWEST_DAYS for month in range(1, 13)):
        return NotTold()
    # A common year; a leap day more in February is lost in the rounding of rain.
    return MonthlyDepth(
        tuple(fmean(by_month[month]) * monthrange(2023, month)[1] for month in range(1, 13)),
        source,
    )
