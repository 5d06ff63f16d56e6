"""Raw manure in words: from when on may be picked, and what would be picked too early."""

import textwrap
from collections.abc import Iterator, Sequence
from datetime import date

from planner.bedwork import ManureCheck, PickAfterManure
from planner.garden import EatenPart, Garden
from planner.terms import count_words, date_words
from planner.writing.paragraph import headed
from planner.writing.source_words import in_brackets

_WHERE = {
    EatenPart.IN_SOIL: "what is eaten grows in the soil",
    EatenPart.ON_SOIL: "what is eaten touches the soil",
    EatenPart.CLEAR_OF_SOIL: "what is eaten grows clear of the soil",
    EatenPart.UNKNOWN: "nobody says what is eaten of it (eaten_part in crops.toml)",
}


def manure_text(garden: Garden, checks: Sequence[ManureCheck], width: int) -> str:
    """A part for each time manure was spread; how to tell of it where none was."""
    if not checks:
        return textwrap.fill(
            "No raw manure is told of. Where some was or will be worked in, write [[manure]] with "
            "bed and on, and each harvest is checked against it.",
            width,
        )
    told = (headed(manure_lines(one), width) for one in checks)
    return "\n\n".join([textwrap.fill(manure_rule(garden), width), *told])


def manure_rule(garden: Garden) -> str:
    """How many days raw manure lies before harvest (§46)."""
    source = garden.soil.figures["raw_manure_touching"].source
    return (
        "Raw manure is worked in 120 days before harvest where what is eaten touches soil or soil "
        "particles, else 90 (7 CFR 205.203(c)(1), a rule for organic growers) "
        f"{in_brackets(source)}."
    )


def manure_lines(check: ManureCheck) -> list[str]:
    """A time manure was spread: from when on may be picked; then what is too early and in time."""
    manure = check.manure
    head = (
        f"{manure.bed}, worked in on {date_words(manure.on)}: pick from "
        f"{date_words(check.touching_from)} on; what grows clear of the soil from "
        f"{date_words(check.clear_from)} on"
    )
    told = [*_too_early(check), *_in_time(check), *_unchecked(check)]
    return [head, *(told or ["Nothing is picked there afterwards in this season."])]


def _too_early(check: ManureCheck) -> Iterator[str]:
    """Every sowing picked too early, those alike together, and what to do about them."""
    alike: dict[tuple[EatenPart, date, int], list[PickAfterManure]] = {}
    for one in check.too_early:
        alike.setdefault((one.eaten_part, one.from_on, one.needed_days), []).append(one)
    for (eaten, from_on, days), picks in alike.items():
        named = ", ".join(
            f"{one.sowing} on {date_words(one.on)} ({count_words(one.days, 'day')})"
            for one in picks
        )
        yield (
            f"Too early, as {_WHERE[eaten]} and {days} days are needed: {named}. Pick none of it "
            f"before {date_words(from_on)}."
        )
    if alike:
        yield (
            f"Or keep these crops out of {check.manure.bed}, want them later, or use finished "
            "compost in place of raw manure."
        )


def _in_time(check: ManureCheck) -> Iterator[str]:
    names = [one.sowing for one in check.picks if not one.is_too_early]
    if names:
        yield f"In time: {', '.join(names)}."


def _unchecked(check: ManureCheck) -> Iterator[str]:
    if check.unchecked:
        yield f"Mind these days yourself for what is kept there: {', '.join(check.unchecked)}."
