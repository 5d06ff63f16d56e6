"""A crop's harvest by week: bars as tall as the amounts of the season."""

from dataclasses import replace

import pytest

from planner.pictures import harvest_weeks
from planner.season import CropOutlook, Season
from tests.pictures.drawing import Drawing, numbers, rectangle_of, title_of, words_of
from tests.pictures.gardens import SEASONS, season_named

_NEAR = 0.02  # px: numbers are written to hundredths


def _crops(season: Season) -> list[tuple[CropOutlook, Drawing]]:
    return [(one, Drawing(harvest_weeks(season, one.crop.name))) for one in season.outlooks]


def _scale(drawing: Drawing) -> tuple[float, float]:
    """Where nothing stands, and px for one of the unit, read off the scale at the left."""
    marks = {
        float(words_of(one)): float(one.get("y", "0")) - 3.5
        for one in drawing.words()
        if one.get("text-anchor") == "end" and words_of(one) != "week"
    }
    highest = max(marks)
    return marks[0], (marks[0] - marks[highest]) / highest


@pytest.mark.parametrize("name", SEASONS)
def test_bars_are_as_tall_as_the_amounts(name: str) -> None:
    for outlook, drawing in _crops(season_named(name)):
        foot, unit_px = _scale(drawing)
        expected = {str(week): amount for week, amount in outlook.supply.expected.items()}
        wanted = {str(week): amount for week, amount in outlook.wants.items()}
        drawn = {one.get("data-week") or "": one for one in drawing.every("g", class_="week")}
        assert set(wanted) <= set(drawn)
        assert {week for week, amount in expected.items() if amount} <= set(drawn)
        for week, group in drawn.items():
            bars = {
                one.get("class"): rectangle_of(one) for one in group if one.tag.endswith("rect")
            }
            for kind, amounts in (("wanted", wanted), ("expected", expected)):
                amount = amounts.get(week, 0.0)
                assert (kind in bars) == (amount > 0), (outlook.crop.name, week, kind)
                if amount:
                    assert bars[kind].bottom == pytest.approx(foot, abs=_NEAR)
                    tall = bars[kind].bottom - bars[kind].top
                    assert tall == pytest.approx(amount * unit_px, abs=_NEAR * 2)


@pytest.mark.parametrize("name", SEASONS)
def test_the_bounds_go_from_the_low_to_the_high(name: str) -> None:
    for outlook, drawing in _crops(season_named(name)):
        foot, unit_px = _scale(drawing)
        low, high = outlook.supply.low, outlook.supply.high
        bounds = {
            group.get("data-week"): numbers(line, "y1", "y2")
            for group in drawing.every("g", class_="week")
            for line in group
            if line.get("class") == "bounds"
        }
        for week, most in high.items():
            if most - low[week] > 1e-6:
                begin, end = bounds[str(week)]
                assert foot - begin == pytest.approx(low[week] * unit_px, abs=_NEAR * 2)
                assert foot - end == pytest.approx(most * unit_px, abs=_NEAR * 2)


@pytest.mark.parametrize("name", SEASONS)
def test_the_weeks_told_to_be_unmet_are_marked_and_no_others(name: str) -> None:
    for outlook, drawing in _crops(season_named(name)):
        told = {str(one.week) for one in outlook.unmet}
        for kind in ("short", "unmet"):
            marked = {
                group.get("data-week")
                for group in drawing.every("g", class_="week")
                for one in group
                if one.get("class") == kind
            }
            assert marked == told, (outlook.crop.name, kind)
        shorts = [one for one in drawing.every("g", class_="week") if "short of" in title_of(one)]
        assert {one.get("data-week") for one in shorts} == told


@pytest.mark.parametrize("name", SEASONS)
def test_the_description_tells_every_week(name: str) -> None:
    for outlook, drawing in _crops(season_named(name)):
        said = drawing.text_of("desc")
        assert all(str(week) in said for week in outlook.wants)
        assert said.count(", unmet. ") == len(outlook.unmet)


def test_weeks_follow_each_other_even_where_nothing_is_wanted() -> None:
    season = season_named("tern_bay")
    drawing = Drawing(harvest_weeks(season, "radish"))
    weeks = [one.get("data-week") or "" for one in drawing.every("g", class_="week")]
    first = min(next(one for one in season.outlooks if one.crop.name == "radish").wants)
    begin = weeks.index(str(first))
    assert weeks[begin:] == [str(first.after(n)) for n in range(len(weeks) - begin)]


def test_the_bounds_of_past_years_are_told_as_such() -> None:
    season = season_named("ferry_street")
    tried = replace(season, tried_fills=(0.8, 0.9))
    by_dates = Drawing(harvest_weeks(season, "radish")).text_of("desc")
    by_years = Drawing(harvest_weeks(tried, "radish")).text_of("desc")
    assert "by the early and the late dates" in by_dates
    assert "one and nine past years in ten have less" in by_years


def test_a_crop_of_which_nothing_can_be_had_is_drawn() -> None:
    season = season_named("stony_ridge")
    outlook = season.outlooks[0]
    nothing = dict.fromkeys(outlook.wants, 0.0)
    supply = replace(outlook.supply, expected=nothing, low=nothing, high=nothing)
    bare = replace(season, outlooks=(replace(outlook, supply=supply),))
    drawing = Drawing(harvest_weeks(bare, outlook.crop.name))
    marked = list(drawing.every("rect", class_="unmet"))
    assert len(marked) == len(outlook.wants)


def test_a_crop_that_is_not_wanted_has_no_picture() -> None:
    with pytest.raises(KeyError):
        harvest_weeks(season_named("ferry_street"), "durian")
