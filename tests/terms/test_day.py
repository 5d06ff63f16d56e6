"""Days are told as one says them, without a nought before the day."""

from datetime import date

from planner.terms import date_words, day_words


def test_a_day_is_told_with_its_month_and_with_its_year_where_that_matters() -> None:
    assert day_words(date(2027, 5, 8)) == "8 May"
    assert date_words(date(2027, 12, 31)) == "31 December 2027"
