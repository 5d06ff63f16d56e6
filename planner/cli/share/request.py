"""What is asked over HTTP, and what is answered."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from email.message import Message
from http import HTTPStatus


@dataclass(frozen=True, slots=True)
class Request:
    """What is asked: headers, what follows the question mark, and what was sent."""

    headers: Message
    query: str = ""
    body: bytes = b""

    @property
    def wants_json(self) -> bool:
        """Whether it comes from the page's script rather than from a form."""
        return wants_json(self.headers)


@dataclass(frozen=True, slots=True)
class Reply:
    """What is answered: status, headers, and the content, empty where there is none."""

    status: HTTPStatus
    headers: Mapping[str, str] = field(default_factory=dict)
    content: bytes = b""


NOT_FOUND = Reply(HTTPStatus.NOT_FOUND)


def wants_json(headers: Message) -> bool:
    """Whether JSON was sent, so that JSON is answered."""
    return headers.get_content_type() == "application/json"
