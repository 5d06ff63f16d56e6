"""Growth counted by the calendar, day by day: fall, midwinter, and days under ten hours.

The whole two weeks of fall: VCE-FALL; that little grows under ten hours: OSU-10H. How the two
weeks come in and fade is from memory (decision 3). The shortest day: 21 December, in the south
21 June (any almanac).
"""

from datetime import date, timedelta

import pytest

from planner.climate import Climate
from planner.garden import FreezeDates, FreezeDay, NoTemperatures, NoWeather, Site
from planner.growth import Pace
from planner.terms import MonthDay, Source

_MADE_UP = Source("memory")
_FALL = date(2027, 11, 1)


def _climate(latitude_deg: float, spring: str, fall: str) -> Climate:
    days = (
        FreezeDay(MonthDay(*map(int, one.split("-"))), 11.7, _MADE_UP, _MADE_UP)
        for one in (spring, fall)
    )
    site = Site("Here", latitude_deg, FreezeDates(*days), NoTemperatures(), NoWeather())
    return Climate(site)


@pytest.fixture(scope="module")
def north() -> Pace:
    """A place at 35 degrees north, where no day is under ten hours but about midwinter."""
    return Pace(_climate(35.0, "04-01", "11-01"), date(2027, 1, 1), date(2028, 12, 31))


@pytest.fixture(scope="module")
def south() -> Pace:
    """The same six months on, at 35 degrees south."""
    return Pace(_climate(-35.0, "10-01", "05-01"), date(2027, 1, 1), date(2028, 12, 31))


@pytest.mark.parametrize(
    ("day", "extra"),
    [
        (_FALL - timedelta(days=71), 0.0),
        (_FALL - timedelta(days=70), 0.0),
        (_FALL - timedelta(days=60), 14 * 10 / 40),
        (_FALL - timedelta(days=50), 14 * 20 / 40),
        (_FALL - timedelta(days=30), 14.0),
        (_FALL, 14.0),
        (date(2027, 12, 21), 14.0),
        # Forty days from midwinter on it has faded; half way it is half.
        (date(2028, 1, 11), 14 * 19 / 40),
        (date(2028, 1, 29), 14 / 40),
        (date(2028, 1, 30), 0.0),
        (date(2028, 6, 1), 0.0),
    ],
)
def test_the_two_weeks_of_fall_come_in_stay_and_fade(day: date, extra: float, north: Pace) -> None:
    # The shortest day is the 21st or 22nd; a day of fading is 0.35 of a day.
    assert north.fall_extra_days(day) == pytest.approx(extra, abs=0.36)


@pytest.mark.parametrize(
    ("day", "extra"),
    [
        (date(2027, 2, 19), 0.0),
        (date(2027, 3, 12), 7.0),
        (date(2027, 4, 1), 14.0),
        (date(2027, 6, 21), 14.0),
        (date(2027, 7, 11), 7.0),
        (date(2027, 7, 31), 0.0),
        (date(2027, 12, 21), 0.0),
    ],
)
def test_in_the_south_fall_is_in_may_and_fades_from_june(
    day: date, extra: float, south: Pace
) -> None:
    assert south.fall_extra_days(day) == pytest.approx(extra, abs=0.36)


def test_a_freeze_after_midwinter_keeps_the_two_weeks_until_then() -> None:
    pace = Pace(_climate(30.0, "02-10", "01-10"), date(2027, 1, 1), date(2028, 12, 31))
    assert pace.fall_extra_days(date(2028, 1, 10)) == pytest.approx(14.0)
    assert pace.fall_extra_days(date(2028, 1, 30)) == pytest.approx(7.0, abs=0.36)


def test_a_fall_that_begins_after_midwinter_is_over_in_spring() -> None:
    """It was counted on to the next midwinter, so that spring and summer crops took longer too."""
    pace = Pace(_climate(28.0, "02-20", "01-31"), date(2027, 1, 1), date(2028, 12, 31))
    assert pace.fall_extra_days(date(2028, 1, 31)) == pytest.approx(14.0)
    assert pace.fall_extra_days(date(2028, 2, 20)) == pytest.approx(7.0)
    for month in range(4, 11):
        assert pace.fall_extra_days(date(2028, month, 1)) == 0.0
    south = Pace(_climate(-28.0, "08-20", "07-31"), date(2027, 1, 1), date(2028, 12, 31))
    assert south.fall_extra_days(date(2027, 7, 31)) == pytest.approx(14.0)
    assert south.fall_extra_days(date(2027, 11, 1)) == 0.0


@pytest.mark.parametrize(("days", "day"), [(0, 1), (1, 2), (10, 11), (9.5, 11), (29, 30)])
def test_in_summer_a_growing_day_is_a_day(days: float, day: int, north: Pace) -> None:
    assert north.day_after(date(2027, 5, 1), days) == date(2027, 5, day)
    assert north.ripe_on(date(2027, 5, 1), days) == date(2027, 5, day)


def test_under_ten_hours_a_growing_day_takes_four() -> None:
    """At 60 degrees north the days of December have six hours."""
    pace = Pace(_climate(60.0, "05-10", "09-20"), date(2027, 1, 1), date(2028, 12, 31))
    assert pace.day_after(date(2027, 12, 1), 1) == date(2027, 12, 5)
    assert pace.day_after(date(2027, 12, 1), 5) == date(2027, 12, 21)


def test_a_crop_of_fall_is_ripe_two_weeks_later(north: Pace) -> None:
    """VCE-FALL: counted back from the freeze, days to maturity and about two weeks."""
    for days in (30, 60, 90):
        sown = _FALL - timedelta(days=days + 14)
        assert north.ripe_on(sown, days) == _FALL


def test_what_is_never_ripe_within_reach_is_told_as_the_last_day(north: Pace) -> None:
    beyond = north.ripe_on(date(2028, 12, 30), 5_000)
    assert beyond == north.day_after(date(2028, 12, 30), 5_000)
    assert beyond == date(2028, 12, 31) + timedelta(days=900)
