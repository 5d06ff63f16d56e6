"""Units are what the library pint says they are.

Pint 0.25 carries the international foot, inch and pound and the US gallon of 231 cubic inches.
"""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.terms import MASS_UNITS, UNITS, Dimension, Quantity, Unit

_REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
# Our unit, pint's name for it, and pint's name of the SI unit we keep it in.
_IN_PINT = {
    "in": ("inch", "meter"),
    "ft": ("foot", "meter"),
    "mm": ("millimeter", "meter"),
    "cm": ("centimeter", "meter"),
    "m": ("meter", "meter"),
    "gal": ("US_liquid_gallon", "liter"),
    "L": ("liter", "liter"),
    "m3": ("meter ** 3", "liter"),
    "cu ft": ("foot ** 3", "liter"),
    "cu yd": ("yard ** 3", "liter"),
    "oz": ("ounce", "kilogram"),
    "lb": ("pound", "kilogram"),
    "g": ("gram", "kilogram"),
    "kg": ("kilogram", "kilogram"),
    "degF": ("degF", "degC"),
    "degC": ("degC", "degC"),
    "days": ("day", "day"),
    "weeks": ("week", "day"),
    "h": ("hour", "hour"),
}
_COUNTS = {"roots", "heads", "bunches", "each", "cuts"}


def test_every_unit_is_a_count_or_known_to_pint() -> None:
    assert set(UNITS) == _COUNTS | {"plants"} | set(_IN_PINT)
    assert {one.name for one in UNITS.values() if one.dimension is Dimension.COUNT} == _COUNTS


@pytest.mark.parametrize("name", _IN_PINT)
@given(value=st.floats(-1e4, 1e4))
def test_a_measured_unit_is_worth_what_pint_says(name: str, value: float) -> None:
    written, si = _IN_PINT[name]
    expected = float(_REGISTRY.Quantity(value, written).to(si).magnitude)
    # The gallon is kept to seven digits (NIST SP 811, table B.8); all others are exact.
    assert Quantity(value, UNITS[name]).si == pytest.approx(expected, rel=2e-7, abs=1e-9)


# What the library says a unit measures. Of times we know two: spans of days, and hours of light.
_MEASURES = {
    "[length]": {Dimension.LENGTH},
    "[length] ** 3": {Dimension.VOLUME},
    "[mass]": {Dimension.MASS},
    "[temperature]": {Dimension.TEMPERATURE},
    "[time]": {Dimension.TIME, Dimension.DAYLIGHT},
}


@pytest.mark.parametrize("name", _IN_PINT)
def test_a_unit_measures_what_pint_says(name: str) -> None:
    measured = str(_REGISTRY.Unit(_IN_PINT[name][0]).dimensionality)
    assert UNITS[name].dimension in _MEASURES[measured]
    assert (UNITS[name].dimension is Dimension.DAYLIGHT) == (name == "h")


@pytest.mark.parametrize(
    "unit", [UNITS[name] for name in sorted(_COUNTS | {"plants"})], ids=lambda u: u.name
)
def test_a_count_stays_a_count(unit: Unit) -> None:
    assert Quantity(25, unit).si == 25


def test_water_boils_at_212_and_freezes_at_32_degrees_fahrenheit() -> None:
    assert Quantity(212, UNITS["degF"]).si == pytest.approx(100)
    assert Quantity(32, UNITS["degF"]).si == pytest.approx(0)


def test_feet_and_inches_are_imperial_and_other_lengths_are_metric() -> None:
    lengths = {one.name for one in UNITS.values() if one.dimension is Dimension.LENGTH}
    assert {name for name in lengths if UNITS[name].is_imperial} == {"ft", "in"}
    assert lengths - {"ft", "in"} == {"mm", "cm", "m"}


def test_the_weights_are_ounce_pound_gram_and_kilogram() -> None:
    assert set(MASS_UNITS) == {"oz", "lb", "g", "kg"}
