"""A fold: what is long, under a line that opens it."""

from planner.page.element import Html, Value, el


def fold(which: str, *inside: str, when: str = "", **attributes: Value) -> Html:
    """A part that is opened by a touch: `which` it is, `when` or how much of it, then what it has.

    It needs no script.
    """
    told = el("span", when, class_="when") if when else Html()
    summary = el("summary", el("span", which, class_="which"), told)
    return el("details", summary, *inside, **attributes)
