"""What an event tells its reader, whoever wrote its lines and in which order.

A server or an app may put lines in another order, fold them elsewhere, add stamps and alarms of
its own: the event still says the same. Words, days, place, kind and state are what it says.
"""

import hashlib
import json
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass

from planner.writing.calendar_event import name_and_value, own_lines
from planner.writing.content_lines import unescaped

_TEXTS = ("SUMMARY", "DESCRIPTION", "LOCATION")
_DAYS = ("DTSTART", "DTEND", "DURATION", "RRULE")
_TICKS = ("COMPLETED", "PERCENT-COMPLETE")
_STATE = "CONFIRMED"


@dataclass(frozen=True, slots=True)
class Saying:
    """An event's words, days and state; `ticked` where the grower marked it as done.

    `stamped_by_plan` tells whether the stamps are those of a season, which no app writes: made
    and changed on the same midnight.
    """

    uid: str
    told: tuple[tuple[str, str], ...]
    number: int
    ticked: bool
    stamped_by_plan: bool

    @property
    def days(self) -> tuple[str, ...]:
        """When it is."""
        return tuple(value for name, value in self.told if name in _DAYS)

    @property
    def summary(self) -> str:
        """What it is called."""
        return next((value for name, value in self.told if name == "SUMMARY"), "")

    @property
    def imprint(self) -> str:
        """The same for events that say the same, another for any other."""
        content = json.dumps(self.told, ensure_ascii=True).encode()
        return hashlib.sha256(content).hexdigest()[:20]


def saying_of(lines: Iterable[str]) -> Saying:
    """What the lines of an event say; ValueError where it has no UID."""
    values: dict[str, list[str]] = {}
    for name, value in map(name_and_value, own_lines(lines)):
        values.setdefault(name, []).append(value)
    if not values.get("UID", [""])[0]:
        message = "an event without UID"
        raise ValueError(message)
    return Saying(
        values["UID"][0],
        tuple(_told(values)),
        _number(values),
        _is_ticked(values),
        _is_stamped_by_plan(values),
    )


def _told(values: dict[str, list[str]]) -> Iterable[tuple[str, str]]:
    for name in _TEXTS:
        yield name, _text(values.get(name, [""])[0])
    for name in _DAYS:
        yield from ((name, value) for value in values.get(name, []))
    for kind in sorted(one for value in values.get("CATEGORIES", []) for one in _listed(value)):
        yield "CATEGORIES", kind
    yield "STATUS", _state(values)


def _text(value: str) -> str:
    return unicodedata.normalize("NFC", unescaped(value)).strip()


def _listed(value: str) -> Iterable[str]:
    """The texts of a list; an escaped comma belongs to its text."""
    whole = value.replace("\\\\", "\0").replace("\\,", "\1")
    for one in whole.split(","):
        text = _text(one.replace("\1", "\\,").replace("\0", "\\\\"))
        if text:
            yield text


def _state(values: dict[str, list[str]]) -> str:
    return values.get("STATUS", [_STATE])[0].strip().upper()


def _number(values: dict[str, list[str]]) -> int:
    number = values.get("SEQUENCE", ["0"])[0].strip()
    return int(number) if number.isdecimal() else 0


def _is_ticked(values: dict[str, list[str]]) -> bool:
    return _state(values) == "COMPLETED" or any(
        value.strip() not in {"", "0"} for name in _TICKS for value in values.get(name, [])
    )


def _is_stamped_by_plan(values: dict[str, list[str]]) -> bool:
    stamps = {*values.get("DTSTAMP", []), *values.get("LAST-MODIFIED", [])}
    return len(stamps) == 1 and next(iter(stamps)).endswith("T000000Z")
