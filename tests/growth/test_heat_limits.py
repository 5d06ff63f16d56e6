"""A warm day counts no more than the crop can use, and temperatures are told in both units.

Degrees: 0 degC is 32 degF and 100 degC is 212 degF (NIST SP 811, B.9).
"""

from datetime import date

import pytest

from planner.climate import SeasonTemperatures
from planner.garden import Crop, HeatNeeds
from planner.growth.heat import single_sine
from planner.growth.heat_pace import season_heat
from planner.growth.limits import _degrees
from planner.reading.crops_file import read_crops


def _needs(name: str) -> HeatNeeds:
    crop = read_crops(None, []).find(name)
    assert isinstance(crop, Crop)
    assert isinstance(crop.heat, HeatNeeds)
    return crop.heat


def _heat_of_a_day(needs: HeatNeeds, degc: float) -> float:
    """Heat of one day that is as warm by night as by day."""
    day = SeasonTemperatures(date(2027, 7, 1), (degc,), (degc,))
    return season_heat(day, needs, [1.0])[1]


@pytest.mark.parametrize("name", ["leaf lettuce", "radish", "spinach", "tomato"])
def test_nothing_is_gained_above_the_upper_temperature(name: str) -> None:
    needs = _needs(name)
    upper = needs.upper.middle
    at_upper = _heat_of_a_day(needs, upper)
    assert at_upper > 0
    assert _heat_of_a_day(needs, upper + 10) == pytest.approx(at_upper)
    assert _heat_of_a_day(needs, needs.base.middle - 5) == 0.0


@pytest.mark.parametrize("name", ["leaf lettuce", "radish", "spinach", "tomato"])
def test_a_hot_afternoon_after_a_cold_night_is_cut_off_at_the_upper_temperature(name: str) -> None:
    """By the single sine, which tests/growth/test_heat.py holds against published tables."""
    needs = _needs(name)
    base, upper = needs.base.middle, needs.upper.middle
    low, high = base - 25, upper + 8
    day = SeasonTemperatures(date(2027, 7, 1), (low,), (high,))
    gained = season_heat(day, needs, [1.0])[1]
    assert gained == pytest.approx(single_sine(low, high, base, upper))
    assert gained < single_sine(low, high, base) - 0.1


@pytest.mark.parametrize(
    ("degc", "words"),
    [(0, "0 degC (32 degF)"), (100, "100 degC (212 degF)"), (25, "25 degC (77 degF)")],
)
def test_degrees_are_told_in_both_units(degc: float, words: str) -> None:
    assert _degrees(degc) == words
