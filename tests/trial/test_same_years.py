"""Where every year is the same, what is tried is what was promised."""

from datetime import date

import pytest

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Room, SowingState, Thumb, rule_of_thumb
from planner.season import EarlierSeason, Season, beside_thumb, make_season
from planner.terms import Week
from planner.trial import Basis, Trial, trial_of, tried_years
from tests.trial.records import Degc, constant, plan_of, recorded_garden, wave

_MANY = plan_of(
    ("radish", "20 roots", "2027-05-03", "2027-10-17"),
    ("leaf lettuce", "1 lb", "2027-05-24", "2027-10-17"),
    ("bush bean", "1 lb", "2027-07-05", "2027-09-26"),
    ("kale", "1 lb", "2027-06-07", "2027-10-31"),
    ("potato", "2 lb", "2027-08-02", "2027-10-31"),
    ("tomato", "2 lb", "2027-08-02", "2027-09-26"),
)
_ONE_BED = plan_of(
    ("beet", "8 roots", "2027-06-07", "2027-10-31"),
    ("radish", "12 roots", "2027-05-10", "2027-10-31"),
    length="8 ft",
)
_YEARS = pytest.mark.parametrize(
    "degc", [constant(17), wave(13, 8), wave(12, 9)], ids=["constant", "mild", "light frosts"]
)
_PLANS = pytest.mark.parametrize("plan", [_MANY, _ONE_BED], ids=["many crops", "one bed"])


def _trial(garden: Garden, season: Season) -> Trial:
    return trial_of(season.sowings, tried_years(garden, Climate(garden.site)), season.as_of)


def _earlier(season: Season) -> EarlierSeason:
    return EarlierSeason(season.plan_id, season.sowings, season.names_given, season.basis)


def _only_something(weeks: dict[Week, float]) -> dict[Week, float]:
    return {week: amount for week, amount in weeks.items() if amount > 1e-6}


@_YEARS
@_PLANS
def test_every_week_has_what_the_plan_expects(plan: str, degc: Degc) -> None:
    garden = recorded_garden(plan, degc)
    season = make_season(garden, garden.wish.first, None, 0)
    trial = _trial(garden, season)
    assert season.sowings
    assert (trial.basis, trial.years) == (Basis.PAST_YEARS, 30)
    for outlook, crop in zip(season.outlooks, trial.crops, strict=True):
        expected = _only_something(outlook.supply.expected)
        for year in crop.years:
            assert _only_something(year) == pytest.approx(expected)
        assert crop.poor == crop.usual == crop.good
        assert crop.weeks_met == pytest.approx(outlook.weeks_met)
    assert trial.fill == pytest.approx(season.measures.fill)
    assert trial.weeks_met == pytest.approx(season.measures.weeks_met)


@_YEARS
@_PLANS
def test_the_rule_of_thumb_gives_what_it_promises(plan: str, degc: Degc) -> None:
    garden = recorded_garden(plan, degc)
    climate = Climate(garden.site)
    thumb = rule_of_thumb(garden, climate, garden.wish.first, Thumb.KNOWS_SEASON, Room.LIMITED)
    trial = trial_of(thumb.grown, tried_years(garden, climate), garden.wish.first)
    assert thumb.fill > 0
    assert trial.fills == pytest.approx([thumb.fill] * 30)
    for one in trial.crops:
        assert one.fill == pytest.approx(thumb.shares[one.crop.name])


def test_what_is_promised_is_the_fill_of_the_season() -> None:
    garden = recorded_garden(_MANY, wave(13, 8))
    season = make_season(garden, garden.wish.first, None, 0)
    beside = beside_thumb(garden, _earlier(season), season.as_of)
    assert beside.promised == pytest.approx(season.measures.fill)
    assert beside.thumb_promised < beside.promised


@_YEARS
@_PLANS
def test_what_has_begun_goes_on_as_planned(plan: str, degc: Degc) -> None:
    """What was had before the day of planning was had in every year."""
    garden = recorded_garden(plan, degc)
    first = make_season(garden, garden.wish.first, None, 0)
    season = make_season(garden, date(2027, 8, 18), _earlier(first), 0)
    states = {one.state for one in season.sowings}
    assert SowingState.BEGUN in states
    trial = _trial(garden, season)
    assert trial.fill == pytest.approx(season.measures.fill)
    for outlook, crop in zip(season.outlooks, trial.crops, strict=True):
        expected = _only_something(outlook.supply.expected)
        assert _only_something(crop.usual) == pytest.approx(expected)


@_PLANS
def test_a_revision_in_a_year_like_all_others_has_nothing_to_mend(plan: str) -> None:
    garden = recorded_garden(plan, wave(13, 8))
    season = make_season(garden, garden.wish.first, None, 0)
    begun: list[int] = []
    revised = beside_thumb(garden, _earlier(season), season.as_of, 2, begun.append).revised
    assert begun == [1, 2]
    assert revised.kept == pytest.approx((season.measures.fill,) * 2)
    assert revised.revised == pytest.approx(revised.kept, abs=0.02)
