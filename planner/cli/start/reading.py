"""A new plan read before it is written: what its answers lack, and what cannot stand."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from planner.cli.folder import GARDEN
from planner.cli.start.answers import StartAnswers, garden_toml
from planner.cli.start.dialogue import say
from planner.cli.start.lines import BED_EXAMPLE, WANT_EXAMPLE
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Place, Problem

OPTIONS = Place("command line")
_MISSING = {"missing-key", "freeze-dates-missing", "empty-season"}


def problems_of(text: str) -> tuple[Problem, ...]:
    """Every problem in the text of a garden.toml that is not written yet."""
    garden = read_garden(PlanFiles(PlanFile(GARDEN, text.encode())))
    if isinstance(garden, Garden):
        return ()
    return tuple(replace(one, place=replace(one.place, file="the new plan")) for one in garden)


def problems_added(known: StartAnswers, changed: StartAnswers, day: date) -> list[Problem]:
    """The problems that `changed` answers have and the `known` ones had not.

    What is only missing as yet is none.
    """
    before = {(one.kind, one.wrong) for one in problems_of(garden_toml(known, day))}
    after = problems_of(garden_toml(changed, day))
    return [
        one for one in after if (one.kind, one.wrong) not in before and one.kind not in _MISSING
    ]


def can_stand(known: StartAnswers, changed: StartAnswers, day: date) -> bool:
    """Whether `changed` answers bring no new problem; tells those they do."""
    problems = problems_added(known, changed, day)
    for problem in problems:
        say(f"{problem.wrong}\nWhat to do: {problem.remedy}", "  ")
    return not problems


def lacking(answers: StartAnswers) -> Iterator[Problem]:
    """A problem for each option without which there is no plan."""
    if answers.latitude is None:
        yield Problem("missing-key", OPTIONS, "The plan needs a latitude.", "add --latitude 47.6")
    if not answers.knows_freezes:
        yield Problem(
            "freeze-dates-missing",
            OPTIONS,
            "The plan needs the last freeze of spring and the first of fall.",
            'add --place "clemson", or --last-spring-freeze "mid April" --first-fall-freeze '
            '"20 October" (half of all years), or --station with the id of one (planner stations '
            "finds the nearest).",
        )
    if not answers.beds:
        yield Problem("empty-season", OPTIONS, "The plan has no bed.", f'add --bed "{BED_EXAMPLE}"')
    if not answers.wants:
        yield Problem(
            "empty-season",
            OPTIONS,
            "The plan has no target.",
            f'add --want "{WANT_EXAMPLE}", or --people 4 --eat "radish, lettuce"',
        )
