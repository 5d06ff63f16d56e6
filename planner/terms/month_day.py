"""Month-days: a day that comes back every year, such as a half-of-years date."""

import re
from datetime import date, timedelta
from typing import NamedTuple

_MONTH_DAY = re.compile(r"(\d{1,2})-(\d{1,2})")
_LEAP_YEAR = 2024
_COMMON_YEAR = 2023


class MonthDay(NamedTuple):
    """A month and a day without a year."""

    month: int
    day: int

    def in_year(self, year: int) -> date:
        """That day in `year`; 29 February falls on 1 March in a common year."""
        if (self.month, self.day) == (2, 29):
            return date(year, 2, 28) + timedelta(days=1)
        return date(year, self.month, self.day)

    def days_until(self, other: "MonthDay") -> int:
        """Days from this one to another, the shorter way round; negative for one before it."""
        apart = (other.in_year(_COMMON_YEAR) - self.in_year(_COMMON_YEAR)).days
        return (apart + 182) % 365 - 182

    def __str__(self) -> str:
        return f"{self.month:02d}-{self.day:02d}"


def read_month_day(text: str) -> MonthDay | None:
    """Read "03-28"; None when no year has such a day."""
    match = _MONTH_DAY.fullmatch(text.strip())
    if match is None:
        return None
    try:
        day = date(_LEAP_YEAR, int(match[1]), int(match[2]))
    except ValueError:
        return None
    return MonthDay(day.month, day.day)
