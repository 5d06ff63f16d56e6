"""The box beside a task on the shared page: what is noted of it, and what can be."""

from planner.journal import Entry, Event
from planner.page.element import Html, el, fragment, joined
from planner.page.shared_work import SharedTask, SharedWork
from planner.page.wording import day_words

_BUTTONS = {
    Event.SOWN: "Sown today",
    Event.SET_OUT: "Set out today",
    Event.CLEARED: "Cleared today",
    Event.PICKED: "Picked today",
}


def tick_box(task: SharedTask, work: SharedWork) -> Html:
    """What is noted, with a button to take it back; else a button to note it."""
    noted, end = work.noted(task), work.end(task.sowing)
    told = noted or ((end,) if end else ())
    return joined(
        [
            *(_noted(one) for one in told),
            _undoing(task, work) if work.journal.last_written(task.sowing) in told else Html(),
            _act(task, work) if end is None else Html(),
            _more(task.sowing),
        ]
    )


def entry_words(entry: Entry) -> str:
    """An entry such as "picked on 9 June 2027, 25 roots"."""
    amount = f", {entry.amount}" if entry.amount is not None else ""
    return f"{entry.event} on {day_words(entry.day)} {entry.day.year}{amount}"


def form(event: Event, sowing: str, work: SharedWork, *fields: Html, task: str = "") -> Html:
    """A form that notes an event, if nothing more is told of the sowing than is seen here."""
    told: dict[str, str | int] = {
        "event": event,
        "sowing": sowing,
        "seen": work.seen(sowing),
        "task": task,
    }
    hidden = (
        el("input", type="hidden", name=name, value=value)
        for name, value in told.items()
        if value != ""
    )
    return el("form", *hidden, *fields, method="post", action="tick")


def amount_field(event: Event, unit: str, *, field_id: str) -> Html:
    """A field for how much was picked, how many plants were lost, how many days it is late."""
    label, hint = {
        Event.PICKED: (f"How much, in {unit}", unit),
        Event.LOST: ("How many plants; none means all of them", "plants"),
        Event.LATE: ("How many days behind", "days"),
    }[event]
    return el(
        "p",
        el("label", label, for_=field_id),
        el(
            "input",
            name="amount",
            id=field_id,
            inputmode="decimal",
            size=6,
            maxlength=40,
            autocomplete="off",
            required=None if event is Event.LOST else "",
        ),
        f" {hint}",
    )


def _noted(entry: Entry) -> Html:
    return el("p", f"Noted: {entry_words(entry)}.", class_="noted")


def _undoing(task: SharedTask, work: SharedWork) -> Html:
    button = el("button", "Take back", aria_label=f"Take back what was noted last of {task.sowing}")
    return form(Event.UNDONE, task.sowing, work, button, task=task.id)


def _act(task: SharedTask, work: SharedWork) -> Html:
    if task.event is None:
        return el("p", "Nothing to note: no date hangs on it.", class_="where")
    if work.noted(task) and task.event is not Event.PICKED:
        return Html()
    words = _BUTTONS[task.event]
    button = el("button", words, class_="main", aria_label=f"{words}, {task.sowing}")
    if task.event is not Event.PICKED:
        return form(task.event, task.sowing, work, button, task=task.id)
    unit = work.units.get(task.sowing, "")
    field = amount_field(task.event, unit, field_id=f"amount-{fragment(task.id)}")
    return form(task.event, task.sowing, work, field, button, task=task.id)


def _more(sowing: str) -> Html:
    """The way to the page on which anything can be noted."""
    return el(
        "form",
        el("input", type="hidden", name="sowing", value=sowing),
        el("button", "More ...", aria_label=f"More ... to note of {sowing}"),
        action="note",
    )
