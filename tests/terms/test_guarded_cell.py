"""No spreadsheet takes the grower's words for a formula (OWASP, "CSV Injection").

That page names the signs = + - @, tab and line ends, and the wide forms of the signs.
"""

import pytest

from planner.terms import guarded, unguarded


@pytest.mark.parametrize(
    "formula",
    [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n1",
        " =1",
        '"=1',
        "'=1",
        "\N{FULLWIDTH EQUALS SIGN}1",
        "\N{FULLWIDTH PLUS SIGN}1",
        "\N{FULLWIDTH HYPHEN-MINUS}1",
        "\N{FULLWIDTH COMMERCIAL AT}1",
    ],
)
def test_what_a_spreadsheet_would_run_has_an_apostrophe_before_it(formula: str) -> None:
    assert guarded(formula).startswith("'" + formula[:1])
    assert unguarded(guarded(formula)) == formula


@pytest.mark.parametrize("separator", [",", ";", "|", "\t", "\n", "\r"])
def test_a_cell_may_begin_at_another_separator(separator: str) -> None:
    words = f"North{separator}=1+1"
    assert guarded(words) == f"North{separator}'=1+1"
    assert unguarded(guarded(words)) == words


@pytest.mark.parametrize(
    "words", ["", "North bed", "a-b", "1+1=2", "it's", "'quoted'", "bed (=)", "café ☂", "x @ home"]
)
def test_other_words_stay_as_they_are(words: str) -> None:
    assert guarded(words) == words
    assert unguarded(words) == words
