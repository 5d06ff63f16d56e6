"""A time of the calendar year for which a weather file has no value in any year."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from planner.terms import day_words

# The average day is a mean over fifteen days of the calendar and all years: without a value in
# fifteen days there is none.
_LONGEST_GAP_DAYS = 15
_COMMON_YEAR = 2021  # as is the year after it
_YEAR_DAYS = 365


@dataclass(frozen=True, slots=True)
class CalendarGap:
    """A stretch of the calendar year, told as "1 November to 31 March"."""

    first: date
    days: int

    def __str__(self) -> str:
        last = self.first + timedelta(days=self.days - 1)
        return f"{day_words(self.first)} to {day_words(last)}"


def calendar_gap(ordinals: Iterable[int]) -> CalendarGap | None:
    """The longest stretch of fifteen days or more without a value; it may cross New Year."""
    told = sorted({_day_of_year(ordinal) for ordinal in ordinals})
    following = [*told[1:], told[0] + _YEAR_DAYS] if told else []
    gaps = [(later - day - 1, day) for day, later in zip(told, following, strict=True)]
    days, before = max(gaps, default=(0, 0))
    if days < _LONGEST_GAP_DAYS:
        return None
    return CalendarGap(date(_COMMON_YEAR, 1, 1) + timedelta(days=before + 1), days)


def _day_of_year(ordinal: int) -> int:
    """Counted from 0 in a year of 365 days; 29 February counts as 28 February."""
    day = date.fromordinal(ordinal)
    of_month = min(day.day, 28) if day.month == 2 else day.day
    return (date(_COMMON_YEAR, day.month, of_month) - date(_COMMON_YEAR, 1, 1)).days
