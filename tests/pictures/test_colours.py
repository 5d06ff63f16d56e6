"""Colours and hatches: legible, told apart without colour, and safe for colour-blind eyes.

Sources: relative luminance and contrast ratio by WCAG 2.2, with its limits of 4.5:1 for text
(1.4.3) and 3:1 for graphics (1.4.11), from memory; colours by TOL2021; what colour-blind eyes
see by the matrices of MACHADO2009 for a severity of 1, in linear RGB.
"""

from itertools import combinations

import pytest

from planner.almanac import bibliography, crop_pages
from planner.pictures.family_marks import HATCHES, KEPT, TOL_LIGHT, FamilyMark, marks_of
from planner.pictures.svg import FAINT_INK, INK, PAPER
from tests.published import published_rows

_TEXT, _GRAPHICS = 4.5, 3.0
_SEEN_AS = {"usual": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))} | {
    sight: tuple(
        tuple(float(row[light]) for light in ("red", "green", "blue"))
        for row in published_rows("colour_sight.csv")
        if row["sight"] == sight
    )
    for sight in ("protan", "deutan", "tritan")
}
_FAMILIES = {page.used["family"].low for page in crop_pages().values()}
_MARKS = {**marks_of(_FAMILIES), "kept": KEPT}


def _linear(colour: str) -> tuple[float, ...]:
    """Red, green and blue light of #rrggbb, 0 to 1 (sRGB)."""
    shares = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    return tuple(
        one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in shares
    )


def _luminance(colour: str, sight: str = "usual") -> float:
    light = _linear(colour)
    seen = [
        min(1.0, max(0.0, sum(share * one for share, one in zip(row, light, strict=True))))
        for row in _SEEN_AS[sight]
    ]
    return 0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]


def _contrast(first: str, second: str, sight: str = "usual") -> float:
    light, dark = sorted((_luminance(one, sight) for one in (first, second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_gives_what_the_standard_says_of_black_on_white() -> None:
    assert _contrast("#000000", "#ffffff") == pytest.approx(21)
    assert _contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


def test_colours_are_those_of_the_published_scheme() -> None:
    rows = published_rows("colour_schemes.csv")
    assert {row["colour"]: row["hex"] for row in rows} == TOL_LIGHT


@pytest.mark.parametrize("table", ["colour_schemes.csv", "colour_sight.csv", "letter_widths.csv"])
def test_the_tables_of_this_room_have_a_source(table: str) -> None:
    assert {row["source"] for row in published_rows(table)} <= set(bibliography())


@pytest.mark.parametrize("sight", _SEEN_AS)
@pytest.mark.parametrize("mark", _MARKS.values(), ids=_MARKS)
def test_words_stand_out_on_every_ground(mark: FamilyMark, sight: str) -> None:
    for ground in (PAPER, mark.pale, mark.full):
        assert _contrast(INK, ground, sight) >= _TEXT


@pytest.mark.parametrize("sight", _SEEN_AS)
@pytest.mark.parametrize("mark", _MARKS.values(), ids=_MARKS)
def test_hatches_edges_and_bars_stand_out(mark: FamilyMark, sight: str) -> None:
    assert _contrast(FAINT_INK, mark.pale, sight) >= _GRAPHICS
    assert _contrast(INK, mark.full, sight) >= _GRAPHICS  # its hatch too, while it is harvested
    assert _contrast(INK, mark.pale, sight) >= _GRAPHICS


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
