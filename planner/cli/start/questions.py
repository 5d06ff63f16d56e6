"""The questions of a new plan, in order; any answer can be changed before it is written.

Each answer is read as `planner check` would read it, so that nothing is refused at the end.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from datetime import date

from planner.almanac import station
from planner.cli.start.answers import (
    StartAnswers,
    midwinter_after,
    season_days,
    usual_season,
)
from planner.cli.start.beds import ask_beds
from planner.cli.start.dialogue import GoBack, ask, say
from planner.cli.start.place import ask_place, freezes_words, frost_free
from planner.cli.start.reading import can_stand
from planner.cli.start.wants import ask_wants
from planner.cli.start.words import read_day_words, read_weekdays
from planner.terms import date_words

_HELLO = (
    "Six questions, about five minutes. Enter takes what stands in [brackets], ? explains, "
    "< goes back. Ctrl-C leaves, and nothing is written."
)
_CHANGES_TOLD = (
    "Enter writes garden.toml as shown. 3 asks for the beds anew, 4 for what to eat, and so on; "
    "then all is shown again. Ctrl-C leaves, and nothing is written."
)
Question = Callable[[StartAnswers, date], StartAnswers]


def ask_answers(known: StartAnswers, day: date) -> StartAnswers:
    """Ask for whatever is not known yet, then show it all to be changed or taken."""
    say(_HELLO)
    open_questions = [number for number, is_open in enumerate(_open(known)) if is_open]
    at = 0
    while at < len(open_questions):
        number = open_questions[at]
        print()
        say(f"{at + 1} of {len(open_questions)}: {_TITLES[number]}")
        try:
            known = _QUESTIONS[number](known, day)
            at += 1
        except GoBack:
            at = max(0, at - 1)
            known = _FORGET[open_questions[at]](known)
    return _ask_changes(known, day)


def _open(known: StartAnswers) -> tuple[bool, ...]:
    """Whether each question is still open, in their order."""
    return (
        known.name is None,
        known.latitude is None or not known.knows_freezes,
        not known.beds,
        not known.wants,
        known.garden_days is None,
        known.first is None and known.last is None,
    )


def _ask_changes(known: StartAnswers, day: date) -> StartAnswers:
    """Show every answer and ask anew those that are to be changed."""
    numbers = {str(number): number for number in range(1, len(_QUESTIONS) + 1)}
    while True:
        _show(known, day)
        question = "Enter writes this plan; a number changes that answer."
        expected = f"Enter, or a number from 1 to {len(numbers)}"
        try:
            number = ask(
                question, {**numbers, "": 0}.get, expected, usual="", explained=_CHANGES_TOLD
            )
            if number == 0:
                return known
            known = _QUESTIONS[number - 1](_FORGET[number - 1](known), day)
        except GoBack:
            continue


def _show(known: StartAnswers, day: date) -> None:
    found = station(known.station) if known.station else None
    if found is not None:
        where = f"{found.name}, {found.state}: {freezes_words(found)}"
    else:
        spring, fall = known.last_spring_freeze or "", known.first_fall_freeze or ""
        where = "never freezes" if spring == "never" else frost_free(spring, fall)
    first, last = season_days(known, day)
    answers = (
        known.name or "My garden",
        f"{where} (latitude {known.latitude:g})",
        _list(map(str, known.beds)),
        _list(_wishes(known)),
        ", ".join(known.garden_days or ()),
        f"{first} to {last}",
    )
    print()
    say("This is the plan:")
    for number, (title, words) in enumerate(zip(_TITLES, answers, strict=True), 1):
        say(f"{number} {title}: {words}", "  ")


def _list(lines: Iterable[str]) -> str:
    """One line of words alone, several below one another."""
    told = list(lines)
    return told[0] if len(told) == 1 else "\n".join(["", *(f"    {one}" for one in told)])


def _wishes(known: StartAnswers) -> Iterator[str]:
    """What is wanted: by people together, then exact amounts."""
    for people in dict.fromkeys(one.people for one in known.wants if one.people):
        crops = ", ".join(one.crop for one in known.wants if one.people == people)
        yield f"{crops} for {people:g}"
    yield from (str(one) for one in known.wants if not one.people)


def _ask_name(known: StartAnswers, day: date) -> StartAnswers:
    del day
    explained = "Any name; it stands on sheets and in your calendar."
    name = ask("What is the garden called?", str, "a name", usual="My garden", explained=explained)
    return replace(known, name=name)


def _ask_place(known: StartAnswers, day: date) -> StartAnswers:
    while True:
        changed = ask_place(known)
        if can_stand(known, changed, day):
            return changed
        known = replace(known, latitude=changed.latitude)


def _ask_garden_days(known: StartAnswers, day: date) -> StartAnswers:
    del day
    days = ask(
        "On which days do you work there? (such as weekends, or Wed and Sat)",
        read_weekdays,
        "days of the week",
        usual="every day",
        explained="Sowing and other work is put on these days where the crop allows it.",
    )
    return replace(known, garden_days=days)


def _ask_season(known: StartAnswers, day: date) -> StartAnswers:
    latitude = known.latitude or 0.0
    while True:
        first = _ask_day("First day of the season?", usual_season(day, latitude)[0], since=day)
        last = _ask_day("Last day?", midwinter_after(first, latitude), since=first)
        changed = replace(known, first=str(first), last=str(last))
        if can_stand(known, changed, day):
            return changed


def _ask_day(question: str, usual: date, since: date) -> date:
    found = ask(
        question,
        lambda words: read_day_words(words, since),
        "a day such as 2027-02-01 or mid March",
        usual=str(usual),
        explained="Work begins no sooner than the first day and ends with the last one.",
    )
    say(f"Taken as {date_words(found)}.", "  ")
    return found


def _without_place(known: StartAnswers) -> StartAnswers:
    return replace(
        known, latitude=None, station=None, last_spring_freeze=None, first_fall_freeze=None
    )


_TITLES = ("Name", "Place", "Beds", "To eat", "Garden days", "Season")
_QUESTIONS: tuple[Question, ...] = (
    _ask_name,
    _ask_place,
    ask_beds,
    ask_wants,
    _ask_garden_days,
    _ask_season,
)
_FORGET: tuple[Callable[[StartAnswers], StartAnswers], ...] = (
    lambda known: replace(known, name=None),
    _without_place,
    lambda known: replace(known, beds=[]),
    lambda known: replace(known, wants=[]),
    lambda known: replace(known, garden_days=None),
    lambda known: replace(known, first=None, last=None),
)
