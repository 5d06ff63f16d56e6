"""The page that gives season/calendar.ics to whoever subscribed to it."""

import hashlib
import os
import time
from dataclasses import dataclass
from email.message import Message
from email.utils import formatdate, parsedate_to_datetime
from http import HTTPStatus
from pathlib import Path

from planner.cli.folder import LIVE, SEASON
from planner.cli.share.request import Reply, Request

_TRIES = 5
_SECONDS_BETWEEN = 0.05


@dataclass(frozen=True, slots=True)
class _File:
    content: bytes
    changed_s: int


def shared_calendar(folder: Path, request: Request) -> Reply:
    """The calendar as it is now, or word that the reader has it already."""
    file = _read(folder / SEASON / LIVE)
    if file is None:
        return Reply(HTTPStatus.SERVICE_UNAVAILABLE, {"Retry-After": "60"})
    edition = f'"{hashlib.sha256(file.content).hexdigest()[:32]}"'
    about = {
        "Content-Type": "text/calendar; charset=utf-8",
        "ETag": edition,
        "Last-Modified": formatdate(file.changed_s, usegmt=True),
        "Cache-Control": "private, no-cache",
        "X-Content-Type-Options": "nosniff",
    }
    if _is_known(request.headers, edition, file.changed_s):
        return Reply(HTTPStatus.NOT_MODIFIED, about)
    return Reply(HTTPStatus.OK, about, file.content)


def _read(path: Path) -> _File | None:
    """The whole file, opened once: a season that takes its place meanwhile is the next one's.

    Where the system cannot exchange folders in one step there is none for a moment.
    """
    for number in range(_TRIES):
        try:
            with path.open("rb") as file:
                return _File(file.read(), int(os.fstat(file.fileno()).st_mtime))
        except OSError:
            if number + 1 < _TRIES:
                time.sleep(_SECONDS_BETWEEN)
    return None


def _is_known(headers: Message, edition: str, changed_s: int) -> bool:
    """RFC 9110 13.2.2: the edition decides where one is named, else the time."""
    named = headers.get("If-None-Match")
    if named is not None:
        known = {one.strip().removeprefix("W/") for one in named.split(",")}
        return "*" in known or edition in known
    since = headers.get("If-Modified-Since")
    if since is None:
        return False
    try:
        return changed_s <= parsedate_to_datetime(since).timestamp()
    except (ValueError, OverflowError):
        return False
