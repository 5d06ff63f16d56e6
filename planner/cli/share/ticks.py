"""The shared page, and noting in journal.csv what is ticked off on it."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from dataclasses import fields as dataclass_fields
from datetime import date
from http import HTTPStatus
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import parse_qs

from planner.cli.folder import PAGE, SEASON, journal_held, note_entry
from planner.cli.share.page_reply import fault_reply, json_reply, packed, page_reply
from planner.cli.share.request import Reply, Request
from planner.cli.share.sent import told_by
from planner.cli.share.shared_season import SharedSeason, sentences, shared_season
from planner.journal import Event
from planner.reading import NotedEntry

if TYPE_CHECKING:
    from planner.page import Said

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_ONCE = {Event.SOWN, Event.EMERGED, Event.SET_OUT, Event.CLEARED, Event.MISSED}
_UNIT_OF: dict[str, str] = {Event.LOST: "plants", Event.LATE: "days"}
_NO_PAGE = (
    "There is no page of this season that can be shared. Make it anew on the computer that shares "
    "it, with planner schedule."
)


@dataclass(frozen=True, slots=True)
class _Told:
    """A tick as it was sent: of which sowing, what, on which day, and how much.

    `seen`: how many lines of the journal its sender had seen of the sowing.
    """

    event: str = ""
    sowing: str = ""
    seen: str = ""
    task: str = ""
    on: str = ""
    amount: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Ticks:
    """The pages of a plan folder on which tasks are ticked off; `day` tells what day it is."""

    folder: Path
    day: Callable[[], date]

    def page(self, request: Request) -> Reply:
        """The season, with a box beside each task."""
        from planner.page import shared_page  # noqa: PLC0415 - heavy, and only needed here

        shared = shared_season(self.folder)
        if not isinstance(shared, SharedSeason):
            return _unavailable(request, sentences(shared))
        try:
            written = (self.folder / SEASON / PAGE).read_text(encoding="utf-8")
        except (OSError, ValueError):
            return _unavailable(request, [_NO_PAGE])
        page = shared_page(written, shared.work, sentences(shared.damaged))
        if page is None:
            return _unavailable(request, [_NO_PAGE])
        return packed(page_reply(page), request.headers)

    def note(self, request: Request) -> Reply:
        """Everything that can be noted of one sowing."""
        from planner.page import note_page  # noqa: PLC0415 - as above

        shared = shared_season(self.folder)
        if not isinstance(shared, SharedSeason):
            return _unavailable(request, sentences(shared))
        sowing = shared.names.named(parse_qs(request.query).get("sowing", [""])[0])
        if sowing is None:
            words = "No sowing of that name is known. Go back, and load the week anew."
            return fault_reply(request.headers, HTTPStatus.NOT_FOUND, [words])
        return page_reply(note_page(sowing, shared.work))

    def tick(self, request: Request) -> Reply:
        """Note what was sent, unless more is told of the sowing than its sender had seen."""
        fields = told_by(request)
        if isinstance(fields, str):
            return fault_reply(request.headers, HTTPStatus.BAD_REQUEST, [fields])
        with journal_held(self.folder):
            shared = shared_season(self.folder)
            if not isinstance(shared, SharedSeason):
                return _unavailable(request, sentences(shared))
            told = _told(fields, shared)
            if isinstance(told, str):
                return fault_reply(request.headers, HTTPStatus.NOT_FOUND, [told])
            clash = _clash(told, shared)
            if clash:
                return self._answer(request, told.sowing, HTTPStatus.CONFLICT, (clash,))
            noted = note_entry(self.folder, self._cells(told, shared), shared.names)
        if not isinstance(noted, NotedEntry):
            words = tuple(f"{one.wrong} What to do: {one.remedy}" for one in noted)
            return self._answer(request, told.sowing, HTTPStatus.UNPROCESSABLE_ENTITY, words)
        return self._answer(request, told.sowing, HTTPStatus.OK, (_done(noted),))

    def _cells(self, told: _Told, shared: SharedSeason) -> tuple[str, ...]:
        on = told.on or self.day().isoformat()
        amount = told.amount.strip()
        unit = _unit(told, shared)
        if unit and _NUMBER.fullmatch(amount):
            amount = f"{amount.replace(',', '.')} {unit}"
        return on, told.event, told.sowing, amount, told.note

    def _answer(
        self, request: Request, sowing: str, status: HTTPStatus, words: tuple[str, ...]
    ) -> Reply:
        """What came of it, and the sowing as it is now."""
        from planner.page import Said, note_page, tick_box  # noqa: PLC0415 - as above

        shared = shared_season(self.folder)
        if not isinstance(shared, SharedSeason):
            return _unavailable(request, [*words, *sentences(shared)])
        said = Said(words, is_fault=status is not HTTPStatus.OK)
        if not request.wants_json:
            return page_reply(note_page(sowing, shared.work, said), status)
        boxes = {one.id: tick_box(one, shared.work) for one in shared.work.tasks_of(sowing)}
        return json_reply(_record(said, boxes), status)


def _record(said: "Said", boxes: Mapping[str, str]) -> dict[str, object]:
    return {"said": list(said.words), "is_fault": said.is_fault, "boxes": dict(boxes)}


def _unavailable(request: Request, words: list[str]) -> Reply:
    return fault_reply(request.headers, HTTPStatus.SERVICE_UNAVAILABLE, words)


def _told(fields: Mapping[str, str], shared: SharedSeason) -> _Told | str:
    """A tick of a sowing and a task that are known; or what is not."""
    known = {one.name for one in dataclass_fields(_Told)}
    told = _Told(**{name: value for name, value in fields.items() if name in known})
    task = shared.work.tasks.get(told.task)
    sowing = shared.names.named(told.sowing)
    if sowing is None or (told.task and (task is None or task.sowing != sowing)):
        what = told.task or told.sowing or "what was sent"
        return (
            f"The season does not know {what[:100]}; perhaps it was revised. Nothing was noted. "
            "Load the week anew."
        )
    return replace(told, sowing=sowing)


def _clash(told: _Told, shared: SharedSeason) -> str:
    """Why what is told already forbids it; empty where nothing does."""
    from planner.page import entry_words  # noqa: PLC0415 - as above

    work, sowing = shared.work, told.sowing
    if told.seen != str(work.seen(sowing)):
        last = next((one for one in reversed(work.journal.entries) if one.sowing == sowing), None)
        meanwhile = f"this was noted: {entry_words(last)}" if last else "the journal was changed"
        return (
            f"Of {sowing} meanwhile {meanwhile}. Nothing was noted now: look whether yours is "
            "another thing, and if so, note it again."
        )
    if told.event == Event.UNDONE:
        return ""
    end = work.end(sowing)
    if end is not None:
        return f"Nothing was noted: {sowing} has ended, {entry_words(end)}. Take that back first."
    same = [one for one in work.history(sowing).entries if one.event == told.event]
    if same and told.event in _ONCE:
        return f"It is already noted: {sowing} {entry_words(same[0])}. Nothing was noted again."
    return ""


def _unit(told: _Told, shared: SharedSeason) -> str:
    """The unit of a bare number."""
    if told.event == Event.PICKED:
        return shared.work.units.get(told.sowing, "")
    return _UNIT_OF.get(told.event, "")


def _done(noted: NotedEntry) -> str:
    from planner.page import entry_words  # noqa: PLC0415 - as above

    if noted.takes_back is not None:
        return f"Taken back: {noted.entry.sowing} {entry_words(noted.takes_back)}."
    return f"Noted: {noted.entry.sowing} {entry_words(noted.entry)}."
