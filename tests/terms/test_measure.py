"""Lengths and amounts are told in the grower's unit, as one reads them off a tape or a scale."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.terms import (
    UNITS,
    amount_words,
    length_words,
    volume_words,
    weight_words,
)

_UM_PER_INCH = 25_400


@pytest.mark.parametrize(
    ("inches", "words"),
    [
        ("0", "0 in"),
        ("1/4", "1/4 in"),
        ("1/2", "1/2 in"),
        ("3", "3 in"),
        ("4 1/8", "4 1/8 in"),
        ("12", "1 ft"),
        ("18", "1 ft 6 in"),
        ("12 3/4", "1 ft 3/4 in"),
        ("96", "8 ft"),
        ("95 1/2", "7 ft 11 1/2 in"),
    ],
)
def test_feet_and_inches_come_in_eighths(inches: str, words: str) -> None:
    length_um = float(sum(map(Fraction, inches.split())) * _UM_PER_INCH)
    assert length_words(length_um, UNITS["ft"]) == words
    assert length_words(length_um, UNITS["in"]) == words


def test_inches_carry_over_into_feet() -> None:
    assert length_words(11.99 * _UM_PER_INCH, UNITS["in"]) == "1 ft"
    assert length_words(23.99 * _UM_PER_INCH, UNITS["ft"]) == "2 ft"


@pytest.mark.parametrize(
    ("length_um", "words"),
    [
        (0, "0 cm"),
        (5_000, "0.5 cm"),
        (450_000, "45 cm"),
        (76_200, "7.6 cm"),
        (999_999, "100 cm"),
        (1_000_000, "1.00 m"),
        (2_440_000, "2.44 m"),
    ],
)
def test_metric_lengths_come_in_centimetres_up_to_a_metre(length_um: int, words: str) -> None:
    assert length_words(length_um, UNITS["cm"]) == words
    assert length_words(length_um, UNITS["m"]) == words


@given(st.integers(0, 200_000_000))
def test_words_are_within_a_sixteenth_of_an_inch(length_um: int) -> None:
    words = length_words(length_um, UNITS["ft"]).split()
    inches = Fraction(0)
    while words:
        unit = words.index("ft") if "ft" in words else words.index("in")
        number = sum(map(Fraction, words[:unit]))
        inches += number * (12 if words[unit] == "ft" else 1)
        words = words[unit + 1 :]
    assert abs(inches * _UM_PER_INCH - length_um) <= Fraction(_UM_PER_INCH, 16)


@given(st.integers(0, 200_000_000))
def test_metric_words_are_within_half_a_centimetre(length_um: int) -> None:
    number, unit = length_words(length_um, UNITS["m"]).split()
    assert abs(float(number) * UNITS[unit].factor * 1e6 - length_um) <= 5_001


@pytest.mark.parametrize(
    ("volume_l", "unit", "words"),
    [
        (28.316846592, "ft", "1 cu ft"),
        (442.0, "in", "15.6 cu ft"),
        (19.0, "ft", "0.67 cu ft"),
        (442.4, "cm", "442 L"),
        (37.66, "m", "37.7 L"),
        (1000.0, "m", "1 m3"),
        (1250.0, "m", "1.2 m3"),
        (0.88, "ft", "0.23 gal"),
        (0.0, "ft", "0 gal"),
    ],
)
def test_a_volume_is_told_in_the_system_of_the_bed(volume_l: float, unit: str, words: str) -> None:
    assert volume_words(volume_l, UNITS[unit]) == words


@pytest.mark.parametrize(
    ("weight_kg", "unit", "words"),
    [(18.14, "ft", "40 lb"), (1025.4, "ft", "2,261 lb"), (1025.4, "m", "1,025 kg")],
)
def test_a_weight_is_told_in_whole_pounds_or_kilograms(
    weight_kg: float, unit: str, words: str
) -> None:
    assert weight_words(weight_kg, UNITS[unit]) == words


@pytest.mark.parametrize(
    ("amount", "unit", "words"),
    [
        (25, "roots", "25 roots"),
        (1, "roots", "1 root"),
        (1, "heads", "1 head"),
        (2, "bunches", "2 bunches"),
        (1, "bunches", "1 bunch"),
        (12, "each", "12"),
        (0.44, "each", "less than 1"),
        (0.44, "roots", "0.44 roots"),
        (0, "each", "0"),
        (1.5, "lb", "1.5 lb"),
        (1, "lb", "1 lb"),
        (2.0000001, "lb", "2 lb"),
        (12.34, "oz", "12.3 oz"),
    ],
)
def test_amounts_are_told_to_a_tenth_and_one_is_one(amount: float, unit: str, words: str) -> None:
    assert amount_words(amount, UNITS[unit]) == words
