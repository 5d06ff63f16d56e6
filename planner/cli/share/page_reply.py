"""Answers that are pages, or JSON for a page's script."""

import gzip
import json
from collections.abc import Sequence
from email.message import Message
from http import HTTPStatus
from typing import Any

from planner.cli.share.request import Reply, wants_json

_QUICKLY = 4
# No other site may show a page of ours within its own, learn its address, or guess what it is.
_GUARD = {
    "Cache-Control": "no-store",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}


def page_reply(page: str, status: HTTPStatus = HTTPStatus.OK) -> Reply:
    """A page, held by its own policy and never within another."""
    from planner.page import policy_of  # noqa: PLC0415 - heavy, and only who shares pages needs it

    policy = f"{policy_of(page)}; frame-ancestors 'none'"
    headers = {
        "Content-Type": "text/html; charset=utf-8",
        "Content-Security-Policy": policy,
        **_GUARD,
    }
    return Reply(status, headers, page.encode())


def packed(reply: Reply, headers: Message) -> Reply:
    """The same made small for the way, where its reader can unpack it."""
    if "gzip" not in headers.get("Accept-Encoding", ""):
        return reply
    about = {**reply.headers, "Content-Encoding": "gzip", "Vary": "Accept-Encoding"}
    return Reply(reply.status, about, gzip.compress(reply.content, _QUICKLY, mtime=0))


def json_reply(told: dict[str, Any], status: HTTPStatus = HTTPStatus.OK) -> Reply:
    """JSON for the page's script."""
    headers = {
        "Content-Type": "application/json",
        "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'",
        **_GUARD,
    }
    return Reply(status, headers, json.dumps(told, ensure_ascii=False).encode())


def fault_reply(headers: Message, status: HTTPStatus, words: Sequence[str]) -> Reply:
    """What is wrong, in the form that was asked."""
    if wants_json(headers):
        return json_reply({"said": list(words), "is_fault": True, "boxes": {}}, status)
    from planner.page import Said, answer_page, said_part  # noqa: PLC0415 - as above

    told = said_part(Said(tuple(words), is_fault=True))
    return page_reply(answer_page("This cannot be done", [told]), status)
