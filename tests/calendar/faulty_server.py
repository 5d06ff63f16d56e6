"""A calendar server that does as it should, until it is told to fail."""

import hashlib
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from xml.sax.saxutils import escape

COLLECTION = "/dav/robin/garden/"
_SPACES = 'xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"'
Answer = tuple[int, dict[str, str], bytes]
Fault = Callable[[str, str, int], Answer | None]


def no_fault(method: str, path: str, number: int) -> None:
    """All goes well."""
    del method, path, number


@dataclass
class Shop:
    """What the server holds, what it was asked, and how it fails.

    `fault` is given method, path and how many requests of the method came before; what it gives
    is answered instead.
    """

    held: dict[str, bytes] = field(default_factory=dict)
    asked: list[tuple[str, str]] = field(default_factory=list)
    told: list[str] = field(default_factory=list)
    fault: Fault = no_fault
    host: str = ""

    def methods(self, method: str) -> int:
        return sum(1 for one, _ in self.asked if one == method)

    def answer(self, method: str, path: str, headers: dict[str, str], body: bytes) -> Answer:
        number = self.methods(method)
        self.asked.append((method, path))
        self.told.append(headers.get("Authorization", ""))
        failed = self.fault(method, path, number)
        if failed is not None:
            return failed
        if not headers.get("Authorization"):
            return 401, {"WWW-Authenticate": 'Basic realm="garden"'}, b""
        if method == "PROPFIND":
            return 207, {}, self._what_it_is()
        if method == "REPORT":
            return 207, {}, self._all()
        return self._changed(method, path, headers, body)

    def _changed(self, method: str, path: str, headers: dict[str, str], body: bytes) -> Answer:
        there = self.held.get(path)
        edition = None if there is None else edition_of(there)
        if headers.get("If-None-Match") == "*" and there is not None:
            return 412, {}, b""
        if "If-Match" in headers and headers["If-Match"] != edition:
            return 412, {}, b""
        if method == "DELETE":
            return (404, {}, b"") if self.held.pop(path, None) is None else (204, {}, b"")
        self.held[path] = body
        return 201, {}, b""

    def _what_it_is(self) -> bytes:
        prop = "<d:prop><d:resourcetype><d:collection/><c:calendar/></d:resourcetype></d:prop>"
        return self._multistatus([(COLLECTION, prop)])

    def _all(self) -> bytes:
        return self._multistatus([(path, _told(body)) for path, body in self.held.items()])

    def _multistatus(self, parts: list[tuple[str, str]]) -> bytes:
        answers = "".join(
            f"<d:response><d:href>{self.host}{path}</d:href><d:propstat>{prop}"
            "<d:status>HTTP/1.1 200 OK</d:status></d:propstat></d:response>"
            for path, prop in parts
        )
        return f"<d:multistatus {_SPACES}>{answers}</d:multistatus>".encode()


def _told(body: bytes) -> str:
    edition, data = escape(edition_of(body)), escape(body.decode())
    told = f"<d:getetag>{edition}</d:getetag><c:calendar-data>{data}</c:calendar-data>"
    return f"<d:prop>{told}</d:prop>"


def edition_of(body: bytes) -> str:
    """An ETag."""
    return f'"{hashlib.sha256(body).hexdigest()[:12]}"'


@contextmanager
def serving(shop: Shop) -> Iterator[str]:
    """The server, in a thread; gives its address without path."""

    class Answering(BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"

        def handle_one_request(self) -> None:
            self.raw_requestline = self.rfile.readline(65537)
            if not self.raw_requestline or not self.parse_request():
                self.close_connection = True
                return
            body = self.rfile.read(int(self.headers.get("Content-Length") or 0))
            answered = shop.answer(self.command, self.path, dict(self.headers), body)
            status, headers, content = answered
            self.close_connection = status == 0
            if status == 0:  # hang up without a word
                return
            self.send_response_only(status)
            for name, value in {**headers, "Content-Length": str(len(content))}.items():
                self.send_header(name, value)
            self.end_headers()
            self.wfile.write(content)

    with ThreadingHTTPServer(("127.0.0.1", 0), Answering) as server:
        server.daemon_threads = True
        server.block_on_close = False
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        try:
            yield f"http://127.0.0.1:{server.server_port}"
        finally:
            server.shutdown()
            thread.join()
