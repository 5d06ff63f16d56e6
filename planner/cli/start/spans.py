"""From when to when what is wanted can be picked in the new garden, so that no more is asked."""

from collections import defaultdict
from dataclasses import replace
from datetime import date

from planner.cli.folder import GARDEN
from planner.cli.start.answers import NewWant, StartAnswers, garden_toml
from planner.garden import Garden, Target
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling import UnmetKind
from planner.season import make_season
from planner.terms import Week

# Why a week can never be fed, however much ground there is.
_OUT_OF_SEASON = {
    UnmetKind.TOO_EARLY,
    UnmetKind.TOO_LATE,
    UnmetKind.BETWEEN,
    UnmetKind.FROST,
    UnmetKind.SOIL,
    UnmetKind.HEAT,
    UnmetKind.PAST,
}
_DRAFT = 0


def with_spans(answers: StartAnswers, day: date) -> StartAnswers:
    """The answers with each crop wanted only from the first to the last week it can be picked.

    A crop that no week can have keeps the whole season, and scheduling tells why.
    """
    garden = read_garden(PlanFiles(PlanFile(GARDEN, garden_toml(answers, day).encode())))
    if not isinstance(garden, Garden):
        return answers
    season = make_season(garden, max(day, garden.wish.first), None, _DRAFT)
    barred: dict[str, set[Week]] = defaultdict(set)
    for one in season.unmet:
        if one.reason.kind in _OUT_OF_SEASON:
            barred[one.crop].add(one.week)
    wants = [
        replace(want, span=_span(garden, target, barred[target.crop.name]))
        for want, target in zip(answers.wants, garden.targets, strict=True)
    ]
    return replace(answers, wants=wants)


def _span(garden: Garden, target: Target, barred: set[Week]) -> tuple[date, date] | None:
    weeks = [week for week in target.wants() if week not in barred]
    if not weeks:
        return None
    wish = garden.wish
    return max(wish.first, weeks[0].monday), min(wish.last, weeks[-1].sunday)


def never_picked(answers: StartAnswers) -> list[NewWant]:
    """What no week of the season can have."""
    return [one for one in answers.wants if one.span is None]
