"""Cautions on the page, where the work they belong to is told."""

from collections.abc import Sequence

from planner.garden import Caution
from planner.page.element import Html, el, fragment
from planner.page.fold import fold
from planner.writing import caution_words

Cautions = Sequence[Caution]


def careful_fold(which: str, content: Html, when: str, cautions: Cautions) -> Html:
    """A part of bed work that names its hazards first and tells of them last."""
    place = f"care-{fragment(which)}"
    ahead, told = care_ahead(cautions, place), care(cautions, place)
    return fold(which, ahead, content, told, when=when, class_="bedwork")


def care(cautions: Cautions, place: str) -> Html:
    """Cautions under one head, `place` their name within the page; nothing where there are none."""
    if not cautions:
        return Html()
    told = (el("li", el("strong", one.hazard.capitalize()), caution_words(one)) for one in cautions)
    return el("div", el("h3", "Take care"), el("ul", *told), class_="care", id=place)


def care_ahead(cautions: Cautions, place: str) -> Html:
    """The hazards by name, to stand before a long part, with a way to what is told of them."""
    if not cautions:
        return Html()
    named = ", ".join(one.hazard for one in cautions)
    return el("p", "Take care: ", el("a", named, href=f"#{place}"), ".", class_="care")
