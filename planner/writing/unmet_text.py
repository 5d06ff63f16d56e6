"""What stays unmet, in sentences: weeks with one reason are told together."""

from dataclasses import dataclass

from planner.scheduling import Unmet, UnmetKind
from planner.season import Season
from planner.terms import Unit, amount_words
from planner.writing.paragraph import paragraphs
from planner.writing.week_words import weeks_words


@dataclass(frozen=True, slots=True)
class UnmetWords:
    """What stays unmet for one reason, in sentences; weeks with nobody there name no one crop."""

    crop: str
    told: str
    remedy: str


def unmet_text(season: Season, width: int) -> str:
    """One paragraph for each crop and reason; empty when everything is met.

    Lines end before `width`.
    """
    return "\n".join(
        paragraphs([one.told, f"  What would help: {one.remedy}"], width)
        for one in unmet_words(season)
    )


def unmet_words(season: Season) -> tuple[UnmetWords, ...]:
    """What stays unmet by crop and reason; weeks with nobody there come once, for all crops."""
    units = {one.crop.name: one.crop.unit for one in season.outlooks}
    away = [one for one in season.unmet if one.reason.kind is UnmetKind.AWAY]
    others = [one for one in season.unmet if one.reason.kind is not UnmetKind.AWAY]
    words = [_words(unmet, units[unmet[0].crop]) for unmet in _told_together(others)]
    return (*words, *([_away_words(away)] if away else []))


def _told_together(unmet: list[Unmet]) -> list[list[Unmet]]:
    """Weeks of a crop with one reason, by the first of them, crop by crop."""
    groups: dict[tuple[str, UnmetKind, str], list[Unmet]] = {}
    for one in unmet:
        groups.setdefault((one.crop, one.reason.kind, _why_of_any_week(one)), []).append(one)
    crops = list(dict.fromkeys(one.crop for one in unmet))
    return sorted(groups.values(), key=lambda group: crops.index(group[0].crop))


def _why_of_any_week(one: Unmet) -> str:
    """The reason without what differs from week to week though the reason is the same.

    How much ground is missing goes with the amount, which is told for the worst week.
    """
    if one.reason.kind is UnmetKind.NO_GROUND:
        return ""
    return one.reason.why.replace(str(one.week), "")


def _away_words(away: list[Unmet]) -> UnmetWords:
    weeks = weeks_words(one.week for one in away)
    crops = ", ".join(dict.fromkeys(one.crop for one in away))
    told = f"{weeks}: nobody is there to harvest {crops}."
    return UnmetWords("", told, away[0].reason.remedy)


def _words(unmet: list[Unmet], unit: Unit) -> UnmetWords:
    worst = max(unmet, key=lambda one: one.amount)
    weeks = weeks_words(one.week for one in unmet)
    most, why = "", worst.reason.why
    if len(unmet) > 1:
        most, why = "up to ", why.replace(f"in {worst.week}", "in these weeks")
    told = f"short of {most}{amount_words(worst.amount, unit)}. {why}"
    if worst.reason.kind is UnmetKind.TOO_LITTLE:  # which says how little it is
        told = f"{why[0].lower()}{why[1:]}"
    return UnmetWords(worst.crop, f"{worst.crop}, {weeks}: {told}", worst.reason.remedy)
