"""Days as one says them."""

from datetime import date


def day_words(day: date) -> str:
    """A day like "8 May", where its year goes without saying."""
    return f"{day.day} {day:%B}"


def date_words(day: date) -> str:
    """A day with its year, like "8 May 2027"."""
    return f"{day_words(day)} {day.year}"
