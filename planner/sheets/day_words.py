"""Days and weeks in words that cannot be misread: "Wed 5 May"."""

from datetime import date

from planner.terms import Week


def day_words(day: date) -> str:
    """A day without its year, such as "Wed 5 May"."""
    return f"{day:%a} {day.day} {day:%b}"


def dated_words(day: date) -> str:
    """A day with its year, such as "Wed 5 May 2027"."""
    return f"{day_words(day)} {day.year}"


def week_words(week: Week) -> str:
    """The days of a week, such as "Mon 3 May to Sun 9 May 2027"."""
    return f"{day_words(week.monday)} to {dated_words(week.sunday)}"


def begun_date(week: Week) -> str:
    """The beginning, year first, that every day of a week has in common: "2027-05-" or "20"."""
    first, last = week.monday.isoformat(), week.sunday.isoformat()
    for length in (8, 5):
        if first[:length] == last[:length]:
            return first[:length]
    return ""
