"""One line of the journal becomes an entry, or a problem that tells all its faults."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from planner.journal import Entry, Event
from planner.reading.named_sowings import NamedSowings
from planner.reading.near_miss import nearest_word
from planner.terms import (
    FIRST_YEAR,
    LAST_YEAR,
    Dimension,
    Place,
    Problem,
    Quantity,
    Unit,
    conversion,
    read_quantity,
    unguarded,
)

_DAY = re.compile(r"\d{4}-\d\d-\d\d", re.ASCII)
_MOST_PICKED = 1_000_000
_MOST_PLANTS = 1_000_000
_MOST_DAYS_LATE = 366
_LONGEST_NOTE = 2_000
_HARVEST = {Dimension.MASS, Dimension.COUNT}
# A plant is lost as a plant or as one of them.
_PLANTS = {"plants", "each"}
# Other words growers have for an event; those that may mean two are not among them.
_SAME_EVENT = {
    **dict.fromkeys(("sowed", "seeded", "started"), Event.SOWN),
    **dict.fromkeys(("came up", "germinated", "sprouted"), Event.EMERGED),
    **dict.fromkeys(("planted out", "transplanted"), Event.SET_OUT),
    **dict.fromkeys(("harvested", "gathered", "cut"), Event.PICKED),
    **dict.fromkeys(("cleared out", "dug over", "removed"), Event.CLEARED),
    **dict.fromkeys(("bolted", "died", "frozen", "killed"), Event.LOST),
    **dict.fromkeys(("forgotten", "skipped"), Event.MISSED),
    **dict.fromkeys(("behind", "delayed"), Event.LATE),
    **dict.fromkeys(("mistake", "undo"), Event.UNDONE),
}


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong with one cell of a line, and what to do."""

    kind: str
    wrong: str
    remedy: str


def read_line(cells: Sequence[str], place: Place, known: NamedSowings) -> Entry | Problem:
    """The entry that five cells tell, or one problem with every fault in them."""
    day, event, sowing = _day(cells[0]), _event(cells[1]), _sowing(unguarded(cells[2]), known)
    amount = _amount(cells[3], event, sowing, known)
    note = _note(unguarded(cells[4]))
    if (
        isinstance(day, Fault)
        or isinstance(event, Fault)
        or isinstance(sowing, Fault)
        or isinstance(amount, Fault)
        or isinstance(note, Fault)
    ):
        every = (day, event, sowing, amount, note)
        return told([one for one in every if isinstance(one, Fault)], place)
    return Entry(day, event, sowing, amount, note, place)


def told(faults: Sequence[Fault], place: Place) -> Problem:
    """One problem for a line, of the kind of its first fault."""
    remedies = "; ".join(one.remedy.removesuffix(".") for one in faults)
    return Problem(faults[0].kind, place, " ".join(one.wrong for one in faults), f"{remedies}.")


def _day(written: str) -> date | Fault:
    try:
        day = date.fromisoformat(written) if _DAY.fullmatch(written) else None
    except ValueError:
        day = None
    if day is None:
        wrong = f'"{written}" is not a date.' if written else "It has no date."
        return Fault("journal-line", wrong, "write year-month-day, such as 2027-05-01.")
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        return Fault("journal-line", f"The year {day.year} is out of reach.", "correct the year.")
    return day


def _event(written: str) -> Event | Fault:
    word = " ".join(written.casefold().replace("-", " ").replace("_", " ").split())
    if word in set(Event):
        return Event(word)
    wrong = f'"{written}" is no event of a journal.' if written else "It has no event."
    near = _SAME_EVENT.get(word) or nearest_word(word, Event)
    remedy = f'write "{near}".' if near else f"write one of {', '.join(Event)}."
    return Fault("journal-line", wrong, remedy)


def _sowing(written: str, known: NamedSowings) -> str | Fault:
    name = known.named(written)
    if name is not None:
        return name
    wrong = f'No sowing was ever named "{written}".' if written else "It names no sowing."
    near = known.nearest(written)
    remedy = f'write "{near}", if that is meant.' if near else "planner week shows the names."
    return Fault("journal-sowing", wrong, remedy)


def _amount(
    written: str, event: Event | Fault, sowing: str | Fault, known: NamedSowings
) -> Quantity | Fault | None:
    match event:
        case Event.PICKED:
            planned = known.planned.get(sowing) if isinstance(sowing, str) else None
            return _picked(written, planned.unit if planned else None)
        case Event.LOST:
            return _lost(written)
        case Event.LATE:
            return _late(written)
        case Event():
            return _none(written, event)
        case Fault():
            return None


def _picked(written: str, unit: Unit | None) -> Quantity | Fault:
    remedy = f'write it like "25 {unit.name if unit else "roots"}".'
    if not written:
        return Fault("journal-amount", "It does not tell how much was picked.", remedy)
    amount = read_quantity(written)
    if amount is None:
        return Fault("journal-amount", f'"{written}" is not a quantity.', remedy)
    if unit is not None and conversion(amount.unit, unit) is None:
        wrong = f'The sowing is counted in {unit.name}, not in "{amount.unit.name}".'
        return Fault("journal-amount", wrong, remedy)
    if amount.unit.dimension not in _HARVEST:
        wrong = f'Nothing is picked in "{amount.unit.name}".'
        return Fault("journal-amount", wrong, remedy)
    if not 0 < amount.value <= _MOST_PICKED:
        wrong = f"Nobody picks {amount}."
        return Fault("journal-amount", wrong, "correct it, or take the line out.")
    return amount


def _lost(written: str) -> Quantity | Fault | None:
    if not written:
        return None
    amount = read_quantity(written)
    is_count = amount is not None and amount.unit.name in _PLANTS and amount.value.is_integer()
    if amount is None or not is_count or not 1 <= amount.value <= _MOST_PLANTS:
        wrong = f'"{written}" is not a number of plants.'
        remedy = 'write it like "6 plants"; without an amount all of them are lost.'
        return Fault("journal-amount", wrong, remedy)
    return amount


def _late(written: str) -> Quantity | Fault:
    amount = read_quantity(written)
    if amount is None or amount.unit.dimension is not Dimension.TIME:
        wrong = f'"{written}" is not a time.' if written else "It does not tell how late."
        return Fault("journal-amount", wrong, 'write it like "10 days" or "2 weeks".')
    if not 0 <= amount.si <= _MOST_DAYS_LATE:
        wrong = f"{amount} is no time a sowing can be late."
        remedy = 'write a time up to a year; "0 days" says that it has caught up.'
        return Fault("journal-amount", wrong, remedy)
    return amount


def _none(written: str, event: Event) -> Fault | None:
    if not written:
        return None
    wrong = f'"{event}" takes no amount, and "{written}" is one.'
    return Fault("journal-amount", wrong, "leave the cell empty, or tell it in the note.")


def _note(written: str) -> str | Fault:
    if len(written) <= _LONGEST_NOTE:
        return written
    wrong = f"The note has {len(written)} letters."
    return Fault("journal-line", wrong, f"keep it below {_LONGEST_NOTE}.")
