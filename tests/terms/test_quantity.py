"""Quantities are read as growers write them; anything else is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.terms import UNITS, Quantity, QuantityRange, read_quantity, read_range


@pytest.mark.parametrize(
    ("written", "value", "unit"),
    [
        ("4 ft", 4, "ft"),
        ("4ft", 4, "ft"),
        ("  4   ft ", 4, "ft"),
        ("0.5 in", 0.5, "in"),
        (".5 in", 0.5, "in"),
        ("38 inches", 38, "in"),
        ("1 foot", 1, "ft"),
        ("8 feet", 8, "ft"),
        ("25 roots", 25, "roots"),
        ("1 root", 1, "roots"),
        ("4 heads", 4, "heads"),
        ("2 bunches", 2, "bunches"),
        ("1 cut", 1, "cuts"),
        ("6 lb", 6, "lb"),
        ("20 l", 20, "L"),
        ("0.75 cu ft", 0.75, "cu ft"),
        ("2cu  yd", 2, "cu yd"),
        ("1 m3", 1, "m3"),
        ("46 degF", 46, "degF"),
        ("-3 degC", -3, "degC"),
        ("+3 degC", 3, "degC"),
        ("1 week", 1, "weeks"),
        ("30 d", 30, "days"),
    ],
)
def test_a_number_and_a_unit_make_a_quantity(written: str, value: float, unit: str) -> None:
    assert read_quantity(written) == Quantity(value, UNITS[unit])


@pytest.mark.parametrize(
    "written",
    ["6-8 weeks", "6 - 8 weeks", "6 to 8 weeks", "6\u20138 weeks", "6.0-8.0weeks"],
)
def test_a_range_is_written_with_a_dash_or_the_word_to(written: str) -> None:
    assert read_range(written) == QuantityRange(6, 8, UNITS["weeks"])


def test_a_range_may_be_told_from_its_other_end() -> None:
    assert read_range("60-40 days") == QuantityRange(40, 60, UNITS["days"])
    assert read_range("8 to 6 weeks") == QuantityRange(6, 8, UNITS["weeks"])


def test_one_number_is_a_range_from_itself_to_itself() -> None:
    assert read_range("30 days") == QuantityRange(30, 30, UNITS["days"])


def test_a_range_is_not_one_quantity() -> None:
    assert read_quantity("6-8 weeks") is None
    assert read_quantity("7-7 weeks") == Quantity(7, UNITS["weeks"])


@pytest.mark.parametrize(
    "garbage",
    [
        "",
        " ",
        "4",
        "ft",
        "four feet",
        "4 ft 6 in",
        "4 furlongs",
        "4 FT",
        "4,5 ft",
        "4.5.6 ft",
        "1e3 ft",
        "nan ft",
        "inf ft",
        "4 'ft'",
        '4"',
        "4 ft; rm",
        "6-8",
        "6 8 weeks",
        "6-8-10 weeks",
        "6 to weeks",
        "- 8 weeks",
        "4 ft\nx",
        "\x00",
    ],
)
def test_garbage_is_refused(garbage: str) -> None:
    assert read_range(garbage) is None
    assert read_quantity(garbage) is None


def test_a_number_no_computer_can_hold_is_still_a_number_too_large_for_anything() -> None:
    quantity = read_quantity("9" * 400 + " ft")
    assert quantity is not None
    assert quantity.si > 1e200


@given(st.text())
def test_no_text_whatever_raises(text: str) -> None:
    span = read_range(text)
    assert span is None or span.low <= span.high


@given(
    st.decimals(0, 10_000, places=2, allow_nan=False, allow_infinity=False),
    st.sampled_from(sorted(UNITS)),
)
def test_what_is_written_comes_back(value: object, unit: str) -> None:
    quantity = read_quantity(f"{value} {unit}")
    assert quantity is not None
    assert quantity.value == float(str(value))
    assert quantity.unit.name == unit
    assert str(quantity) == f"{quantity.value:g} {unit}"
