"""The page on which a revision of the season is looked at and then written."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from planner.page.element import Html, el, joined
from planner.page.note_page import Said, answer_page, said_part
from planner.page.whole_page import packaged


class Stage(StrEnum):
    """How far a revision is."""

    NONE = "none"
    RUNNING = "running"
    SHOWN = "shown"
    WRITTEN = "written"


@dataclass(frozen=True, slots=True)
class Revision:
    """A revision: how far it is, what it changes in sentences, and the mark it is known by."""

    stage: Stage = Stage.NONE
    changes: Sequence[str] = ()
    mark: str = ""


_ABOUT = (
    "What was begun stays where it is and goes on by what was noted. Of the rest only what is "
    "worth it changes."
)


def revision_page(revision: Revision, said: Said) -> str:
    """What a revision would change, and the button for the next step."""
    main = [el("div", said_part(said), _stage(revision), id="revision", data_stage=revision.stage)]
    return answer_page("Revise the plan", main, packaged("revision.js"))


def _stage(revision: Revision) -> Html:
    match revision.stage:
        case Stage.NONE:
            return joined([el("p", _ABOUT), _step("show", "Show what would change", "")])
        case Stage.RUNNING:
            wait = "The season is being worked out; this may take a minute or a few."
            return joined([el("p", wait, role="status"), _look_again()])
        case Stage.SHOWN:
            return joined(
                [
                    el("h2", "What would change"),
                    _changes(revision),
                    el("p", "Nothing is written as yet."),
                    _step("write", "Write this season", revision.mark),
                    _step("show", "Work it out anew", ""),
                ]
            )
        case Stage.WRITTEN:
            return joined(
                [
                    el("p", "The season is written, with its calendar and sheets.", class_="said"),
                    el("h2", "What changed"),
                    _changes(revision),
                    _step("show", "Work it out anew", ""),
                ]
            )


def _changes(revision: Revision) -> Html:
    return el("ul", *(el("li", one) for one in revision.changes))


def _step(step: str, words: str, mark: str) -> Html:
    return el(
        "form",
        el("input", type="hidden", name="step", value=step),
        el("input", type="hidden", name="mark", value=mark),
        el("button", words, class_="main" if mark else None),
        method="post",
        action="revision",
        class_="acts",
    )


def _look_again() -> Html:
    return el("p", el("a", "Look again", class_="button", href="revision"), class_="acts")
