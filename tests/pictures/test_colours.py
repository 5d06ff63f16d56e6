"""Colours and hatches: legible, told apart without colour, and safe for colour-blind eyes.

Sources: colours by TOL2021; contrast as in tests/contrast.py.
"""

import re
from itertools import combinations

import pytest

from planner.almanac import bibliography, crop_pages
from planner.pictures import bed_year, colours_in_the_dark, garden_plan, harvest_weeks
from planner.pictures.family_marks import HATCHES, KEPT, TOL_LIGHT, FamilyMark, marks_of
from planner.pictures.svg import FAINT_INK, INK, PAPER
from tests.contrast import LEAST_OF_GRAPHICS, LEAST_OF_TEXT, SEEN_AS, contrast, luminance
from tests.pictures.gardens import SEASONS, season_named
from tests.published import published_rows

_FAMILIES = {page.used["family"].low for page in crop_pages().values()}
_MARKS = {**marks_of(_FAMILIES), "kept": KEPT}


def test_the_formula_gives_what_the_standard_says_of_black_on_white() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


def test_colours_are_those_of_the_published_scheme() -> None:
    rows = published_rows("colour_schemes.csv")
    assert {row["colour"]: row["hex"] for row in rows} == TOL_LIGHT


@pytest.mark.parametrize("table", ["colour_schemes.csv", "colour_sight.csv", "letter_widths.csv"])
def test_the_tables_of_this_room_have_a_source(table: str) -> None:
    assert {row["source"] for row in published_rows(table)} <= set(bibliography())


@pytest.mark.parametrize("sight", SEEN_AS)
@pytest.mark.parametrize("mark", _MARKS.values(), ids=_MARKS)
def test_words_stand_out_on_every_ground(mark: FamilyMark, sight: str) -> None:
    for ground in (PAPER, mark.pale, mark.full):
        assert contrast(INK, ground, sight) >= LEAST_OF_TEXT


@pytest.mark.parametrize("sight", SEEN_AS)
@pytest.mark.parametrize("mark", _MARKS.values(), ids=_MARKS)
def test_hatches_edges_and_bars_stand_out(mark: FamilyMark, sight: str) -> None:
    assert contrast(FAINT_INK, mark.pale, sight) >= LEAST_OF_GRAPHICS
    assert contrast(INK, mark.full, sight) >= LEAST_OF_GRAPHICS
    assert contrast(INK, mark.pale, sight) >= LEAST_OF_GRAPHICS


@pytest.mark.parametrize("sight", SEEN_AS)
@pytest.mark.parametrize("mark", _MARKS.values(), ids=_MARKS)
def test_in_the_dark_words_hatches_and_edges_stand_out_too(mark: FamilyMark, sight: str) -> None:
    dark = colours_in_the_dark()
    ink, faint = dark[INK], dark[FAINT_INK]
    for ground in (dark[PAPER], dark[mark.pale], dark[mark.full]):
        assert contrast(ink, ground, sight) >= LEAST_OF_TEXT
    assert contrast(faint, dark[mark.pale], sight) >= LEAST_OF_GRAPHICS
    assert contrast(faint, dark[PAPER], sight) >= LEAST_OF_TEXT


def test_in_the_dark_what_is_harvested_is_lighter_and_what_is_paler_by_day_is_darker() -> None:
    dark = colours_in_the_dark()
    for mark in _MARKS.values():
        by_light = [luminance(dark[one]) for one in (PAPER, mark.pale, mark.full, INK)]
        assert by_light == sorted(by_light)
        assert contrast(dark[mark.full], dark[mark.pale]) > 1.4


@pytest.mark.parametrize("name", SEASONS)
def test_every_colour_of_every_picture_has_its_dark_one(name: str) -> None:
    season = season_named(name)
    pictures = [
        garden_plan(season),
        *(bed_year(season, bed.name) for bed in season.garden.beds),
        *(harvest_weeks(season, crop) for crop in season.garden.crops),
    ]
    found = {one for text in pictures for one in re.findall(r'(?:fill|stroke)="([^"]+)"', text)}
    own = {one for one in found if one.startswith("url(#") or one == "none"}
    assert found - own <= set(colours_in_the_dark())
    assert len(found - own) > 5


def test_every_family_of_the_almanac_has_a_hatch_of_its_own() -> None:
    assert set(_MARKS) == {*_FAMILIES, "kept"}
    hatches = [mark.hatch for mark in _MARKS.values()]
    assert len(set(hatches)) == len(hatches)


def test_no_two_hatches_are_drawn_alike() -> None:
    for (one, (side, path)), (other, (its_side, its_path)) in combinations(HATCHES.items(), 2):
        assert (side, path) != (its_side, its_path), (one, other)


def test_families_of_one_colour_are_few_and_told_apart_by_their_hatch() -> None:
    for one, other in combinations(_MARKS.values(), 2):
        if one.full == other.full:
            assert one.hatch != other.hatch


def test_a_family_looks_the_same_whatever_else_is_grown() -> None:
    few = marks_of({"Fabaceae", "Apiaceae"})
    assert all(_MARKS[name] == mark for name, mark in few.items())


def test_families_nobody_knows_have_hatches_that_mean_nothing_else() -> None:
    strange = {"Portulacaceae", "Polygonaceae"}
    taken = {mark.hatch for mark in _MARKS.values()}
    hatches = [mark.hatch for mark in marks_of(strange).values()]
    assert len(set(hatches)) == 2
    assert not taken & set(hatches)


def test_a_family_nobody_knows_has_a_mark_and_one_not_stated_says_so() -> None:
    marks = marks_of({"Portulacaceae", ""})
    assert marks["Portulacaceae"].name == "Portulacaceae"
    assert marks[""].name == "family not stated"
    assert marks[""].hatch != marks["Portulacaceae"].hatch
