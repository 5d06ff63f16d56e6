"""Days: the years that can be spoken of, and days as one says them."""

from datetime import date

# Plans, journals and what is asked for lie within these years, both included.
FIRST_YEAR, LAST_YEAR = 1900, 2200


MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip


def day_words(day: date) -> str:
    """A day like "8 May", where its year goes without saying."""
    return f"{day.day} {MONTHS[day.month - 1]}"


def date_words(day: date) -> str:
    """A day with its year, like "8 May 2027"."""
    return f"{day_words(day)} {day.year}"
