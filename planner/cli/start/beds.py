"""The question for the beds: how large, how many alike, how deep, how much sun."""

import re
from dataclasses import replace
from datetime import date

from planner.cli.start.answers import NewBed, StartAnswers
from planner.cli.start.dialogue import GoBack, ask, say
from planner.cli.start.lines import BED_EXAMPLE, read_bed_line
from planner.cli.start.reading import can_stand
from planner.cli.start.words import (
    FULL_SUN_H,
    PART_SUN_H,
    STEP_FT,
    Size,
    has_no_unit,
    is_length_unit,
    read_length,
    read_size,
    read_sun,
)
from planner.terms import count_words

_MOST_ALIKE = 60
_EXPECTED = "a length and a width, such as 8 x 4 ft"
_ANOTHER = "Another bed? (its size; Enter when these are all)"
_SIZE_TOLD = (
    "Length by width: 8 x 4 ft, 2.4 m by 1.2 m, 8' x 4'. A round bed: 4 ft round. Without a tape: "
    f"10 by 4 steps; a step is taken as {STEP_FT:g} ft, so measure later and correct garden.toml. "
    f"All of a bed on one line works too: {BED_EXAMPLE}"
)
_DEPTH_TOLD = (
    "How far down roots find loose soil. A bed without a bottom goes on into the ground below, "
    "as far as that was dug over."
)
_SUN_TOLD = (
    f"Hours of direct sun on a clear day in early summer. full: {FULL_SUN_H} hours or more. "
    f"part: {PART_SUN_H} to {FULL_SUN_H}, or the morning only. shade: less. A number of hours is "
    "understood too."
)
_UNITS = "feet, inches, metres, cm or steps"
_UNIT_TOLD = f"What the two numbers were counted in: {_UNITS}. < to tell the size anew."


def ask_beds(known: StartAnswers, day: date) -> StartAnswers:
    """The answers with one bed or more."""
    question = "How long and how wide is a bed? (such as 8 x 4 ft)"
    while True:
        usual = "" if known.beds else None
        try:
            words = ask(question, _understood, _EXPECTED, usual=usual, explained=_SIZE_TOLD)
        except GoBack:
            if not known.beds:
                raise
            say(f"Taken back: {known.beds[-1]}", "  ")
            known = replace(known, beds=known.beds[:-1])
            continue
        if not words:
            return known
        known = _with(known, words, day)
        if known.beds:
            question = _ANOTHER


def _understood(words: str) -> str | None:
    """Words that tell a size, with or without a unit, or all of a bed; or that there is no more."""
    is_one = has_no_unit(words) or read_size(words) or read_bed_line(words)
    return words if is_one or not words else None


def _with(known: StartAnswers, words: str, day: date) -> StartAnswers:
    """The answers with more beds, where they can stand and the grower does not go back."""
    try:
        bed = read_bed_line(words)
        beds = [bed] if bed is not None else _alike(words, known)
    except GoBack:
        return known
    changed = replace(known, beds=[*known.beds, *beds])
    if not can_stand(known, changed, day):
        return known
    say(f"{count_words(len(changed.beds), 'bed')} so far.", "  ")
    return changed


def _unit(words: str) -> str | None:
    return words if is_length_unit(words) else None


def _alike(words: str, known: StartAnswers) -> list[NewBed]:
    """Beds of one size, named by numbers that no bed has yet."""
    size = read_size(words) or _in_a_unit(words)
    if size is None:
        return []
    say(f"Taken as {size}.", "  ")
    number = ask(
        "How many of these?",
        _count,
        f"a number up to {_MOST_ALIKE}",
        usual="1",
        explained="Beds of the same size, soil and sun are told once: how many are there?",
    )
    depth = ask(
        "How deep is the soil in it?", read_length, "a depth such as 12 in or 30 cm",
        usual="12 in", explained=_DEPTH_TOLD,
    )  # fmt: skip
    sun = ask(
        "How much sun does it get? (full, part, shade, or hours)",
        read_sun,
        "full, part, shade or a number of hours",
        usual="full",
        explained=_SUN_TOLD,
    )
    taken = {one.name.casefold() for one in known.beds}
    names = (f"Bed {n}" for n in range(1, len(taken) + number + 1))
    free = [one for one in names if one.casefold() not in taken]
    return [NewBed(name, size, depth, sun) for name in free[:number]]


def _in_a_unit(numbers: str) -> Size | None:
    question = "In feet, inches, metres, cm or steps?"
    unit = ask(question, _unit, _UNITS, usual="feet", explained=_UNIT_TOLD)
    return read_size(numbers, unit)


def _count(words: str) -> int | None:
    number = int(words) if re.fullmatch(r"[0-9]{1,3}", words) else 0
    return number if 1 <= number <= _MOST_ALIKE else None
