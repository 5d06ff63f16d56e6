"""Which past years of a record count for a season, and what they lack."""

import math
from collections.abc import Callable
from datetime import date

import pytest

from planner.climate import Climate, KnownTemperatures
from planner.garden import DailyWeather, FreezesOnRecord, NoTemperatures, Site
from planner.terms import Source, days_between

_MADE_UP = Source("memory")


def _known(
    first: date,
    last: date,
    season: tuple[date, date],
    lacks: Callable[[date], bool] = lambda _: False,
) -> KnownTemperatures:
    """A record from first to last whose temperatures say the year: 20.01 degC in 2001."""
    values = tuple(math.nan if lacks(day) else day.year / 100 for day in days_between(first, last))
    weather = DailyWeather(first, values, values, _MADE_UP)
    site = Site("Here", 45.0, FreezesOnRecord(_MADE_UP), NoTemperatures(), weather)
    known = Climate(site).season_temperatures(*season)
    assert isinstance(known, KnownTemperatures)
    return known


def _years(known: KnownTemperatures, day: date) -> list[int]:
    return [round(year.mean_degc(day) * 100) for year in known.past]


_SUMMER = (date(2027, 3, 1), date(2027, 10, 31))


def test_every_year_that_holds_the_season_counts_in_order() -> None:
    known = _known(date(2001, 1, 1), date(2010, 12, 31), _SUMMER)
    assert _years(known, date(2027, 7, 1)) == list(range(2001, 2011))
    assert known.words.startswith("10 past years")


def test_a_record_says_how_many_past_years_it_tells_of() -> None:
    """Of one that holds no season whole only the average year is known."""
    one = _known(date(2001, 1, 1), date(2001, 12, 31), _SUMMER)
    assert one.words == "1 past year (from memory, change it if you know better)"
    none = _known(date(2001, 6, 1), date(2002, 5, 31), _SUMMER)
    assert none.past == ()
    assert none.words.startswith("the average year of a record (")


def test_a_year_is_not_judged_by_the_days_after_the_season() -> None:
    """The record ends with the season of 2010: its winter is taken from the average year."""
    known = _known(date(2001, 1, 1), date(2010, 10, 31), _SUMMER)
    assert _years(known, date(2027, 7, 1))[-1] == 2010
    assert known.past[-1].mean_degc(date(2028, 1, 15)) == pytest.approx(20.06, abs=0.01)


def test_a_year_that_lacks_a_month_and_a_half_of_the_season_is_left_out() -> None:
    known = _known(
        date(2001, 1, 1),
        date(2010, 12, 31),
        _SUMMER,
        lambda day: date(2005, 6, 1) <= day <= date(2005, 7, 20),
    )
    assert 2005 not in _years(known, date(2027, 9, 1))
    assert len(known.past) == 9


def test_a_season_from_new_year_on_counts_the_first_year_of_the_record() -> None:
    """The days before it lie in the year before the record."""
    season = (date(2027, 1, 5), date(2027, 12, 31))
    known = _known(date(2001, 1, 1), date(2010, 12, 31), season)
    assert _years(known, date(2027, 7, 1)) == list(range(2001, 2011))


def test_of_many_years_the_latest_thirty_count() -> None:
    """Years left out do not use up a place among the thirty."""
    known = _known(
        date(1951, 1, 1), date(2010, 12, 31), _SUMMER, lambda day: day.year in {1995, 2002}
    )
    years = _years(known, date(2027, 7, 1))
    assert len(years) == 30
    assert (years[0], years[-1]) == (1979, 2010)
