"""Measures of a trial by their textbook definitions, worked out by hand."""

from datetime import date, timedelta
from statistics import pstdev

import pytest

from planner.climate import Climate
from planner.season import make_season
from planner.terms import week_of
from planner.trial import (
    Basis,
    CropTrial,
    Failing,
    TooFewPicks,
    Trial,
    WeakWeek,
    trial_of,
    tried_years,
)
from planner.trial.eaten import harvest_by_week
from planner.trial.replay import Replay
from tests.plan_text import garden_of
from tests.trial.records import plan_of

_WEEKS = [week_of(date(2027, 5, 3)).after(number) for number in range(5)]
_PLAN = plan_of(
    ("radish", "10 roots", "2027-05-03", "2027-05-30"),
    ("beet", "8 roots", "2027-06-07", "2027-09-26"),
).replace('weather = "weather.csv"', 'last_spring_freeze = "04-01"\nfirst_fall_freeze = "11-01"')
_GARDEN = garden_of(_PLAN)
_RADISH = _GARDEN.crops["radish"]


def _crop_trial() -> CropTrial:
    """Four weeks want 10 each; the fifth, unwanted, gets what is left."""
    wants = dict.fromkeys(_WEEKS[:4], 10.0)
    amounts = ((10, 5, 0, 12, 3), (10, 10, 10, 10, 0), (0, 0, 20, 9, 0))
    years = tuple(
        {week: float(amount) for week, amount in zip(_WEEKS, year, strict=True) if amount}
        for year in amounts
    )
    first = date(2027, 5, 5)
    picks = tuple(
        tuple(first + timedelta(days=days) for days in year)
        for year in ((0, 7, 17), (0, 7, 14, 21), (0, 9))
    )
    return CropTrial(_RADISH, wants, years, picks)


def test_fill_is_the_share_of_the_amount_wanted_that_is_met() -> None:
    """(10 + 5 + 0 + 10) / 40, (4 x 10) / 40, (0 + 0 + 10 + 9) / 40: surplus never makes up."""
    trial = _crop_trial()
    assert [trial.fill_in(year) for year in range(3)] == pytest.approx([0.625, 1.0, 0.475])
    assert trial.fill == pytest.approx(0.7)


def test_weeks_met_is_the_share_of_weeks_met_in_full() -> None:
    """Two of four, four of four, one of four: seven of twelve."""
    assert _crop_trial().weeks_met == pytest.approx(7 / 12)


def test_weeks_with_nothing_are_counted_for_an_average_year() -> None:
    """One, none and two wanted weeks."""
    assert _crop_trial().weeks_with_nothing == pytest.approx(1.0)


def test_a_week_holds_with_nine_tenths() -> None:
    trial = _crop_trial()
    shares = [trial.share_holding(week) for week in trial.wants]
    assert shares == pytest.approx([2 / 3, 1 / 3, 2 / 3, 1.0])


def test_poor_usual_and_good_are_years_in_order() -> None:
    trial = _crop_trial()
    fourth = _WEEKS[3]
    assert (trial.poor[fourth], trial.usual[fourth], trial.good[fourth]) == (9, 10, 12)
    assert (trial.poor[_WEEKS[4]], trial.good[_WEEKS[4]]) == (0, 3)


def test_the_interval_spread_is_a_standard_deviation_of_days() -> None:
    """Intervals 7 and 10 spread by 1.5 days, three of 7 by none; one interval has no spread."""
    assert pstdev((7, 10)) == 1.5
    assert _crop_trial().interval_spreads == [1.5, 0.0]
    trial = Trial(Basis.PAST_YEARS, (_crop_trial(),), (0.5, 0.7), ())
    assert trial.interval_spread_days == 0.75
    assert trial.fill == pytest.approx(0.6)
    bare = CropTrial(_RADISH, {}, ({},), ((),))
    assert isinstance(
        Trial(Basis.PAST_YEARS, (bare,), (0.0,), ()).interval_spread_days, TooFewPicks
    )


def test_what_ends_first_is_eaten_first_and_the_rest_falls_into_its_last_week() -> None:
    season = make_season(_GARDEN, _GARDEN.wish.first, None, 0)
    sowing = next(one for one in season.sowings if one.crop is _RADISH)
    one, two, three = _WEEKS[:3]
    long = Replay(sowing, one.monday, {week: week.monday for week in (one, two, three)}, {}, 25.0)
    short = Replay(sowing, one.monday, {week: week.monday for week in (one, two)}, {}, 12.0)
    had = harvest_by_week([long, short], {one: 10.0, two: 10.0, three: 5.0})
    assert had == {one: 10.0, two: 10.0, three: 17.0}


def test_a_week_nothing_is_planned_for_is_told_after_those_that_are_promised() -> None:
    season = make_season(_GARDEN, _GARDEN.wish.first, None, 0)
    tried = tried_years(_GARDEN, Climate(_GARDEN.site))
    trial = trial_of((), tried, season.as_of)
    assert trial.basis is Basis.STATED_SPREAD
    assert trial.years == 3
    assert trial.fills == (0.0, 0.0, 0.0)
    assert [one.failing for one in trial.weakest] == [Failing.NEVER_PLANNED] * 3
    assert trial.weakest[0] == WeakWeek("radish", _WEEKS[0], 0.0, Failing.NEVER_PLANNED)


def test_without_a_record_the_likely_case_is_the_plan() -> None:
    season = make_season(_GARDEN, _GARDEN.wish.first, None, 0)
    tried = tried_years(_GARDEN, Climate(_GARDEN.site))
    trial = trial_of(season.sowings, tried, season.as_of)
    assert trial.fills[1] == pytest.approx(season.measures.fill)
    assert min(trial.fills) < trial.fills[1]
