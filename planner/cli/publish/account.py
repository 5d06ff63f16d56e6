"""Where to publish to and as whom: from the environment, options, or the computer's keyring.

Neither the plan nor the command line ever holds a password, and none is printed.
"""

import os
from dataclasses import dataclass, field
from urllib.parse import SplitResult, urlsplit

from planner.cli.this_computer import is_loopback
from planner.terms import Place, Problem

URL, USER, PASSWORD = "PLANNER_CALDAV_URL", "PLANNER_CALDAV_USER", "PLANNER_CALDAV_PASSWORD"
_ADDRESS, _LOGIN = "calendar-address", "calendar-login"


@dataclass(frozen=True, slots=True)
class CalendarAccount:
    """A calendar's address on a server, ending in a slash, and who writes to it."""

    url: str
    user: str
    password: str = field(repr=False)


def calendar_account(url: str | None, user: str | None) -> CalendarAccount | Problem:
    """The account to publish to, or why it cannot be used."""
    address = _address(url)
    if isinstance(address, Problem):
        return address
    name = user or os.environ.get(USER)
    if not name:
        return Problem(
            _LOGIN, Place(USER), "No user is named.", f"give --user NAME, or set {USER}."
        )
    password = os.environ.get(PASSWORD) or _from_keyring(address.hostname or "", name)
    if not password:
        return Problem(
            _LOGIN,
            Place(PASSWORD),
            f"No password is known for {name}.",
            f"set {PASSWORD}, or keep it in the keyring: keyring set {address.hostname} {name}",
        )
    return CalendarAccount(address.geturl().rstrip("/") + "/", name, password)


def _address(given: str | None) -> SplitResult | Problem:
    place = Place("--url" if given else URL)
    written = given or os.environ.get(URL)
    if not written:
        return Problem(
            _ADDRESS,
            place,
            "No address of a calendar is given.",
            f"give --url, or set {URL}; your calendar app or server shows the CalDAV address.",
        )
    try:
        address = urlsplit(written.strip())
        _ = address.port
    except ValueError:
        return _no_address(place)
    if address.scheme not in {"http", "https"} or not address.hostname:
        return _no_address(place)
    if address.username is not None or address.query or address.fragment:
        return Problem(
            _ADDRESS,
            place,
            "The address holds more than host and path.",
            f"leave only https://host/path/; user and password belong in {USER} and {PASSWORD}.",
        )
    if address.scheme == "http" and not is_loopback(address.hostname):
        return Problem(
            _ADDRESS,
            place,
            "Over http: your password could be read on the way. Nothing was sent.",
            f"use https://{address.netloc}{address.path}",
        )
    return address


def _no_address(place: Place) -> Problem:
    return Problem(
        _ADDRESS,
        place,
        "That is no address of a calendar on a server.",
        "write it as https://host/path/",
    )


def _from_keyring(host: str, user: str) -> str | None:
    try:
        import keyring  # noqa: PLC0415 - optional, and heavy
        from keyring.errors import KeyringError  # noqa: PLC0415 - as above
    except ImportError:
        return None
    try:
        return keyring.get_password(host, user)
    except (KeyringError, RuntimeError, OSError):
        return None
