"""The page on which anything can be noted of one sowing."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planner.journal import Event
from planner.page.element import Html, el, joined
from planner.page.fold import fold
from planner.page.shared_work import SharedWork
from planner.page.tick_box import amount_field, entry_words, form
from planner.page.whole_page import whole_page

_WORDS = {
    Event.SOWN: ("It was sown", "Note: sown"),
    Event.EMERGED: ("It has come up", "Note: come up"),
    Event.SET_OUT: ("It was set out", "Note: set out"),
    Event.PICKED: ("Some was picked", "Note: picked"),
    Event.LATE: ("It is behind what was expected", "Note: late"),
    Event.LOST: ("Plants were lost", "Note: lost"),
    Event.MISSED: ("It was not sown when it was due", "Note: missed"),
    Event.CLEARED: ("It was cleared", "Note: cleared"),
}
_WITH_AMOUNT = {Event.PICKED, Event.LOST, Event.LATE}
_ONCE = {Event.SOWN, Event.EMERGED, Event.SET_OUT, Event.CLEARED}


@dataclass(frozen=True, slots=True)
class Said:
    """What is told the grower in answer: that it is done, or each fault."""

    words: tuple[str, ...]
    is_fault: bool = False


NOTHING_SAID = Said(())


def note_page(sowing: str, work: SharedWork, said: Said = NOTHING_SAID) -> str:
    """Everything noted of a sowing, and a form for each thing that can be."""
    last = work.journal.last_written(sowing)
    undo = (
        form(Event.UNDONE, sowing, work, el("button", f"Take back: {entry_words(last)}"))
        if last
        else Html()
    )
    main = [
        said_part(said),
        el("h2", "Noted so far"),
        _noted(sowing, work),
        el("div", undo, class_="acts"),
        el("h2", "Note something"),
        *(_telling(event, sowing, work) for event in _open(sowing, work)),
    ]
    return answer_page(f"Note of {sowing}", main)


def answer_page(title: str, main: Sequence[Html], script: str = "") -> str:
    """A small page of the shared ones, with the way back."""
    body = [
        el("header", el("h1", title), el("p", _back())),
        el("main", *main),
    ]
    return whole_page(title, body, script, forms="form-action 'self'; connect-src 'self'")


def said_part(said: Said) -> Html:
    """What is told in answer, read out at once."""
    if not said.words:
        return Html()
    words = (el("p", one) for one in said.words)
    kind = "said fault" if said.is_fault else "said"
    return el("div", *words, class_=kind, role="alert" if said.is_fault else "status")


def _back() -> Html:
    return el("a", "Back to the week", class_="button", href="./#week")


def _noted(sowing: str, work: SharedWork) -> Html:
    entries = work.history(sowing).entries
    if not entries:
        return el("p", "Nothing as yet. What is not noted is taken to go as planned.")
    return el("ul", *(el("li", _with_note(entry_words(one), one.note)) for one in entries))


def _with_note(words: str, note: str) -> str:
    return f"{words} ({note})" if note else words


def _open(sowing: str, work: SharedWork) -> Iterator[Event]:
    """What can be noted of a sowing now."""
    if work.end(sowing) is not None:
        return
    told = {one.event for one in work.history(sowing).entries}
    for event in _WORDS:
        if event is Event.MISSED and told:
            continue
        if event is Event.SET_OUT and not work.is_raised_indoors(sowing):
            continue
        if event not in _ONCE or event not in told:
            yield event


def _telling(event: Event, sowing: str, work: SharedWork) -> Html:
    title, button = _WORDS[event]
    word = event.replace(" ", "-")
    fields = [
        el(
            "p",
            el("label", "Day, if not today", for_=f"{word}-on"),
            el("input", type="date", name="on", id=f"{word}-on"),
        ),
        el(
            "p",
            el("label", "Words of your own", for_=f"{word}-note"),
            el("input", name="note", id=f"{word}-note", maxlength=500, autocomplete="off"),
        ),
    ]
    if event in _WITH_AMOUNT:
        unit = work.units.get(sowing, "")
        fields.insert(0, amount_field(event, unit, field_id=f"{word}-amount"))
    return fold(
        title,
        form(
            event,
            sowing,
            work,
            el("div", joined(fields), el("button", button, class_="main"), class_="fields"),
        ),
        class_="telling",
    )
