"""The places of a page that are filled only where it is shared."""

import html
import re
from collections.abc import Callable

from planner.page.element import Html, el

_PLACE = re.compile(r'<div class="tick" data-task="([^"<>]*)"></div>')


def tick_place(task: str) -> Html:
    """An empty place beside a task, by the task's id."""
    return el("div", class_="tick", data_task=task)


def filled(page: str, box: Callable[[str], Html]) -> str:
    """A page with every such place taken by what a task has."""

    def fill(found: re.Match[str]) -> str:
        task = html.unescape(found[1])
        return el("div", box(task), class_="tick", data_task=task)

    return _PLACE.sub(fill, page)
