"""When crops may stand outdoors where it freezes all year, hardly, or about midwinter only."""

from collections.abc import Callable
from datetime import date, timedelta

import pytest

from planner.climate import Climate
from planner.garden import (
    Crop,
    DailyWeather,
    FreezeDates,
    FreezeDay,
    FreezesAllYear,
    FreezesOnRecord,
    NoTemperatures,
    NoWeather,
    Site,
)
from planner.growth import outdoor_times
from planner.reading.crops_file import read_crops
from planner.terms import MonthDay, Source, days_between

_MADE_UP = Source("memory")
_SEASON = (date(2027, 1, 1), date(2028, 12, 31))


def _crop(name: str) -> Crop:
    crop = read_crops(None, []).find(name)
    assert isinstance(crop, Crop)
    return crop


def _freezing_all_year(latitude_deg: float) -> Climate:
    site = Site("Here", latitude_deg, FreezesAllYear(_MADE_UP), NoTemperatures(), NoWeather())
    return Climate(site)


def _on_record(latitude_deg: float, low_on: Callable[[date], float]) -> Climate:
    first = date(1995, 1, 1)
    lows = tuple(low_on(day) for day in days_between(first, date(2024, 12, 31)))
    weather = DailyWeather(first, lows, tuple(low + 10 for low in lows), _MADE_UP)
    freezes = FreezesOnRecord(_MADE_UP)
    return Climate(Site("Here", latitude_deg, freezes, NoTemperatures(), weather))


def test_where_days_are_never_short_hardy_crops_stand_all_year() -> None:
    """High on a mountain at the equator any night may freeze, and no day has under 12 hours."""
    (time,) = outdoor_times(_crop("radish"), _freezing_all_year(0.0), 0.1, _SEASON)
    assert time.opens <= _SEASON[0]
    assert time.last_start >= _SEASON[1]
    assert time.ends >= _SEASON[1]


def test_where_any_night_may_freeze_hardy_crops_stand_in_the_half_year_of_long_days() -> None:
    times = outdoor_times(_crop("radish"), _freezing_all_year(40.0), 0.1, _SEASON)
    assert [time.opens.year for time in times] == [2027, 2028]
    for time in times:
        assert time.opens.month == 3
        assert time.ends.month == 9


def test_where_any_night_may_freeze_tender_crops_never_stand() -> None:
    assert outdoor_times(_crop("tomato"), _freezing_all_year(0.0), 0.1, _SEASON) == ()


@pytest.mark.parametrize(("latitude_deg", "midwinter"), [(30.0, 1), (-30.0, 7)])
def test_tender_crops_cross_midwinter_where_fewer_years_freeze_than_the_risk(
    latitude_deg: float, midwinter: int
) -> None:
    """One year in thirty froze; one in ten is risked."""

    def low(day: date) -> float:
        return -1.0 if day == date(2010, midwinter, 10) else 8.0

    climate = _on_record(latitude_deg, low)
    times = outdoor_times(_crop("tomato"), climate, 0.1, _SEASON)
    for day in days_between(*_SEASON):
        assert any(time.opens <= day <= time.last_start for time in times), day
    assert all(time.ends > time.opens + timedelta(days=366) for time in times[:-1])


def test_where_half_of_all_years_have_no_last_freeze_no_weeks_are_counted_from_it() -> None:
    """It froze on 20 January in one year of three: tender crops wait for the day of the risk."""

    def low(day: date) -> float:
        return -1.0 if (day.month, day.day) == (1, 20) and day.year % 3 == 0 else 8.0

    times = outdoor_times(_crop("tomato"), _on_record(30.0, low), 0.1, _SEASON)
    assert date(2027, 1, 20) in [time.opens for time in times]


def test_a_time_says_why_it_opens_and_ends() -> None:
    """Classes of hardiness and the weeks they wait: rules §7; a cover: §26."""
    freezes = FreezeDates(
        FreezeDay(MonthDay(4, 1), 11.7, _MADE_UP, _MADE_UP),
        FreezeDay(MonthDay(11, 1), 11.7, _MADE_UP, _MADE_UP),
    )
    climate = Climate(Site("Here", 40.0, freezes, NoTemperatures(), NoWeather()))
    season = (date(2027, 1, 1), date(2027, 12, 31))
    (tomato,) = outdoor_times(_crop("tomato"), climate, 0.1, season, 2)
    (alone,) = outdoor_times(_crop("tomato"), climate, 0.1, season)
    assert alone.opens - tomato.opens == timedelta(weeks=2)
    assert tomato.why_opens == f"{alone.why_opens}, and a cover lets it out 2 weeks earlier (§26)"
    assert alone.why_ends == f"before {alone.ends} at most 10% of years have frozen"
    (radish,) = outdoor_times(_crop("radish"), climate, 0.1, season, 2)
    assert "before the average last freeze (2027-04-01)" in radish.why_opens
    assert "beyond the average first freeze (2027-11-01)" in radish.why_ends
    garlic = outdoor_times(_crop("garlic"), climate, 0.1, season)
    assert {one.why_ends for one in garlic} == {"it stands through the winter"}
    # Started up to four weeks after the first freeze, it lives on into the next year's time.
    assert date(2027, 11, 29) in {one.last_start for one in garlic}


@pytest.mark.parametrize(
    ("freeze_risk", "told"),
    [
        (0.125, " at most 12.5% of years still freeze, and a cover lets it out 1 week earlier"),
        (0.9, "tender crops wait for the average last freeze (2027-04-01), and a cover"),
    ],
)
def test_shares_and_weeks_are_told_as_they_are(freeze_risk: float, told: str) -> None:
    freezes = FreezeDates(
        FreezeDay(MonthDay(4, 1), 11.7, _MADE_UP, _MADE_UP),
        FreezeDay(MonthDay(11, 1), 11.7, _MADE_UP, _MADE_UP),
    )
    climate = Climate(Site("Here", 40.0, freezes, NoTemperatures(), NoWeather()))
    season = (date(2027, 1, 1), date(2027, 12, 31))
    (time,) = outdoor_times(_crop("tomato"), climate, freeze_risk, season, 1)
    assert told in time.why_opens
