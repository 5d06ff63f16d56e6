"""Weeks are told with their days, for nobody knows which days the 28th week of a year has."""

import pytest

from planner.terms import Week
from planner.writing.week_words import span_words, weeks_words


@pytest.mark.parametrize(
    ("first", "last", "words"),
    [
        (Week(2027, 28), Week(2027, 28), "2027-W28 (12 to 18 July)"),
        (Week(2027, 18), Week(2027, 20), "2027-W18 to 2027-W20 (3 to 23 May)"),
        (Week(2027, 30), Week(2027, 30), "2027-W30 (26 July to 1 August)"),
        (Week(2026, 53), Week(2027, 1), "2026-W53 to 2027-W01 (28 December to 10 January)"),
        (Week(2027, 18), Week(2028, 18), "2027-W18 to 2028-W18 (3 May to 7 May)"),
    ],
)
def test_weeks_on_end_are_told_with_their_first_and_last_day(
    first: Week, last: Week, words: str
) -> None:
    assert span_words(first, last) == words


def test_weeks_apart_are_told_one_after_the_other() -> None:
    weeks = [Week(2027, 30), Week(2027, 18), Week(2027, 19)]
    assert weeks_words(weeks) == (
        "2027-W18 to 2027-W19 (3 to 16 May) and 2027-W30 (26 July to 1 August)"
    )


def test_after_four_runs_the_others_are_counted() -> None:
    weeks = [Week(2027, number) for number in (2, 4, 6, 8, 10, 11)]
    assert weeks_words(weeks).endswith("2027-W08 (22 to 28 February) and 2 more weeks")
    assert weeks_words(weeks[:5]).endswith("2027-W08 (22 to 28 February) and 1 more week")
