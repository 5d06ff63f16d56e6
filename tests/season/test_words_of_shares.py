"""A share is told in whole per cent, and neither all nor nothing where it is not."""

from dataclasses import replace

import pytest

from planner.writing import promise_text, share_words
from planner.writing.share_words import whole_per_cent
from tests.plan_text import bed, plan_head, season_of, target


@pytest.mark.parametrize(
    ("share", "words", "column"),
    [
        (0.0, "0%", 0),
        (0.004, "less than 1%", 0),
        (0.006, "1%", 1),
        (0.964, "96%", 96),
        (0.9949, "99%", 99),
        (0.9951, "99%", 99),
        (0.9999, "99%", 99),
        (1 - 1e-9, "100%", 100),
        (1.0, "100%", 100),
    ],
)
def test_a_share_is_never_rounded_to_all_or_to_nothing(
    share: float, words: str, column: int
) -> None:
    """What is all but a billionth is all: so much is lost in adding up."""
    assert share_words(share) == words
    assert whole_per_cent(share) == column


@pytest.mark.parametrize(
    ("fills", "told"), [((0.5,), "of 1 past year, 50% in"), ((0.5, 0.7), "of 2 past years, 50% in")]
)
def test_past_years_are_counted_as_one_says_it(fills: tuple[float, ...], told: str) -> None:
    season = season_of(plan_head() + bed() + target("radish", "12 roots"))
    assert told in promise_text(replace(season, tried_fills=fills), 500)
