"""A new plan read before it is written: what its answers lack, and what cannot stand."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from planner.cli.plan_folder import GARDEN
from planner.cli.start_answers import StartAnswers, garden_toml
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Place, Problem

_OPTIONS = Place("command line")


def problems_of(text: str) -> tuple[Problem, ...]:
    """Every problem in the text of a garden.toml that is not written yet."""
    garden = read_garden(PlanFiles(PlanFile(GARDEN, text.encode())))
    if isinstance(garden, Garden):
        return ()
    return tuple(replace(one, place=replace(one.place, file="the new plan")) for one in garden)


def problems_added(known: StartAnswers, changed: StartAnswers, day: date) -> list[Problem]:
    """The problems that `changed` answers have and the `known` ones had not."""
    before = {(one.kind, one.wrong) for one in problems_of(garden_toml(known, day))}
    after = problems_of(garden_toml(changed, day))
    return [one for one in after if (one.kind, one.wrong) not in before]


def lacking(answers: StartAnswers) -> Iterator[Problem]:
    """A problem for each option without which there is no plan."""
    if answers.latitude is None:
        yield Problem("missing-key", _OPTIONS, "The plan needs a latitude.", "add --latitude 47.6")
    if not answers.knows_freezes:
        yield Problem(
            "freeze-dates-missing",
            _OPTIONS,
            "The plan needs the last freeze of spring and the first of fall.",
            "add --last-spring-freeze 04-15 --first-fall-freeze 10-20 (half of all years), or "
            "--station with the id of one (planner stations finds the nearest).",
        )
    if not answers.beds:
        yield Problem(
            "empty-season",
            _OPTIONS,
            "The plan has no bed.",
            'add --bed "North 1: 8 ft x 4 ft, 15 in deep, full"',
        )
    if not answers.wants:
        yield Problem(
            "empty-season",
            _OPTIONS,
            "The plan has no target.",
            'add --want "radish: 25 roots"',
        )
