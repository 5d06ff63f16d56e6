"""What stays unmet, in sentences: weeks with one reason are told together."""

from itertools import groupby

from planner.scheduling import Unmet
from planner.season import Season


def unmet_text(season: Season) -> str:
    """One paragraph for each crop and reason; empty when everything is met."""
    units = {one.crop.name: one.crop.unit.name for one in season.outlooks}
    groups = groupby(season.unmet, key=lambda one: (one.crop, one.reason.kind))
    return "\n".join(_paragraph(list(unmet), units[crop]) for (crop, _), unmet in groups)


def _paragraph(unmet: list[Unmet], unit: str) -> str:
    first, last = unmet[0], unmet[-1]
    worst = max(unmet, key=lambda one: one.amount)
    weeks = str(first.week)
    if len(unmet) > 1:
        weeks = f"{len(unmet)} weeks from {first.week} to {last.week}"
    most = "" if len(unmet) == 1 else "up to "
    return (
        f"{first.crop}, {weeks}: short of {most}{round(worst.amount, 1):g} {unit}. "
        f"{worst.reason.why}\n  What would help: {worst.reason.remedy}"
    )
