"""A revision asked for on the shared page: worked out, looked at, and then written.

It is the same as `planner schedule --what-if`, and then the season that was shown is written. One
runs at a time.
"""

import hashlib
import threading
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from http import HTTPStatus
from pathlib import Path
from typing import TYPE_CHECKING

from planner.cli.folder import RECORD, journal_held, put_in_place, season_made
from planner.cli.share.page_reply import fault_reply, page_reply
from planner.cli.share.request import Reply, Request
from planner.cli.share.sent import told_by
from planner.cli.share.shared_season import sentences
from planner.season import Season
from planner.terms import Problem

if TYPE_CHECKING:
    from planner.page import Revision

_LONGEST_LINE = 100_000


@dataclass
class Revising:
    """The revision of a plan folder's season; `day` tells what day it is."""

    folder: Path
    day: Callable[[], date]
    _lock: threading.Lock = field(default_factory=threading.Lock)
    _revision: "Revision | None" = None
    _season: Season | None = None
    _faults: tuple[str, ...] = ()

    def page(self, request: Request) -> Reply:
        """How far it is."""
        del request
        with self._lock:
            return self._reply(HTTPStatus.OK)

    def step(self, request: Request) -> Reply:
        """Begin to work one out, or write the one that was shown."""
        told = told_by(request)
        if isinstance(told, str):
            return fault_reply(request.headers, HTTPStatus.BAD_REQUEST, [told])
        with self._lock:
            if self._is_running():
                return self._reply(HTTPStatus.CONFLICT, "A revision is being worked out already.")
            match told.get("step"):
                case "show":
                    return self._begin()
                case "write":
                    return self._write(told.get("mark", ""))
                case _:
                    words = "What was sent is no step of a revision. Nothing was changed."
                    return fault_reply(request.headers, HTTPStatus.BAD_REQUEST, [words])

    def _is_running(self) -> bool:
        from planner.page import Stage  # noqa: PLC0415 - heavy, and only who shares pages needs it

        return self._revision is not None and self._revision.stage is Stage.RUNNING

    def _begin(self) -> Reply:
        from planner.page import Revision, Stage  # noqa: PLC0415 - as above

        self._revision, self._season, self._faults = Revision(Stage.RUNNING), None, ()
        threading.Thread(target=self._work_out, daemon=True).start()
        return self._reply(HTTPStatus.ACCEPTED)

    def _work_out(self) -> None:
        from planner.page import Revision, Stage  # noqa: PLC0415 - as above
        from planner.writing import changes_text  # noqa: PLC0415 - as above

        made: Season | tuple[Problem, ...] = ()
        mark = ""
        try:
            mark = _mark(self.folder)
            made = season_made(self.folder, self.day())
        finally:
            with self._lock:
                if isinstance(made, Season):
                    lines = changes_text(made, _LONGEST_LINE).splitlines()
                    self._revision, self._season = Revision(Stage.SHOWN, lines, mark), made
                else:
                    self._revision = Revision()
                    self._faults = tuple(sentences(made)) or (_OURS,)

    def _write(self, mark: str) -> Reply:
        from planner.page import Stage  # noqa: PLC0415 - as above

        shown = self._revision
        if self._season is None or shown is None or mark != shown.mark:
            words = "There is no such revision to write. Nothing was changed; work it out anew."
            return self._reply(HTTPStatus.CONFLICT, words)
        with journal_held(self.folder):
            if _mark(self.folder) != mark:
                words = (
                    "The journal or the plan was changed meanwhile. Nothing was written; "
                    "work it out anew."
                )
                return self._reply(HTTPStatus.CONFLICT, words)
            problem = put_in_place(self.folder, self._season)
        if problem is not None:
            return self._reply(HTTPStatus.SERVICE_UNAVAILABLE, *sentences([problem]))
        self._revision, self._season = replace(shown, stage=Stage.WRITTEN, mark=""), None
        return self._reply(HTTPStatus.OK)

    def _reply(self, status: HTTPStatus, *words: str) -> Reply:
        from planner.page import Revision, Said, revision_page  # noqa: PLC0415 - as above

        said = Said((*words, *self._faults), is_fault=True)
        return page_reply(revision_page(self._revision or Revision(), said), status)


_OURS = "It could not be worked out. On the computer that shares this page, try planner schedule."


def _mark(folder: Path) -> str:
    """What a revision rests on: the files of the plan, the journal, and the season there is."""
    own = sorted(one for one in folder.iterdir() if one.is_file() and one.name[0] != ".")
    digest = hashlib.sha256()
    for path in (*own, folder / RECORD):
        content = path.read_bytes() if path.exists() else b""
        digest.update(f"{path.name}\0{len(content)}\0".encode())
        digest.update(content)
    return digest.hexdigest()
