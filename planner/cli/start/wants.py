"""The question for what is wanted: for how many people, and what they like to eat."""

from dataclasses import replace
from datetime import date

from planner.almanac import crop_pages
from planner.cli.crop_names import crops_meant, what_to_write
from planner.cli.start.answers import NewWant, StartAnswers
from planner.cli.start.dialogue import GoBack, ask, say
from planner.cli.start.lines import WANT_EXAMPLE, read_eaten, read_want_line
from planner.cli.start.reading import can_stand
from planner.cli.start.words import read_people

_PEOPLE_TOLD = "A small child may count half: 3.5. It decides how much of each is wanted a week."
_USUAL_PEOPLE = "2"


def ask_wants(known: StartAnswers, day: date) -> StartAnswers:
    """The answers with one wish or more."""
    people = ask(
        "How many people eat from it?",
        read_people,
        "a number of people",
        usual=_USUAL_PEOPLE,
        explained=_PEOPLE_TOLD,
    )
    question = "What do they like to eat? (such as radish, lettuce, bush bean; ? lists all)"
    while True:
        try:
            words = ask(question, str, "crops", usual=_no_more(known), explained=_all_crops())
        except GoBack:
            if not known.wants:
                raise
            say(f"Taken back: {known.wants[-1]}", "  ")
            known = replace(known, wants=known.wants[:-1])
            continue
        if not words:
            return known
        exact = read_want_line(words)
        for want in [exact] if exact else read_eaten(words, people):
            known = _with(known, want, day)
        if known.wants:
            question = "What else? (Enter when that is all)"


def _no_more(known: StartAnswers) -> str | None:
    """What Enter means: that there is no more, once there is something."""
    return "" if known.wants else None


def _with(known: StartAnswers, want: NewWant, day: date) -> StartAnswers:
    """The answers with one wish more, where it is one crop's and can stand."""
    meant = crops_meant(want.crop)
    if len(meant) != 1:
        wrong = "may be more than one crop" if meant else "is no crop that is known"
        say(f'"{want.crop}" {wrong}: {what_to_write(want.crop, "? lists all.")}', "  ")
        return known
    changed = replace(known, wants=[*known.wants, want])
    if not can_stand(known, changed, day):
        return known
    say(f"{want}", "  ")
    return changed


def _all_crops() -> str:
    return (
        f"Any of: {', '.join(crop_pages())}. Put commas between them. Begin with few: three to six "
        f"crops keep a small garden busy. An exact amount works too, one at a time: {WANT_EXAMPLE}"
    )
