"""The length of day agrees with published tables and with an astronomy library.

Eight minutes is the tolerance: the planner's model (CBM, Forsythe and others 1995, from memory)
was measured to stray up to seven from an exact sun position below 56 degrees of latitude, and
published tables are themselves rounded to a minute or two.
"""

from datetime import date, timedelta

import pytest
from astral import Observer
from astral.sun import sunrise, sunset

from planner.climate import Climate, day_length_h, shortest_day
from planner.climate.day_length import day_length_of_year_day_h
from planner.garden import NeverFreezes, NoTemperatures, NoWeather, Site
from planner.terms import Source, days_between
from tests.published import published_rows

_EIGHT_MINUTES_H = 8 / 60


@pytest.mark.parametrize(
    "row", published_rows("day_length.csv"), ids=lambda row: f"{row['place']} {row['date']}"
)
def test_the_day_is_as_long_as_the_table_prints(row: dict[str, str]) -> None:
    """Naval Observatory tables for San Francisco, a news site, and Luther College's table."""
    hours, minutes = row["hours_minutes"].split(":")
    printed_h = int(hours) + int(minutes) / 60
    found_h = day_length_h(float(row["latitude_deg"]), date.fromisoformat(row["date"]))
    assert found_h == pytest.approx(printed_h, abs=_EIGHT_MINUTES_H)


@pytest.mark.parametrize("latitude", range(-45, 61, 5))
def test_the_day_is_as_long_as_the_sun_says(latitude: int) -> None:
    """The library astral 3.2: upper limb of the sun, with refraction."""
    observer = Observer(latitude, 0)
    for day in days_between(date(2027, 1, 1), date(2027, 12, 31)):
        up = sunset(observer, day) - sunrise(observer, day)
        found_h = day_length_h(latitude, day)
        assert found_h == pytest.approx(up / timedelta(hours=1), abs=_EIGHT_MINUTES_H), day


@pytest.mark.parametrize(
    "row", published_rows("ten_hour_days.csv"), ids=lambda row: f"{row['latitude_deg']} N"
)
def test_days_under_ten_hours_begin_and_end_when_the_sun_says(row: dict[str, str]) -> None:
    """Worked out with the solar position algorithm of the library pvlib (DAYLIB)."""
    latitude = float(row["latitude_deg"])
    winter = days_between(date(2025, 7, 1), date(2026, 6, 30))
    short = [day for day in winter if day_length_h(latitude, day) < 10]
    if row["first_day_below"] == "never":
        assert short == []
        return
    assert abs(short[0] - date.fromisoformat(row["first_day_below"])) <= timedelta(days=3)
    assert abs(short[-1] - date.fromisoformat(row["last_day_below"])) <= timedelta(days=3)
    assert len(short) == (short[-1] - short[0]).days + 1


@pytest.mark.parametrize(
    ("latitude", "day_of_year", "hours"),
    [
        (40, 172, 15.0160),
        (40, 355, 9.3242),
        (30, 172, 14.0783),
        (51.5, 172, 16.6399),
        (51.5, 355, 7.8256),
        (60, 355, 5.8670),
        (0, 1, 12.1208),
        (70, 172, 24.0),
        (70, 355, 0.0),
    ],
)
def test_the_model_gives_its_own_values(latitude: float, day_of_year: int, hours: float) -> None:
    """The CBM model worked out a second time and apart from the planner (DAYLIB)."""
    assert day_length_of_year_day_h(latitude, day_of_year) == pytest.approx(hours, abs=1e-3)


def test_seasons_are_turned_round_in_the_south() -> None:
    assert day_length_h(-35, date(2027, 12, 21)) > 14
    assert day_length_h(-35, date(2027, 6, 21)) < 10
    assert shortest_day(35, 2027) == date(2027, 12, 21)
    assert shortest_day(-35, 2027) == date(2027, 6, 21)


@pytest.mark.parametrize("latitude", [-45.0, 15.0, 40.0, 60.0])
def test_no_day_is_shorter_than_midwinter(latitude: float) -> None:
    midwinter_h = day_length_h(latitude, shortest_day(latitude, 2027))
    year = days_between(date(2027, 1, 1), date(2027, 12, 31))
    shortest_h = min(day_length_h(latitude, day) for day in year)
    assert midwinter_h == pytest.approx(shortest_h, abs=0.01)


def test_the_climate_of_a_site_has_the_days_of_its_latitude() -> None:
    climate = Climate(
        Site("Here", 47.6, NeverFreezes(Source("memory")), NoTemperatures(), NoWeather())
    )
    day = date(2027, 3, 1)
    assert climate.day_length_h(day) == day_length_h(47.6, day)
