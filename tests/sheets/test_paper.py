"""The paper is the garden's own choice: stated, or by the units of its beds."""

import pytest

from planner.garden import Garden, Paper
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Problem
from tests.plans import garden_toml


def _read(*changes: tuple[str, str]) -> Garden | tuple[Problem, ...]:
    text = garden_toml(*changes)
    return read_garden(
        PlanFiles(PlanFile("garden.toml", text.encode()), None, lambda name: PlanFile(name, b""))
    )


def _paper(*changes: tuple[str, str]) -> Paper:
    garden = _read(*changes)
    assert isinstance(garden, Garden), garden
    return garden.paper


def test_feet_and_inches_go_on_letter() -> None:
    assert _paper() is Paper.LETTER


def test_metres_go_on_a4() -> None:
    metric = (('length = "8 ft"', 'length = "2.4 m"'), ('width = "4 ft"', 'width = "120 cm"'))
    assert _paper(*metric) is Paper.A4


@pytest.mark.parametrize(("written", "paper"), [("A4", Paper.A4), ("a4", Paper.A4)])
def test_what_is_stated_rules(written: str, paper: Paper) -> None:
    assert _paper(("latitude = 47.6", f'latitude = 47.6\npaper = "{written}"')) is paper


@pytest.mark.parametrize("written", ["A3", "legal", "US letter"])
def test_another_paper_is_told(written: str) -> None:
    problems = _read(("latitude = 47.6", f'latitude = 47.6\npaper = "{written}"'))
    assert isinstance(problems, tuple)
    (problem,) = problems
    assert problem.kind == "not-a-choice"
    assert problem.place.line == 6
    assert f'"paper" cannot be "{written}"' in problem.wrong
    assert "letter" in problem.remedy
