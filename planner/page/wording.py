"""Days, weeks and shares as the page words them."""

from datetime import date

from planner.page.element import Html, el
from planner.terms import Week


def day_words(day: date) -> str:
    """A day such as "5 May"."""
    return f"{day.day} {day:%B}"


def full_day_words(day: date) -> str:
    """A day such as "Wednesday 5 May 2027"."""
    return f"{day:%A} {day_words(day)} {day.year}"


def day_element(day: date) -> Html:
    """A day in a table or a sentence, with its date for machines."""
    return el("time", f"{day_words(day)} {day.year}", datetime=day.isoformat())


def week_words(week: Week) -> str:
    """A week such as "3 to 9 May", or "31 May to 6 June"."""
    first, last = week.monday, week.sunday
    begin = str(first.day) if first.month == last.month else day_words(first)
    return f"{begin} to {day_words(last)}"


def share_words(share: float) -> str:
    """A share in whole per cent, never rounded up to all of it or down to nothing."""
    per_cent = round(share * 100)
    if per_cent == 100 and share < 1:
        return "99 %"
    return "less than 1 %" if per_cent == 0 and share > 0 else f"{per_cent} %"
