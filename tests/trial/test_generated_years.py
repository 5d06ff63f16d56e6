"""Whatever the garden and whatever the years: a trial gives no more than plants can."""

from dataclasses import replace
from datetime import date
from itertools import accumulate
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from planner.climate import Climate
from planner.garden import Cut, DailyWeather, Garden
from planner.scheduling import Room, Sowing, Thumb, rule_of_thumb
from planner.season import make_season
from planner.terms import Source
from planner.trial import TriedYears, trial_of, tried_years
from planner.trial.trial import _replays
from tests.test_generated_gardens import SOME, Written, earlier_of, garden_from, gardens
from tests.trial.records import wave

_YEARS = 12
_TINY = 1e-6


def _with_years(garden: Garden, seed: int) -> Garden:
    """The garden with twelve restless years on record, warm or cold as the seed has it."""
    chance = Random(seed)  # noqa: S311 - chance that comes back, no secret
    mean, swing = chance.uniform(6, 20), chance.uniform(4, 14)
    first = date(2010, 1, 1)
    days = [date.fromordinal(first.toordinal() + number) for number in range(365 * _YEARS + 3)]
    degc = wave(mean, swing)
    drift = accumulate(days, lambda was, _: 0.8 * was + chance.gauss(0, 2.5), initial=0.0)
    means = [degc(day) + off for day, off in zip(days, drift, strict=False)]
    weather = DailyWeather(
        first,
        tuple(one - 6.0 for one in means),
        tuple(one + 6.0 for one in means),
        Source("made up"),
    )
    return replace(garden, site=replace(garden.site, weather=weather))


def _most(sowing: Sowing) -> float:
    times = int(sowing.crop.habit.cuts.middle) if isinstance(sowing.crop.habit, Cut) else 1
    return sowing.plants * sowing.crop.gives.middle * times


def _gives_no_more_than_plants_can(
    sowings: tuple[Sowing, ...], tried: TriedYears, as_of: date
) -> None:
    trial = trial_of(sowings, tried, as_of)
    replays = _replays(sowings, tried, as_of)
    for one in replays:
        most = _most(one[0].sowing)
        for replay in one:
            gives = sum(replay.flow.values()) + sum(replay.had.values()) + replay.lump
            assert gives <= most + _TINY
            enters_on = replay.sowing.enters_on
            assert all(enters_on < day <= replay.killed_on for day in replay.days.values())
    for crop in trial.crops:
        mine = [one for one in replays if one[0].sowing.crop == crop.crop]
        for year, had in enumerate(crop.years):
            lump = sum(one[year].lump for one in mine)
            flow = sum(sum(one[year].flow.values()) for one in mine)
            known = sum(sum(one[year].had.values()) for one in mine)
            assert abs(sum(had.values()) - lump - flow - known) < _TINY * (1 + lump + flow)
            assert min(had.values(), default=0.0) >= 0
        for week in crop.weeks:
            assert crop.poor[week] <= crop.usual[week] <= crop.good[week]
    assert all(0 <= fill <= 1 + _TINY for fill in trial.fills)


@SOME
@given(gardens(), st.integers(0, 10**6))
def test_a_trial_never_gives_more_than_plants_can(written: Written, seed: int) -> None:
    garden = _with_years(garden_from(written), seed)
    season = make_season(garden, written.as_of, None, 0)
    tried = tried_years(garden, Climate(garden.site))
    _gives_no_more_than_plants_can(season.sowings, tried, written.as_of)
    thumb = rule_of_thumb(
        garden, Climate(garden.site), written.as_of, Thumb.KNOWS_SEASON, Room.LIMITED
    )
    _gives_no_more_than_plants_can(thumb.grown, tried, written.as_of)
    for outlook in season.outlooks:
        supply = outlook.supply
        for week, expected in supply.expected.items():
            assert supply.low[week] <= expected <= supply.high[week]


@SOME
@given(gardens())
def test_a_stated_spread_never_gives_more_either(written: Written) -> None:
    garden = garden_from(written)
    season = make_season(garden, written.as_of, None, 0)
    tried = tried_years(garden, Climate(garden.site))
    assert tried.count == 3
    _gives_no_more_than_plants_can(season.sowings, tried, written.as_of)
    later = make_season(garden, written.later, earlier_of(season, written.later), 0)
    _gives_no_more_than_plants_can(later.sowings, tried, written.later)
