"""The questions of a new plan, in order; any answer can be changed before it is written.

Each answer is read as `planner check` would read it, so that nothing is refused at the end.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from datetime import date

from planner.almanac import station
from planner.cli.start.answers import StartAnswers, season_days, usual_season
from planner.cli.start.beds import ask_beds
from planner.cli.start.dialogue import GoBack, ask, say
from planner.cli.start.place import ask_place, freezes_words, frost_free
from planner.cli.start.reading import can_stand
from planner.cli.start.wants import ask_wants
from planner.cli.start.words import read_weekdays

_HELLO = (
    "Six questions, about five minutes. Enter takes what stands in [brackets], ? explains, "
    "< goes back. Ctrl-C leaves, and nothing is written."
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
            number = ask(question, {**numbers, "": 0}.get, expected, usual="")
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
    usual = usual_season(day, known.latitude or 0.0)
    explained = "Work begins no sooner than the first day and ends with the last one."
    while True:
        days = [
            ask(question, _day, "a day such as 2027-02-01", usual=str(one), explained=explained)
            for question, one in zip(("First day of the season?", "Last day?"), usual, strict=True)
        ]
        changed = replace(known, first=days[0], last=days[1])
        if can_stand(known, changed, day):
            return changed


def _day(words: str) -> str | None:
    try:
        return str(date.fromisoformat(words))
    except ValueError:
        return None


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
