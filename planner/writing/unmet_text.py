"""What stays unmet, in sentences: weeks with one reason are told together."""

import textwrap
from itertools import groupby

from planner.scheduling import Unmet, UnmetKind
from planner.season import Season
from planner.terms import Unit, amount_words

_LEAST_WIDTH = 40


def unmet_text(season: Season, width: int) -> str:
    """One paragraph for each crop and reason; empty when everything is met.

    Weeks with nobody there are told once for all crops. Lines end before `width`.
    """
    units = {one.crop.name: one.crop.unit for one in season.outlooks}
    away = [one for one in season.unmet if one.reason.kind is UnmetKind.AWAY]
    others = [one for one in season.unmet if one.reason.kind is not UnmetKind.AWAY]
    groups = groupby(others, key=lambda one: (one.crop, one.reason.kind))
    paragraphs = [_paragraph(list(unmet), units[crop]) for (crop, _), unmet in groups]
    if away:
        paragraphs.append(_away_paragraph(away))
    return "\n".join(_wrapped(paragraph, width) for paragraph in paragraphs)


def _wrapped(paragraph: str, width: int) -> str:
    return "\n".join(
        textwrap.fill(line, max(_LEAST_WIDTH, width), subsequent_indent="  ")
        for line in paragraph.splitlines()
    )


def _away_paragraph(away: list[Unmet]) -> str:
    weeks = ", ".join(sorted({str(one.week) for one in away}))
    crops = ", ".join(dict.fromkeys(one.crop for one in away))
    return (
        f"{weeks}: nobody is there to harvest {crops}.\n  What would help: {away[0].reason.remedy}"
    )


def _paragraph(unmet: list[Unmet], unit: Unit) -> str:
    first, last = unmet[0], unmet[-1]
    worst = max(unmet, key=lambda one: one.amount)
    weeks = str(first.week)
    if len(unmet) > 1:
        weeks = f"{len(unmet)} weeks from {first.week} to {last.week}"
    most = "" if len(unmet) == 1 else "up to "
    return (
        f"{first.crop}, {weeks}: short of {most}{amount_words(worst.amount, unit)}. "
        f"{worst.reason.why}\n  What would help: {worst.reason.remedy}"
    )
