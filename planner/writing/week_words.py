"""Weeks as one says them: by their number, and by the days they have."""

from collections.abc import Iterable
from datetime import date

from planner.terms import Week, count_words, day_words, listed_words

_MOST_RUNS = 4


def span_words(first: Week, last: Week) -> str:
    """Weeks on end, like "2027-W18 to 2027-W20 (3 to 23 May)" or "2027-W28 (12 to 18 July)"."""
    weeks = str(first) if first == last else f"{first} to {last}"
    return f"{weeks} ({_days_words(first.monday, last.sunday)})"


def weeks_words(weeks: Iterable[Week]) -> str:
    """Any weeks, those on end told together; after four such runs only their number."""
    runs = _runs(sorted(set(weeks)))
    told = [span_words(run[0], run[-1]) for run in runs[:_MOST_RUNS]]
    more = sum(map(len, runs[_MOST_RUNS:]))
    return listed_words([*told, count_words(more, "more week")] if more else told)


def _days_words(first: date, last: date) -> str:
    one_month = (first.year, first.month) == (last.year, last.month)
    return f"{first.day if one_month else day_words(first)} to {day_words(last)}"


def _runs(weeks: list[Week]) -> list[list[Week]]:
    """Weeks in order, parted where one does not follow on the other."""
    runs: list[list[Week]] = []
    for week in weeks:
        if runs and runs[-1][-1].after(1) == week:
            runs[-1].append(week)
        else:
            runs.append([week])
    return runs
