"""Days, weeks, shares and stretches of beds as the page words them."""

from datetime import date

from planner.garden import Garden
from planner.page.element import Html, el
from planner.scheduling import Block
from planner.terms import Week


def day_words(day: date) -> str:
    """A day such as "5 May"."""
    return f"{day.day} {day:%B}"


def full_day_words(day: date) -> str:
    """A day such as "Wednesday 5 May 2027"."""
    return f"{day:%A} {day_words(day)} {day.year}"


def day_element(day: date, this_year: int = 0) -> Html:
    """A day in a table, with its date for machines; of `this_year` without the year."""
    words = day_words(day) if day.year == this_year else f"{day_words(day)} {day.year}"
    return el("time", words, datetime=day.isoformat())


def week_words(week: Week) -> str:
    """A week such as "3 to 9 May", or "31 May to 6 June"."""
    return weeks_words(week, week)


def weeks_words(first: Week, last: Week) -> str:
    """Weeks on end such as "3 to 30 May", or "31 May to 13 June"."""
    begin, end = first.monday, last.sunday
    same = (begin.year, begin.month) == (end.year, end.month)
    return f"{begin.day if same else day_words(begin)} to {day_words(end)}"


def stretch_words(garden: Garden, block: Block) -> str:
    """Where in its bed a block lies, such as "1 ft to 2 ft", or "…, under tomato 1"."""
    under = f", under {block.under}" if block.under else ""
    return garden.bed(block.bed).stretch_words(block.from_um, block.to_um) + under
