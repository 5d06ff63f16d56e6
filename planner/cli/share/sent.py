"""What is sent to a page: whether it may be, and what it tells.

Nobody but a page shared here may send anything. A browser names where a request comes from
(Origin, RFC 6454; Sec-Fetch-Site, Fetch Metadata, only on this computer or with https), and a page
of another site cannot make it name anything else.
"""

import json
from email.message import Message
from http import HTTPStatus
from io import BufferedIOBase
from urllib.parse import parse_qsl, urlsplit

from planner.cli.share.page_reply import fault_reply
from planner.cli.share.request import Reply, Request, wants_json

LARGEST_BODY_BYTES = 8_192
_FORM = "application/x-www-form-urlencoded"
_MOST_FIELDS = 20
_TAKEN_ANYWAY_BYTES = 1_000_000


def sent_body(headers: Message, stream: BufferedIOBase) -> bytes | Reply:
    """What was sent, or why it is not taken."""
    length = _length(headers)
    if not _came_from_here(headers):
        words = "This was not sent from a page that is shared here. Nothing was noted."
        return _refused(headers, stream, HTTPStatus.FORBIDDEN, words)
    if length is None:
        return _refused(headers, stream, HTTPStatus.LENGTH_REQUIRED, "Its length was not told.")
    if length > LARGEST_BODY_BYTES:
        words = f"More than {LARGEST_BODY_BYTES} bytes were sent. Nothing was noted."
        return _refused(headers, stream, HTTPStatus.REQUEST_ENTITY_TOO_LARGE, words)
    if not wants_json(headers) and headers.get_content_type() != _FORM:
        words = "Neither a form nor JSON was sent. Nothing was noted."
        return _refused(headers, stream, HTTPStatus.UNSUPPORTED_MEDIA_TYPE, words)
    body = stream.read(length)
    if len(body) < length:
        return fault_reply(headers, HTTPStatus.BAD_REQUEST, ["Only part of it was sent."])
    return body


def told_by(request: Request) -> dict[str, str] | str:
    """The fields of a form, or of a JSON object with text and numbers; or what is wrong."""
    try:
        text = request.body.decode()
        if request.wants_json:
            told = json.loads(text)
        else:
            told = dict(parse_qsl(text, keep_blank_values=True, max_num_fields=_MOST_FIELDS))
        json.dumps(told, ensure_ascii=False).encode()  # half a sign can be sent, but not written
    except (ValueError, RecursionError):
        return "What was sent cannot be understood. Nothing was noted."
    if not isinstance(told, dict) or not all(isinstance(one, str | int) for one in told.values()):
        return "What was sent is no set of fields with text. Nothing was noted."
    return {name: str(value) for name, value in told.items()}


def _came_from_here(headers: Message) -> bool:
    if headers.get("Sec-Fetch-Site", "same-origin") != "same-origin":
        return False
    try:
        origin = urlsplit(headers.get("Origin", ""))
    except ValueError:
        return False
    here = (headers.get("Host") or "").lower()
    return origin.scheme in {"http", "https"} and origin.netloc.lower() == here != ""


def _length(headers: Message) -> int | None:
    told = headers.get("Content-Length", "")
    is_number = told.isascii() and told.isdecimal() and len(told) < 12
    return int(told) if is_number and "Transfer-Encoding" not in headers else None


def _refused(headers: Message, stream: BufferedIOBase, status: HTTPStatus, words: str) -> Reply:
    """Refuse, after taking what is on its way, so that the answer is read and not cut off.

    Of what is endless nothing is taken.
    """
    length = _length(headers) or 0
    left = length if length <= _TAKEN_ANYWAY_BYTES else 0
    while left > 0:
        taken = len(stream.read(min(left, 65_536)))
        left = left - taken if taken else 0
    return fault_reply(headers, status, [words])
