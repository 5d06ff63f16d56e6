"""Soil at sowing depth follows the air some days behind.

The estimate is common practice, so it is tested by what it does, not against measurements.
"""

import math
from itertools import pairwise
from statistics import fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.climate.soil import TRAILING_DAYS, soil_degc_by_day

_air = st.lists(st.floats(-40, 45), min_size=1, max_size=60)


def test_soil_is_the_mean_of_the_air_over_a_week() -> None:
    air = [4.0, 6.0, 5.0, 9.0, 12.0, 11.0, 9.0, 15.0]
    soil = soil_degc_by_day(air)
    assert soil[6] == pytest.approx(8.0)
    assert soil[7] == pytest.approx(fmean(air[1:]))


def test_the_first_days_take_the_mean_of_what_is_behind_them() -> None:
    assert soil_degc_by_day([4.0, 6.0, 8.0]) == pytest.approx([4.0, 5.0, 6.0])
    assert soil_degc_by_day([]) == ()


@given(degc=st.floats(-40, 45), days=st.integers(1, 40))
def test_soil_under_steady_air_is_as_warm_as_the_air(degc: float, days: int) -> None:
    assert soil_degc_by_day([degc] * days) == pytest.approx([degc] * days, abs=1e-9)


@given(air=_air)
def test_soil_never_leaves_the_span_of_the_air(air: list[float]) -> None:
    soil = soil_degc_by_day(air)
    assert len(soil) == len(air)
    assert min(air) - 1e-9 <= min(soil)
    assert max(soil) <= max(air) + 1e-9


@given(before=st.floats(-20, 30), step=st.floats(0.1, 20))
def test_soil_takes_a_week_to_follow_a_warm_spell(before: float, step: float) -> None:
    soil = soil_degc_by_day([before] * 10 + [before + step] * 10)
    assert all(later > earlier for earlier, later in pairwise(soil[9 : 9 + TRAILING_DAYS + 1]))
    assert soil[10] < before + step / 2
    assert soil[9 + TRAILING_DAYS] == pytest.approx(before + step)


def test_soil_lags_behind_the_air_of_an_average_year_by_about_three_days() -> None:
    """Colder than the air in spring, warmer in fall, and December runs into January."""
    air = [11 - 12 * math.cos(2 * math.pi * (day - 20) / 365) for day in range(365)]
    lead = air[1 - TRAILING_DAYS :]
    soil = soil_degc_by_day([*lead, *air])[len(lead) :]
    assert len(soil) == 365
    assert soil[110] < air[110]
    assert soil[290] > air[290]
    assert soil == pytest.approx(air[-3:] + air[:-3], abs=0.02)
    assert soil[0] == pytest.approx(fmean([*air[-6:], air[0]]))


def test_a_missing_temperature_is_not_averaged_over() -> None:
    with pytest.raises(ValueError, match="missing"):
        soil_degc_by_day([4.0, math.nan, 6.0])
