"""A calendar on a CalDAV server (RFC 4791): seeing what it holds, writing and taking out events.

Each event is a resource of its own. What is written over or taken out must still be the edition
that was seen (If-Match), so a change made meanwhile is never lost. The server may not send us
elsewhere, lest the password goes along.
"""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, NoReturn
from urllib.parse import urljoin, urlsplit

from planner.cli.publish.account import PASSWORD, CalendarAccount
from planner.cli.shell import refuse
from planner.terms import Place, Problem
from planner.writing import Held, Published, event_lines, saying_of

if TYPE_CHECKING:
    from caldav.response import DAVResponse

_CALDAV = "{urn:ietf:params:xml:ns:caldav}"
_SPACES = 'xmlns:d="DAV:" xmlns:c="urn:ietf:params:xml:ns:caldav"'
_WHAT_IS_IT = f"<d:propfind {_SPACES}><d:prop><d:resourcetype/></d:prop></d:propfind>"
_ALL_EVENTS = (
    f"<c:calendar-query {_SPACES}><d:prop><d:getetag/><c:calendar-data/></d:prop><c:filter>"
    '<c:comp-filter name="VCALENDAR"><c:comp-filter name="VEVENT"/></c:comp-filter>'
    "</c:filter></c:calendar-query>"
)
_SECONDS_TO_WAIT = 60
_WRITTEN = (200, 201, 204)
_NOT_THERE = (404, 410)
_CHANGED_MEANWHILE = 412


def need_library() -> None:
    """Leave after telling how to install the library, where it is missing."""
    try:
        import caldav  # noqa: F401, PLC0415 - optional: only those who publish need it
    except ImportError:
        refuse(
            Problem(
                "library-missing",
                Place("planner publish"),
                "It speaks to servers with the library caldav, which is not installed.",
                'install it beside the planner: pip install "caldav>=3.6" "keyring>=25"',
            )
        )


class CalendarServer:
    """The calendar of an account; what goes wrong is told, and the command ends."""

    def __init__(self, account: CalendarAccount) -> None:
        from caldav.davclient import DAVClient  # noqa: PLC0415 - optional, and heavy

        # What it would warn of is told as a problem.
        logging.getLogger("caldav").setLevel(logging.CRITICAL)
        self._account = account
        self._client: DAVClient = DAVClient(
            account.url,
            username=account.user,
            password=account.password,
            timeout=_SECONDS_TO_WAIT,
            enable_rfc6764=False,
        )
        self._client.session.max_redirects = 0

    def close(self) -> None:
        """Hang up."""
        self._client.close()

    def held(self) -> dict[str, Held]:
        """Every event of the calendar, by UID."""
        url = self._account.url
        with self._told():
            found = self._client.propfind(url, _WHAT_IS_IT, 0)
            if found.status != 207 or not _is_calendar(found):
                refuse(self._no_calendar(found.status))
            answer = self._client.report(url, _ALL_EVENTS, 1)
            if answer.status != 207:
                self._refuse_answer(answer)
            return {one.saying.uid: one for one in _held(answer, url)}

    def put(self, event: Published) -> bool:
        """Write an event; False where somebody changed it since it was seen."""
        headers = {"Content-Type": "text/calendar; charset=utf-8"}
        if event.held is None:
            headers["If-None-Match"] = "*"
        elif event.held.edition:
            headers["If-Match"] = event.held.edition
        address = event.held.address if event.held else f"{self._account.url}{event.event.uid}.ics"
        with self._told():
            answer = self._client.put(address, event.content.decode(), headers)
        return self._was_done(answer, _WRITTEN)

    def take_out(self, held: Held) -> bool:
        """Take an event out; False where somebody changed it since it was seen."""
        headers = {"If-Match": held.edition} if held.edition else {}
        with self._told():
            answer = self._client.delete(held.address, headers)
        return self._was_done(answer, (*_WRITTEN, *_NOT_THERE))

    def _was_done(self, answer: "DAVResponse", done: tuple[int, ...]) -> bool:
        if answer.status == _CHANGED_MEANWHILE:
            return False
        if answer.status not in done:
            self._refuse_answer(answer)
        return True

    @contextmanager
    def _told(self) -> Iterator[None]:
        """Whatever the library raises is told as one problem."""
        from caldav.lib.error import AuthorizationError, DAVError  # noqa: PLC0415 - as above

        try:
            yield
        except AuthorizationError as error:
            refuse(self._not_let_in(error.status))
        except DAVError as error:
            words = f"status {error.status}" if error.status else type(error).__name__
            refuse(self._server_problem(f"It answered with {words}."))
        except NotImplementedError:
            refuse(self._server_problem("It asks for a way of logging in that is not known."))
        except OSError as error:
            refuse(self._unreached(error))
        except (ValueError, SyntaxError):
            refuse(self._server_problem("Its answer cannot be understood."))

    def _no_calendar(self, status: int) -> Problem:
        if status in _NOT_THERE:
            wrong = "The server knows no calendar at this address."
        else:
            wrong = "What is at this address is no calendar."
        return Problem(
            "calendar-address",
            Place(self._account.url),
            wrong,
            "make a calendar on the server first, and copy the CalDAV address of that calendar.",
        )

    def _not_let_in(self, status: int | None) -> Problem:
        if status == 403:
            wrong = f"The server does not let {self._account.user} do this there."
            remedy = "see that this user may write to this calendar."
        else:
            wrong = f"The server does not know {self._account.user} with this password."
            remedy = (
                f"correct {PASSWORD}, or the keyring; many servers want a password of its own "
                "for each app."
            )
        return Problem("calendar-login", Place(self._account.url), wrong, remedy)

    def _unreached(self, error: OSError) -> Problem:
        """By the kind of error alone: its words name inner parts of a library."""
        name = type(error).__name__
        if "TooManyRedirects" in name:
            wrong = "The server points to another address, and the password does not go along."
        elif "SSL" in name or "SSL" in str(error):
            wrong = "The connection is not safe: the server's certificate cannot be trusted."
        elif "Timeout" in name:
            wrong = f"The server did not answer within {_SECONDS_TO_WAIT} seconds."
        else:
            wrong = "The server cannot be reached."
        return self._server_problem(wrong)

    def _refuse_answer(self, answer: "DAVResponse") -> NoReturn:
        refuse(self._server_problem(f"It answered with status {answer.status}."))

    def _server_problem(self, wrong: str) -> Problem:
        return Problem(
            "calendar-server",
            Place(self._account.url),
            wrong,
            "see that address and network are right and run it again: what was sent before stays "
            "sent, and the rest follows.",
        )


def _is_calendar(answer: "DAVResponse") -> bool:
    tree = answer.tree
    return tree is not None and tree.find(f".//{_CALDAV}calendar") is not None


def _held(answer: "DAVResponse", url: str) -> Iterator[Held]:
    """The events of an answer; what cannot be read is none of ours."""
    if answer.tree is None:
        return
    for one in answer.tree.iter("{DAV:}response"):
        path = urlsplit(one.findtext("{DAV:}href") or "").path
        data = one.findtext(f".//{_CALDAV}calendar-data")
        if not path or not data:
            continue
        try:
            lines = next(event_lines(data.strip().encode()))
            saying = saying_of(lines)
        except (ValueError, StopIteration):
            continue
        yield Held(urljoin(url, path), one.findtext(".//{DAV:}getetag"), saying)
