"""Days are told as one says them, without a nought before the day."""

import calendar
from datetime import date

from planner.terms import MONTHS, date_words, day_words


def test_a_day_is_told_with_its_month_and_with_its_year_where_that_matters() -> None:
    assert day_words(date(2027, 5, 8)) == "8 May"
    assert date_words(date(2027, 12, 31)) == "31 December 2027"


def test_months_have_the_names_the_calendar_library_gives_them() -> None:
    assert list(calendar.month_name)[1:] == list(MONTHS)
