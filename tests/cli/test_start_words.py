"""Plain words of newcomers. A foot is 0.3048 m exactly (international foot, NIST SP 811)."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.cli.start.lines import read_bed_line, read_eaten, read_want_line
from planner.cli.start.words import (
    has_no_unit,
    read_day_words,
    read_length,
    read_month_words,
    read_people,
    read_size,
    read_sun,
    read_weekdays,
)


@pytest.mark.parametrize(
    ("words", "length", "width"),
    [
        ("8 ft x 4 ft", "8 ft", "4 ft"),
        ("8x4 ft", "8 ft", "4 ft"),
        ("8 ft x 4", "8 ft", "4 ft"),
        ("8 by 4 feet", "8 ft", "4 ft"),
        ("8' x 4'", "8 ft", "4 ft"),
        ('96" x 48"', "96 in", "48 in"),
        ("2.4 m by 120 cm", "2.4 m", "120 cm"),
        ("2.4 × 1.2 metres", "2.4 m", "1.2 m"),  # noqa: RUF001 - the sign is meant
        ("10 by 4 steps", "25 ft", "10 ft"),
        ("4 paces x 1 m", "10 ft", "1 m"),
        ("4 ft round", "4 ft", ""),
        ("round, 1.2 m", "1.2 m", ""),
        ("30 in across", "30 in", ""),
    ],
)
def test_a_size_is_understood(words: str, length: str, width: str) -> None:
    size = read_size(words)
    assert size is not None
    assert (size.length, size.width) == (length, width)


@pytest.mark.parametrize("words", ["8 by 4", "8x4", "2.4 x 1.2", "4 round"])
def test_numbers_alone_leave_the_unit_open(words: str) -> None:
    assert has_no_unit(words)
    assert read_size(words) is None


@pytest.mark.parametrize("words", ["", "8 ft", "8 x 4 x 2 ft", "big", "8 lb x 4 lb", "4 x 4 round"])
def test_what_is_no_size_is_none(words: str) -> None:
    assert read_size(words) is None
    assert not has_no_unit(words)


@pytest.mark.parametrize(
    ("words", "length"),
    [("12 in", "12 in"), ("a foot", "1 ft"), ("30cm deep", "30 cm"), ("12", None), ("deep", None)],
)
def test_a_depth_is_understood(words: str, length: str | None) -> None:
    assert read_length(words) == length


@pytest.mark.parametrize(
    ("words", "sun"),
    [
        ("full", "full"), ("Full sun", "full"), ("8 hours", "full"), ("6", "full"), ("6 h", "full"),
        ("5", "part"), ("3-5 hours", "part"), ("only the morning", "part"), ("some", "part"),
        ("2 hours", "shade"), ("hardly any", "shade"), ("not much", "shade"),
        ("not full", None), ("blue", None), ("", None),
    ],
)  # fmt: skip
def test_sun_is_told_in_words_or_hours(words: str, sun: str | None) -> None:
    assert read_sun(words) == sun


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("mid May", "05-15"), ("Mid-May", "05-15"), ("early october", "10-05"),
        ("late Sept", "09-25"), ("end of April", "04-25"), ("the beginning of June", "06-05"),
        ("May", "05-15"), ("May 10", "05-10"), ("10 May", "05-10"), ("the 1st of May", "05-01"),
        ("05-10", "05-10"), ("never", "never"), ("February 29", "02-29"),
        ("31 February", None), ("May June", None), ("soon", None), ("7b", None), ("", None),
        ("May 10 2027", None),
    ],
)  # fmt: skip
def test_a_time_of_the_year_is_understood(words: str, day: str | None) -> None:
    assert read_month_words(words) == day


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("2027-03-15", "2027-03-15"), ("mid March", "2028-03-15"), ("1 May", "2027-05-01"),
        ("end of April", "2027-04-25"), ("2027-02-30", None), ("soon", None), ("never", None),
        ("9999-12-31", None), ("", None),
    ],
)  # fmt: skip
def test_a_day_is_the_first_such_day_to_come(words: str, day: str | None) -> None:
    found = read_day_words(words, date(2027, 4, 20))
    assert found == (date.fromisoformat(day) if day else None)


@pytest.mark.parametrize(
    ("words", "days"),
    [
        ("weekends", ("Sat", "Sun")),
        ("Sat and Wed", ("Wed", "Sat")),
        ("wednesday, saturday", ("Wed", "Sat")),
        ("every day", ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")),
        ("weekdays", ("Mon", "Tue", "Wed", "Thu", "Fri")),
        ("someday", None),
        ("", None),
    ],
)
def test_garden_days_are_understood(words: str, days: tuple[str, ...] | None) -> None:
    assert read_weekdays(words) == days


@pytest.mark.parametrize(
    ("words", "people"),
    [("4", 4.0), ("3.5", 3.5), ("four", 4.0), ("2 people", 2.0), ("0", None), ("all", None)],
)
def test_people_are_counted(words: str, people: float | None) -> None:
    assert read_people(words) == people


def test_a_want_may_say_a_week() -> None:
    want = read_want_line("Radish: 25 roots a week")
    assert want is not None
    assert (want.crop, want.amount) == ("radish", "25 roots")


def test_crops_are_parted_by_commas_or_and() -> None:
    assert [one.crop for one in read_eaten("Radish, kale and  peas;kale", 2)] == [
        "radish", "kale", "peas",
    ]  # fmt: skip


@given(st.text(max_size=40))
def test_no_words_stop_a_reader(words: str) -> None:
    for read in (read_size, read_length, read_sun, read_month_words, read_weekdays, read_people,
                 read_bed_line, read_want_line, has_no_unit):  # fmt: skip
        read(words)
