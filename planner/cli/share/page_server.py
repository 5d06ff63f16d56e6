"""Answering over HTTP at an address nobody can guess, and nowhere else.

A page is a function that takes a Request and gives a Reply; `Pages` has them by name, those to
GET and those that something is sent to (POST). Whatever is not one of them, asked for by its own
address, in the right way and under a name of this computer, is answered with 404 and not a word
more. What is sent from elsewhere than a page shared here is refused before it is read.
"""

import hmac
import socket
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from email.message import Message
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, HTTPServer, ThreadingHTTPServer

from planner.cli.share.request import NOT_FOUND, Reply, Request
from planner.cli.share.sent import sent_body
from planner.cli.this_computer import is_number

_SECONDS_TO_WAIT = 30


Page = Callable[[Request], Reply]


@dataclass(frozen=True, slots=True)
class Pages:
    """Pages by name, behind a token; and the names this computer is called by.

    `pages` are to GET, and `receivers` take what is sent.
    """

    token: str
    pages: Mapping[str, Page]
    hosts: frozenset[str]
    receivers: Mapping[str, Page] = field(default_factory=dict)

    def reply(self, target: str, headers: Message) -> Reply:
        """The answer to a request for a target: /TOKEN/NAME."""
        page = self._found(self.pages, target, headers)
        return page(Request(headers, target.partition("?")[2])) if page else NOT_FOUND

    def receiver(self, target: str, headers: Message) -> Page | None:
        """Who takes what is sent to a target; None where nobody does."""
        return self._found(self.receivers, target, headers)

    def _found(self, pages: Mapping[str, Page], target: str, headers: Message) -> Page | None:
        path = target.partition("?")[0]
        first, slash, name = path.removeprefix("/").partition("/")
        # Compared in the same time whether the first sign is wrong or the last.
        known = hmac.compare_digest(first.encode(errors="replace"), self.token.encode())
        called = self._is_called_by(headers.get("Host"))
        return pages.get(name) if known and slash and called else None

    def _is_called_by(self, host: str | None) -> bool:
        """Whether a Host header names this computer, not a name that was pointed at it."""
        name = _name_of(host or "")
        return name in self.hosts or ("*" in self.hosts and is_number(name))


def _name_of(host: str) -> str:
    """The name in a Host header, without port."""
    if host.startswith("["):
        return host[1:].partition("]")[0].lower()
    return host.partition(":")[0].lower().rstrip(".")


class PageServer(ThreadingHTTPServer):
    """The server of some pages, at an address and port of this computer."""

    daemon_threads = True

    def __init__(self, address: str, port: int, pages: Pages) -> None:
        self.pages = pages
        self.address_family = socket.AF_INET6 if ":" in address else socket.AF_INET
        super().__init__((address, port), _Answering)

    def server_bind(self) -> None:
        """Take the port, without asking the network what this computer is called."""
        super(HTTPServer, self).server_bind()
        self.server_name, self.server_port = "", int(self.server_address[1])

    def handle_error(
        self, request: socket.socket | tuple[bytes, socket.socket], client_address: object
    ) -> None:
        """A reader who hangs up is no news; a mistake of ours is."""
        if not isinstance(sys.exception(), OSError):
            super().handle_error(request, client_address)


class _Answering(BaseHTTPRequestHandler):
    server: PageServer
    protocol_version = "HTTP/1.1"
    timeout = _SECONDS_TO_WAIT

    def do_GET(self) -> None:
        self._answer(self.server.pages.reply(self.path, self.headers), whole=True)

    def do_POST(self) -> None:
        receiver = self.server.pages.receiver(self.path, self.headers)
        if receiver is None:
            self._answer(NOT_FOUND, whole=True)
            return
        body = sent_body(self.headers, self.rfile)
        if isinstance(body, Reply):
            self._answer(body, whole=True)
        else:
            self._answer(receiver(Request(self.headers, body=body)), whole=True)

    def do_HEAD(self) -> None:
        self._answer(self.server.pages.reply(self.path, self.headers), whole=False)

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Anything else, and anything malformed: nothing is here."""
        del code, message, explain
        self._answer(NOT_FOUND, whole=False)

    def _answer(self, reply: Reply, *, whole: bool) -> None:
        self.close_connection = True
        self.send_response_only(reply.status)
        self.send_header("Date", self.date_time_string())
        for name, value in reply.headers.items():
            self.send_header(name, value)
        if reply.status is not HTTPStatus.NOT_MODIFIED:
            self.send_header("Content-Length", str(len(reply.content)))
        self.send_header("Connection", "close")
        self.end_headers()
        if whole:
            self.wfile.write(reply.content)

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - as it is called
        """Addresses are secret, so none is written down."""
