"""A season revised by its own temperatures, as its weather file grows day by day.

The record is made up: thirty years of a cosine (tests/trial/records.py), and a season that swings
about it by a few degrees from week to week. That what stands ready in the week it is wanted is
still picked when it ripens a day sooner or later is common practice, no source.
"""

import math
from dataclasses import replace
from datetime import date, timedelta

import pytest

from planner.garden import DailyWeather, Garden
from planner.scheduling import Sowing, SowingState
from planner.season import EarlierSeason, Season, make_season
from tests.trial.records import FIRST_YEAR, SWING_DEGC, plan_of, recorded_garden, wave

_PLAN = plan_of(
    ("radish", "20 roots", "2027-05-03", "2027-10-17"),
    ("leaf lettuce", "1 lb", "2027-05-24", "2027-10-17"),
    ("bush bean", "1 lb", "2027-07-05", "2027-09-26"),
    ("beet", "8 roots", "2027-06-07", "2027-10-31"),
    ("potato", "2 lb", "2027-08-02", "2027-10-31"),
)
_AVERAGE = wave(13, 8)
_GARDEN = recorded_garden(_PLAN, _AVERAGE)
_FORTNIGHT = timedelta(days=14)


def _known(until: date, warmer_degc: float) -> Garden:
    """The garden with the season's own days up to one, swinging about the average."""
    weather = _GARDEN.site.weather
    assert isinstance(weather, DailyWeather)
    first = date(FIRST_YEAR, 1, 1)
    lows, highs = [*weather.low_degc], [*weather.high_degc]
    for number in range(len(lows), (until - first).days):
        day = first + timedelta(days=number)
        swing = warmer_degc + 3 * math.sin(day.toordinal() / 4)
        mean = _AVERAGE(day) + swing if day.year == until.year else math.nan
        lows.append(mean - SWING_DEGC)
        highs.append(mean + SWING_DEGC)
    grown = DailyWeather(first, tuple(lows), tuple(highs), weather.source)
    return replace(_GARDEN, site=replace(_GARDEN.site, weather=grown))


def _revised(season: Season, garden: Garden, day: date) -> Season:
    earlier = EarlierSeason(season.plan_id, season.sowings, season.names_given, season.basis)
    return make_season(garden, day, earlier, 0)


def _had(sowing: Sowing) -> float:
    return sum(one.amount for one in sowing.harvest)


@pytest.mark.parametrize("warmer_degc", [-0.5, 0.0, 0.5])
def test_what_ripens_a_little_sooner_or_later_is_still_picked(warmer_degc: float) -> None:
    season = make_season(_GARDEN, _GARDEN.wish.first, None, 0)
    first = season.measures.fill
    day = _GARDEN.wish.first + _FORTNIGHT
    seen = 0
    while day <= _GARDEN.wish.last:
        before = {one.id: one for one in season.sowings}
        season = _revised(season, _known(day, warmer_degc), day)
        for one in season.sowings:
            if one.state is SowingState.BEGUN and one.id in before:
                was = before[one.id]
                seen += one.ripe.likely != was.ripe.likely
                assert _had(one) >= 0.6 * _had(was), (day, was, one)
        day += _FORTNIGHT
    assert seen > 10
    assert season.measures.fill >= 0.8 * first
