"""A share is told in whole per cent, and neither all nor nothing where it is not."""

import pytest

from planner.writing import share_words
from planner.writing.share_words import whole_per_cent


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
