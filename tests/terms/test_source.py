"""What stands behind a figure is told as a grower reads it; a slip is shown with its line."""

import pytest

from planner.terms import Fact, Figure, Place, Problem, Source
from planner.terms.problem import shown


def test_a_place_is_a_file_and_a_line_of_it() -> None:
    assert str(Place("garden.toml", 12, "[site]")) == "garden.toml, line 12"
    assert str(Place("garden.toml", 1)) == "garden.toml, line 1"
    # Line 0 is the file as a whole.
    assert str(Place("garden.toml")) == "garden.toml"


def test_a_source_is_the_grower_s_own_line_the_bibliography_or_memory() -> None:
    assert str(Source("plan", Place("crops.toml", 3))) == "your plan, crops.toml, line 3"
    assert str(Source("UCSC-A5")) == "UCSC-A5"
    assert str(Source("memory")) == "from memory, change it if you know better"


def test_the_planning_value_is_halfway() -> None:
    figure = Figure(50, 70, "days", Source("UCSC-A5"))
    assert figure.middle == 60
    assert str(figure.times(1 / 10, "weeks")) == "5 to 7 weeks"
    assert figure.times(1 / 10, "weeks").source == figure.source
    assert str(Fact("Apiaceae", figure.source)) == "Apiaceae"


def test_a_problem_tells_its_place_its_line_what_is_wrong_and_what_to_do() -> None:
    problem = Problem(
        "out-of-range",
        Place("garden.toml", 7, "  latitude = 95.0\n"),
        "95 is too much.",
        "Check it.",
    )
    title, line, wrong, remedy = str(problem).splitlines()
    assert title.startswith("garden.toml, line 7: ")
    assert line == "  7 | latitude = 95.0"
    assert wrong == "  95 is too much."
    assert remedy == "  What to do: Check it."
    assert problem.order == ("garden.toml", 7, "out-of-range")


def test_a_problem_of_a_whole_file_shows_no_line() -> None:
    problem = Problem("out-of-range", Place("garden.toml"), "Wrong.", "Mend it.")
    assert len(str(problem).splitlines()) == 3


def test_a_kind_of_problem_that_is_not_in_the_catalogue_is_our_mistake() -> None:
    with pytest.raises(KeyError, match="no such kind of problem: surprise"):
        Problem("surprise", Place("garden.toml"), "Wrong.", "Mend it.")


def test_what_is_shown_steers_no_screen_and_has_an_end() -> None:
    assert shown("tab\there, bell\a, ☂ and café") == r"tab\there, bell\x07, ☂ and café"
    assert shown("x" * 400) == "x" * 400
    assert shown("x" * 401) == "x" * 400 + " ..."
