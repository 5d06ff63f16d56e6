"""Figures are told to three significant figures, with their unit."""

import pytest

from planner.terms import Figure, Source

_SOURCE = Source("UCSC-A5")


@pytest.mark.parametrize(
    ("low", "high", "unit", "words"),
    [
        (0.45359237, 0.45359237, "kg", "0.454 kg"),
        (28, 32, "days", "28 to 32 days"),
        (1, 1, "roots", "1 root"),
        (1, 1, "heads", "1 head"),
        (1, 2, "heads", "1 to 2 heads"),
        (1, 1, "days", "1 day"),
        (1, 1, "each", "1 each"),
        (1234.5, 1234.5, "mm", "1230 mm"),
        (15.5556, 18.3333, "degC", "15.6 to 18.3 degC"),
        (32.0001, 32.0002, "degC", "32 degC"),
    ],
)
def test_a_figure_reads_like_a_published_one(
    low: float, high: float, unit: str, words: str
) -> None:
    assert str(Figure(low, high, unit, _SOURCE)) == words
