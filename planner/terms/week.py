"""Weeks: the grower's unit of harvest, numbered as in ISO 8601 (Monday to Sunday)."""

from collections.abc import Iterator
from datetime import date, timedelta
from typing import NamedTuple


class Week(NamedTuple):
    """An ISO week; its order is the order of time."""

    year: int
    number: int

    @property
    def monday(self) -> date:
        """The first day of the week."""
        return date.fromisocalendar(self.year, self.number, 1)

    @property
    def thursday(self) -> date:
        """The day that gives the week to its year, and here to its month."""
        return date.fromisocalendar(self.year, self.number, 4)

    @property
    def sunday(self) -> date:
        """The last day of the week."""
        return date.fromisocalendar(self.year, self.number, 7)

    @property
    def days(self) -> tuple[date, ...]:
        """The seven days."""
        return tuple(days_between(self.monday, self.sunday))

    def after(self, weeks: int) -> "Week":
        """The week `weeks` later (earlier when negative)."""
        return week_of(self.monday + timedelta(weeks=weeks))

    def until(self, last: "Week") -> Iterator["Week"]:
        """Every week from this one to `last`, both included."""
        mondays = range(self.monday.toordinal(), last.monday.toordinal() + 1, 7)
        return (week_of(date.fromordinal(monday)) for monday in mondays)

    def __str__(self) -> str:
        return f"{self.year}-W{self.number:02d}"


def week_of(day: date) -> Week:
    """The ISO week that holds `day`."""
    year, number, _ = day.isocalendar()
    return Week(year, number)


def days_between(first: date, last: date) -> Iterator[date]:
    """Every day from `first` to `last`, both included."""
    for ordinal in range(first.toordinal(), last.toordinal() + 1):
        yield date.fromordinal(ordinal)
