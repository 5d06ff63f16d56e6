"""Workdays: the garden days of a season, and the nearest one to any day."""

from bisect import bisect_left
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from planner.garden import SeasonWish
from planner.terms import Week, days_between

_BEYOND_DAYS = 430


@dataclass(frozen=True)
class Workdays:
    """Days on which garden work may fall, from the season's first day on."""

    wish: SeasonWish

    @cached_property
    def _days(self) -> list[date]:
        last = self.wish.last + timedelta(days=_BEYOND_DAYS)
        return [day for day in days_between(self.wish.first, last) if self.wish.is_garden_day(day)]

    def between(self, first: date, last: date) -> list[date]:
        """Garden days from first to last, both included."""
        days = self._days
        return days[bisect_left(days, first) : bisect_left(days, last + timedelta(days=1))]

    def on_or_after(self, day: date) -> date | None:
        """The first garden day not before `day`."""
        index = bisect_left(self._days, day)
        return self._days[index] if index < len(self._days) else None

    def usable(self, first: date, last: date) -> list[date]:
        """Garden days of a span; where it has none, the days on which somebody is there."""
        days = self.between(first, last)
        return days or [day for day in days_between(first, last) if not self.wish.is_away(day)]

    def in_week(self, week: Week) -> list[date]:
        """The garden days of a week."""
        return self.between(week.monday, week.sunday)
