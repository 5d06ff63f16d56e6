"""Counts and lists are told as a sentence has them."""

import pytest

from planner.terms import count_words, listed_words


def test_one_is_told_in_the_singular() -> None:
    assert count_words(1, "bed") == "1 bed"
    assert count_words(2, "bed") == "2 beds"
    assert count_words(0, "bed") == "0 beds"


@pytest.mark.parametrize(
    ("words", "listed"),
    [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")],
)
def test_the_last_of_a_list_has_and_before_it(words: list[str], listed: str) -> None:
    assert listed_words(words) == listed
