"""Month-days are days that come back every year."""

from datetime import date, timedelta

import pytest

from planner.terms import MonthDay, read_month_day


def test_every_day_of_a_leap_year_is_a_month_day() -> None:
    for number in range(366):
        day = date(2024, 1, 1) + timedelta(days=number)
        written = day.isoformat()[5:]
        read = read_month_day(written)
        assert read == MonthDay(day.month, day.day)
        assert str(read) == written
        assert read.in_year(2024) == day


@pytest.mark.parametrize(("written", "day"), [("3-28", (3, 28)), (" 11-9 ", (11, 9))])
def test_zeros_and_blanks_may_be_left_out_or_added(written: str, day: tuple[int, int]) -> None:
    assert read_month_day(written) == MonthDay(*day)


@pytest.mark.parametrize(
    "garbage",
    [
        "02-30",
        "04-31",
        "13-01",
        "00-10",
        "10-00",
        "28-03",
        "2027-03-28",
        "March 28",
        "03/28",
        "0328",
        "",
        "-",
        "03-28-",
    ],
)
def test_what_no_year_has_is_refused(garbage: str) -> None:
    assert read_month_day(garbage) is None


def test_29_february_falls_on_1_march_in_a_common_year() -> None:
    leap_day = read_month_day("02-29")
    assert leap_day == MonthDay(2, 29)
    assert leap_day.in_year(2028) == date(2028, 2, 29)
    assert leap_day.in_year(2027) == date(2027, 3, 1)
    assert leap_day.in_year(2100) == date(2100, 3, 1)


@pytest.mark.parametrize(
    ("first", "second", "days"),
    [
        ("03-28", "04-14", 17),
        ("11-09", "10-25", -15),
        ("12-25", "01-05", 11),
        ("01-05", "12-25", -11),
    ],
)
def test_days_between_two_month_days_are_counted_the_shorter_way_round(
    first: str, second: str, days: int
) -> None:
    here, there = read_month_day(first), read_month_day(second)
    assert here is not None
    assert there is not None
    assert here.days_until(there) == days


def test_the_order_of_month_days_is_that_of_the_year() -> None:
    assert MonthDay(3, 28) < MonthDay(11, 9)
    assert MonthDay(2, 28) < MonthDay(2, 29) < MonthDay(3, 1)
