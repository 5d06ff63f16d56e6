"""Whether the entries of each sowing make sense together, and beside what was planned."""

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from datetime import date, timedelta

from planner.journal import Entry, Event, History, Journal
from planner.reading.journal_line import Fault, told
from planner.reading.named_sowings import NamedSowings
from planner.terms import Problem

# A day told further ahead of what was planned is most likely a slip in its year or month.
EARLIEST_DAYS = 60
# What must have happened, where it is told at all, before something else can.
_BEFORE = {
    Event.EMERGED: (Event.SOWN,),
    Event.SET_OUT: (Event.SOWN,),
    Event.PICKED: (Event.SOWN, Event.EMERGED, Event.SET_OUT),
    Event.CLEARED: (Event.SOWN,),
    Event.LOST: (Event.SOWN,),
}


def what_makes_no_sense(
    entries: Sequence[Entry], known: NamedSowings, doubtful: AbstractSet[str]
) -> tuple[Problem, ...]:
    """A problem for each entry that cannot be, one an entry; what is undone is not judged.

    Of doubtful sowings there are lines that could not be read; what is undone may stand there.
    Where two entries contradict each other, it is told of the one written later.
    """
    journal = Journal(tuple(entries))
    wrong = {one: _NOTHING_TO_UNDO for one in journal.undone_in_vain if one.sowing not in doubtful}
    written = {one: number for number, one in enumerate(entries)}
    for history in journal.histories.values():
        for one in history.entries:
            for fault in _against_plan(one, known):
                wrong.setdefault(one, fault)
        for first, second in _contradictions(history):
            later, other = sorted((first, second), key=written.__getitem__, reverse=True)
            wrong.setdefault(later, _contradiction(first, second, other))
    return tuple(told([fault], one.place) for one, fault in wrong.items())


_NOTHING_TO_UNDO = Fault(
    "journal-event",
    "Nothing that is told of this sowing before is left to undo.",
    "name the sowing whose last entry was a mistake, or take the line out.",
)


def _against_plan(one: Entry, known: NamedSowings) -> Iterator[Fault]:
    planned = known.planned.get(one.sowing)
    if planned is None:
        return
    if one.event is Event.SET_OUT and not planned.is_raised_indoors:
        yield Fault(
            "journal-event",
            f"{one.sowing} is sown in place, so nothing of it is set out.",
            'tell "sown" with the day it was sown, or name the sowing that was set out.',
        )
    # A sowing that was missed may have been planned anew, much later, under its name.
    begins = planned.sow_on if one.event is not Event.MISSED else known.first_sowing
    if one.day < _earliest(begins):
        what = one.sowing if one.event is not Event.MISSED else "The season"
        yield Fault(
            "journal-day",
            f"{what} begins on {begins}; {one.day} is more than {EARLIEST_DAYS} days before that.",
            "correct the date (is it the right year?) or the name of the sowing.",
        )


def _earliest(begins: date) -> date:
    return begins - timedelta(days=min(EARLIEST_DAYS, begins.toordinal() - 1))


def _contradictions(history: History) -> Iterator[tuple[Entry, Entry]]:
    """What is told to have happened before something that must come first; that one first."""
    last: dict[Event, Entry] = {one.event: one for one in history.entries}
    for one in history.entries:
        for event in _BEFORE.get(one.event, ()):
            if event in last and one.day < last[event].day:
                yield last[event], one


def _contradiction(first: Entry, second: Entry, other: Entry) -> Fault:
    return Fault(
        "journal-day",
        f'"{second.event}" on {second.day} comes before "{first.event}" on {first.day} of '
        f"{first.sowing} (the other entry: {other.place}).",
        f'correct the day that is wrong, or take back what was a mistake with "{Event.UNDONE}".',
    )
