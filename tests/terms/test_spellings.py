"""Units may be written as growers say them, in one or in many; common practice, no source."""

import pytest

from planner.terms import (
    ONE_OF,
    UNITS,
    Figure,
    Quantity,
    Source,
    amount_words,
    read_quantity,
    volume_words,
)

_SPELLINGS = {
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "L": ("l", "liter", "liters", "litre", "litres"),
    "gal": ("gallon", "gallons"),
    "h": ("hour", "hours"),
    "days": ("day", "d"),
    "weeks": ("week",),
    "roots": ("root",),
    "heads": ("head",),
    "bunches": ("bunch",),
    "cuts": ("cut",),
    "plants": ("plant",),
}


@pytest.mark.parametrize(
    ("name", "written"), [(name, one) for name, many in _SPELLINGS.items() for one in many]
)
def test_a_unit_goes_by_its_other_words_too(name: str, written: str) -> None:
    assert read_quantity(f"1 {written}") == Quantity(1, UNITS[name])


@pytest.mark.parametrize("written", ["Inch", "FEET", "LITERS", "Gallons", "inchs", "galls"])
def test_other_spellings_are_not_guessed_at(written: str) -> None:
    assert read_quantity(f"1 {written}") is None


@pytest.mark.parametrize(("many", "one"), sorted(ONE_OF.items()))
def test_one_is_told_in_the_singular_and_more_in_the_plural(many: str, one: str) -> None:
    source = Source("memory")
    assert str(Figure(1, 1, many, source)) == f"1 {one}"
    assert str(Figure(2, 2, many, source)) == f"2 {many}"
    assert one in _SPELLINGS[many]


@pytest.mark.parametrize(
    ("amount", "words"), [(0.99, "less than 1"), (1, "1"), (1.5, "1.5"), (2, "2")]
)
def test_a_part_of_a_piece_is_less_than_one_and_more_than_a_piece_is_told(
    amount: float, words: str
) -> None:
    assert amount_words(amount, UNITS["each"]) == words


def test_a_bucket_is_the_least_that_is_told_in_cubic_feet() -> None:
    """A quarter of a cubic foot; a gallon is 231 cubic inches, so 1.87 of them are as much."""
    bucket_l = 28.316846592 / 4
    assert volume_words(bucket_l, UNITS["ft"]) == "0.25 cu ft"
    assert volume_words(bucket_l * 0.99, UNITS["ft"]) == "1.9 gal"
