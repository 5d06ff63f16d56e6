"""What holds for every picture: any program reads it, it says itself in words, words stay legible.

Sources: SVG 1.1 (second edition), section 5.4 for title and desc; WAI-ARIA 1.2 for role img and
aria-labelledby, both from memory. Letter widths are those of DejaVu Sans.
"""

import re
from collections import Counter
from datetime import timedelta

import pytest

from planner.pictures import bed_year, garden_day, garden_plan, harvest_weeks
from planner.pictures.lettering import BOLD, fitted, lines_in, text_width
from tests.pictures.drawing import Drawing, box_of, numbers, overlapping_words, width_of, words_of
from tests.pictures.gardens import SEASONS, days_of_change, season_named
from tests.published import published_rows

_LEAST_PX = 12.0
_FROM_ELSEWHERE = re.compile(r"href|src=|https?:|<script|<style|<image|@import|\son\w+=")


def _pictures(name: str) -> dict[str, str]:
    season = season_named(name)
    day = season.as_of + timedelta(days=10)
    return {
        "plan": garden_plan(season),
        "day": garden_day(season, day),
        **{bed.name: bed_year(season, bed.name) for bed in season.garden.beds},
        **{crop: harvest_weeks(season, crop) for crop in season.garden.crops},
    }


@pytest.fixture(scope="module", params=SEASONS)
def pictures(request: pytest.FixtureRequest) -> dict[str, str]:
    return _pictures(request.param)


def test_a_picture_is_an_image_with_a_title_and_a_description(pictures: dict[str, str]) -> None:
    for name, text in pictures.items():
        drawing = Drawing(text)
        root = drawing.root
        assert root.tag == "{http://www.w3.org/2000/svg}svg", name
        assert root.get("role") == "img"
        ids = (root.get("aria-labelledby") or "").split()
        titles = [one for part in ("title", "desc") for one in drawing.every(part)]
        told = {one.get("id"): words_of(one) for one in titles if one.get("id")}
        assert list(told) == ids
        assert all(told.values())


def test_its_view_box_is_its_natural_size(pictures: dict[str, str]) -> None:
    for text in pictures.values():
        root = Drawing(text).root
        width, height = numbers(root, "width", "height")
        assert (root.get("viewBox") or "").split() == ["0", "0", f"{width:g}", f"{height:g}"]


def test_pictures_share_no_id_and_point_only_at_their_own(pictures: dict[str, str]) -> None:
    every: Counter[str] = Counter()
    for text in pictures.values():
        own = re.findall(r'\bid="([^"]+)"', text)
        assert set(re.findall(r"url\(#([^)]+)\)", text)) <= set(own)
        every.update(own)
    assert set(every.values()) == {1}


def test_a_picture_needs_nothing_from_elsewhere_and_runs_nothing(pictures: dict[str, str]) -> None:
    for text in pictures.values():
        without_namespace = text.replace("http://www.w3.org/2000/svg", "")
        assert not _FROM_ELSEWHERE.search(without_namespace)
        assert set(re.findall(r'font-family="([^"]+)"', text)) == {"sans-serif"}


def test_words_are_large_enough_for_a_phone_at_arms_length(
    pictures: dict[str, str],
) -> None:
    for text in pictures.values():
        sizes = {float(one.get("font-size", "0")) for one in Drawing(text).every("text")}
        assert min(sizes) >= _LEAST_PX


def test_words_lie_on_the_sheet_and_on_no_other_words(pictures: dict[str, str]) -> None:
    for name, text in pictures.items():
        drawing = Drawing(text)
        shown = drawing.words()
        assert overlapping_words(shown) == [], name
        outside = [words_of(one) for one in shown if not drawing.sheet.holds(box_of(one), 1)]
        assert outside == [], name


@pytest.mark.parametrize("name", SEASONS)
def test_in_the_plan_words_lie_on_no_other_words_on_any_day(name: str) -> None:
    season = season_named(name)
    plan = Drawing(garden_plan(season))
    for day in days_of_change(season):
        assert overlapping_words(plan.words(day.isoformat())) == [], day


@pytest.mark.parametrize("name", SEASONS)
def test_equal_seasons_give_equal_pictures(name: str) -> None:
    assert _pictures(name) == _pictures(name)


# Letters.


@pytest.mark.parametrize("row", published_rows("letter_widths.csv"), ids=lambda row: row["letter"])
def test_no_letter_is_wider_than_it_is_taken_for(row: dict[str, str]) -> None:
    letter = row["letter"]
    assert text_width(letter, 1) >= width_of(letter) - 0.015
    assert text_width(letter, BOLD) >= width_of(letter, bold=True) - 0.1


@pytest.mark.parametrize("text", ["radish 12", "leaf lettuce 103", "Swiss chard", "日当たり 4"])
@pytest.mark.parametrize("room", [0, 12, 30, 55, 200])
def test_what_is_fitted_fits_and_keeps_its_number(text: str, room: float) -> None:
    short = fitted(text, 10, room)
    assert text_width(short, 10) <= room
    assert short in {"", text} or short.split(" ")[-1] in {text.rsplit(" ", maxsplit=1)[-1], short}


def test_words_break_between_words_only() -> None:
    assert lines_in("leaf lettuce 3", 10, 60, 40) == ["leaf", "lettuce 3"]
    assert lines_in("leaf lettuce 3", 10, 200, 12) == ["leaf lettuce 3"]
    assert lines_in("leaf lettuce 3", 10, 60, 20) == []
    assert lines_in("leaf lettuce 3", 10, 30, 100) == []
