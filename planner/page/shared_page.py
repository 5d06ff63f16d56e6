"""The written page of a season made one on which tasks are ticked off."""

from collections.abc import Iterable

from planner.page.element import Html, el, joined
from planner.page.note_page import Said, said_part
from planner.page.shared_work import SharedWork
from planner.page.tick_box import tick_box
from planner.page.tick_place import filled
from planner.page.weeks_part import NOT_SHARED
from planner.page.whole_page import POLICY, WITHOUT_FORMS, hash_of, packaged

_END = "</body>"


def shared_page(written: str, work: SharedWork, said: Iterable[str]) -> str | None:
    """season.html with a box for each task; None when it is no page that was written here.

    `said`: what is amiss with the journal, told above the tasks.
    """
    policy = POLICY.search(written)
    if policy is None or NOT_SHARED not in written or _END not in written:
        return None
    script = packaged("share.js")
    may = policy[0].replace(WITHOUT_FORMS, "form-action 'self'; connect-src 'self'")
    may = may.replace("script-src ", f"script-src {hash_of(script)} ")
    page = written.replace(policy[0], may, 1)
    page = page.replace(NOT_SHARED, _ticking(said), 1)
    page = filled(page, lambda task: _box(task, work))
    tail = joined(
        [el("p", id="said", class_="said", role="status"), Html(f"<script>{script}</script>")]
    )
    head, _, end = page.rpartition(_END)
    return f"{head}{tail}{_END}{end}"


def _box(task: str, work: SharedWork) -> Html:
    known = work.tasks.get(task)
    return tick_box(known, work) if known else Html()


def _ticking(said: Iterable[str]) -> Html:
    words = tuple(said)
    return joined(
        [
            said_part(Said(words, is_fault=True)) if words else Html(),
            el(
                "p",
                el(
                    "a",
                    "Revise the plan",
                    class_="button",
                    href="revision",
                ),
                class_="acts",
            ),
        ]
    )
