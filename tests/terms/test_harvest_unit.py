"""Weights can be told in one another; heads and roots are single pieces; bunches are not.

Factors: NIST Special Publication 811 (2008), appendix B.8. That a bunch is no single piece is
common practice, no source.
"""

import pytest

from planner.terms import UNITS, conversion


@pytest.mark.parametrize(
    ("written", "counted", "factor"),
    [
        ("lb", "oz", 16),
        ("oz", "lb", 1 / 16),
        ("kg", "g", 1000),
        ("kg", "lb", 1 / 0.45359237),
        ("lb", "lb", 1),
        ("heads", "each", 1),
        ("each", "roots", 1),
        ("bunches", "bunches", 1),
        ("cuts", "cuts", 1),
    ],
)
def test_a_harvest_is_counted_in_the_crop_s_unit(written: str, counted: str, factor: float) -> None:
    assert conversion(UNITS[written], UNITS[counted]) == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(
    ("written", "counted"),
    [("lb", "heads"), ("heads", "lb"), ("bunches", "each"), ("each", "bunches"), ("L", "kg")],
)
def test_what_measures_something_else_is_not_counted(written: str, counted: str) -> None:
    assert conversion(UNITS[written], UNITS[counted]) is None
