"""The sun's radiation agrees with the worked examples of FAO-56 and with programs held to them."""

import math
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.climate import day_length_h
from planner.climate.radiation import (
    MM_FOR_EACH_MJ_M2,
    daylight_hours_h,
    extraterrestrial_radiation_mj_m2,
    extraterrestrial_radiation_mm,
    inverse_relative_distance,
    solar_declination_rad,
    sunset_hour_angle_rad,
)

_3_SEPTEMBER = 246
_BANGKOK_DEG = 13 + 44 / 60
_RIO_DEG = -(22 + 54 / 60)


def test_example_8_the_radiation_on_3_september_at_20_degrees_south() -> None:
    """FAO56, example 8, step by step; the finer figures are a second calculation (NCL)."""
    assert inverse_relative_distance(_3_SEPTEMBER) == pytest.approx(0.985, abs=5e-4)
    assert solar_declination_rad(_3_SEPTEMBER) == pytest.approx(0.120, abs=5e-4)
    assert sunset_hour_angle_rad(-0.35, 0.120) == pytest.approx(1.527, abs=5e-4)
    assert extraterrestrial_radiation_mj_m2(-20, _3_SEPTEMBER) == pytest.approx(32.2, abs=0.05)
    assert extraterrestrial_radiation_mj_m2(-20, _3_SEPTEMBER) == pytest.approx(32.194, abs=5e-4)
    assert extraterrestrial_radiation_mm(-20, _3_SEPTEMBER) == pytest.approx(13.1, abs=0.05)
    assert extraterrestrial_radiation_mm(-20, _3_SEPTEMBER) == pytest.approx(13.135, abs=5e-4)


def test_example_9_the_daylight_on_3_september_at_20_degrees_south() -> None:
    """FAO56, example 9; the finer figure is a second calculation (NCL)."""
    assert daylight_hours_h(-20, _3_SEPTEMBER) == pytest.approx(11.7, abs=0.05)
    assert daylight_hours_h(-20, _3_SEPTEMBER) == pytest.approx(11.66559, abs=5e-6)


@pytest.mark.parametrize(
    ("latitude_deg", "day_of_year", "printed", "within"),
    [
        pytest.param(50.80, 187, 41.08838, 0.01, id="6 July, example 18 (CSLSEVAP)"),
        pytest.param(_BANGKOK_DEG, 105, 38.05769, 0.01, id="15 April, example 17 (CSLSEVAP)"),
        pytest.param(45.72, 196, 40.5546, 0.01, id="15 July, example 20 (NCL)"),
        pytest.param(_RIO_DEG, 135, 25.1, 0.05, id="15 May, example 10 (FAO56)"),
    ],
)
def test_radiation_is_what_other_programs_find(
    latitude_deg: float, day_of_year: int, printed: float, within: float
) -> None:
    found = extraterrestrial_radiation_mj_m2(latitude_deg, day_of_year)
    assert found == pytest.approx(printed, abs=within)


def test_radiation_in_july_as_water_is_what_another_program_finds() -> None:
    """Lyon, 15 July, example 20 (NCL): 16.5463 mm."""
    assert extraterrestrial_radiation_mm(45.72, 196) == pytest.approx(16.5463, abs=0.005)


@pytest.mark.parametrize(
    ("latitude_deg", "day_of_year", "printed_h"),
    [(50.80, 187, 16.1), (45.72, 196, 15.2), (_RIO_DEG, 135, 10.9)],
    ids=["example 18", "example 20", "example 10"],
)
def test_daylight_is_what_is_printed(
    latitude_deg: float, day_of_year: int, printed_h: float
) -> None:
    """FAO56, printed to a tenth of an hour."""
    assert daylight_hours_h(latitude_deg, day_of_year) == pytest.approx(printed_h, abs=0.05)


def test_the_earth_is_nearest_the_sun_at_new_year_and_farthest_in_july() -> None:
    distances = [inverse_relative_distance(day) for day in range(1, 366)]
    assert distances.index(max(distances)) + 1 in {1, 365}
    assert distances.index(min(distances)) + 1 in {182, 183}


def test_the_sun_stands_north_in_june_and_south_in_december() -> None:
    """To within the 23.45 degrees that the earth's axis leans."""
    declinations = [math.degrees(solar_declination_rad(day)) for day in range(1, 366)]
    assert max(declinations) == pytest.approx(23.45, abs=0.05)
    assert min(declinations) == pytest.approx(-23.45, abs=0.05)
    assert declinations.index(max(declinations)) + 1 in range(170, 175)
    assert declinations.index(min(declinations)) + 1 in range(353, 358)


def test_no_sun_comes_in_the_polar_night_and_none_sets_in_the_polar_day() -> None:
    assert extraterrestrial_radiation_mj_m2(70, 355) == pytest.approx(0, abs=1e-9)
    assert daylight_hours_h(70, 355) == 0
    assert daylight_hours_h(70, 172) == 24
    assert daylight_hours_h(-70, 355) == 24


@given(latitude_deg=st.floats(-66, 70), day=st.integers(1, 365))
def test_no_day_has_less_than_no_sun_or_more_than_the_poles_ever_get(
    latitude_deg: float, day: int
) -> None:
    radiation = extraterrestrial_radiation_mj_m2(latitude_deg, day)
    assert -1e-9 <= radiation < 50
    assert extraterrestrial_radiation_mm(latitude_deg, day) == radiation * MM_FOR_EACH_MJ_M2
    assert 0 <= daylight_hours_h(latitude_deg, day) <= 24


@given(latitude_deg=st.floats(0, 60), day=st.integers(1, 365))
def test_day_here_is_night_on_the_other_side_of_the_equator(latitude_deg: float, day: int) -> None:
    both = daylight_hours_h(latitude_deg, day) + daylight_hours_h(-latitude_deg, day)
    assert both == pytest.approx(24)


@pytest.mark.parametrize("latitude_deg", [35, 40, 45, 50, 55])
def test_the_ten_hour_winter_would_begin_a_week_early_with_these_hours(latitude_deg: int) -> None:
    """They run 6 to 30 minutes short of sunrise to sunset (DAYLIB), so §10 does not use them."""
    year = [date(2026, 12, 31) + timedelta(days=day) for day in range(1, 366)]
    by_sun_h = [day_length_h(latitude_deg, day) for day in year]
    by_34_h = [daylight_hours_h(latitude_deg, day) for day in range(1, 366)]
    short_by = [sun - found for sun, found in zip(by_sun_h, by_34_h, strict=True)]
    assert min(short_by) > 6 / 60
    assert max(short_by) < 30 / 60
    early = _first_short_day(by_sun_h) - _first_short_day(by_34_h)
    assert 7 <= early <= 10


def _first_short_day(hours_h: list[float]) -> int:
    """The first day of fall that is shorter than ten hours."""
    return next(day for day in range(200, 365) if hours_h[day] < 10)
