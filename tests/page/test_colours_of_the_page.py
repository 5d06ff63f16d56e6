"""The colours of the page, by day and in the dark: legible, for colour-blind eyes too."""

import re

import pytest

from planner.page.whole_page import packaged
from planner.pictures import colours_in_the_dark
from planner.pictures.svg import INK, PAPER
from tests.contrast import LEAST_OF_GRAPHICS, LEAST_OF_TEXT, SEEN_AS, contrast

_STYLE = packaged("style.css")
_DAY, _NIGHT = (
    dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6});", block))
    for block in re.findall(r":root \{([^}]*)\}", _STYLE)
)
_SCHEMES = {"day": _DAY, "night": {**_DAY, **_NIGHT}}
# Words on their grounds, then edges and marks beside theirs, as the style sheet puts them.
_WORDS = [
    ("ink", "ground"), ("ink", "band"), ("soft", "ground"), ("soft", "band"), ("deep", "ground"),
    ("deep", "band"), ("mark", "ground"), ("on-deep", "deep"), ("on-bar", "bar"),
]  # fmt: skip
_MARKS = [("rule", "ground"), ("deep", "ground"), ("mark", "ground"), ("soft", "ground")]


@pytest.mark.parametrize("sight", SEEN_AS)
@pytest.mark.parametrize("scheme", _SCHEMES)
def test_words_and_marks_stand_out(scheme: str, sight: str) -> None:
    colours = _SCHEMES[scheme]
    for word, ground in _WORDS:
        assert contrast(colours[word], colours[ground], sight) >= LEAST_OF_TEXT, (word, ground)
    for mark, ground in _MARKS:
        assert contrast(colours[mark], colours[ground], sight) >= LEAST_OF_GRAPHICS, (mark, ground)


def test_the_night_has_every_colour_of_the_day() -> None:
    assert set(_NIGHT) == set(_DAY)


def test_no_colour_stands_outside_the_two_schemes() -> None:
    outside = re.sub(r":root \{[^}]*\}", "", _STYLE)
    assert re.findall(r"#[0-9a-f]{3,8}\b|\b(?:rgb|hsl)a?\(", outside) == []


def test_pictures_in_the_dark_have_the_paper_and_ink_of_the_page() -> None:
    dark = colours_in_the_dark()
    assert (dark[PAPER], dark[INK]) == (_NIGHT["ground"], _NIGHT["ink"])
    assert _DAY["ground"] == PAPER
