"""Content lines of a calendar: escaped, folded, and read back (RFC 5545 3.1 and 3.3.11)."""

import re
import unicodedata
from collections.abc import Iterable, Iterator

_LONGEST_OCTETS = 74
# No fold parts a backslash or a caret from the sign it stands before.
_LEANING = b"\\^"
_CONTROLS = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f]")


def plain(text: str) -> str:
    """Text in one normal form without control characters, which RFC 5545 3.3.11 excludes."""
    return _CONTROLS.sub("", unicodedata.normalize("NFC", text))


def escaped(text: str) -> str:
    """Text as the value of a property."""
    told = text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return told.replace("\n", "\\n")


def unescaped(value: str) -> str:
    """The text of a value; a backslash before any other sign is taken away."""
    return "".join(_unescaped_signs(value))


def _unescaped_signs(value: str) -> Iterator[str]:
    signs = iter(value)
    for sign in signs:
        if sign != "\\":
            yield sign
            continue
        told = next(signs, "")
        yield "\n" if told in {"n", "N"} else told


def component(name: str, lines: Iterable[str]) -> list[str]:
    """The lines of a component between its first and its last."""
    return [f"BEGIN:{name}", *lines, f"END:{name}"]


def written(lines: Iterable[str]) -> bytes:
    """Lines as they stand in a file, each folded so that none is longer than 75 octets."""
    octets = "\r\n".join((*lines, "")).encode()
    parts = octets.split(b"\r\n")
    return b"\r\n".join(one if len(one) <= _LONGEST_OCTETS else _folded(one) for one in parts)


def _folded(line: bytes) -> bytes:
    parts = []
    while len(line) > _LONGEST_OCTETS:
        end = _LONGEST_OCTETS
        while line[end] & 0xC0 == 0x80:  # a later octet of a character
            end -= 1
        if line[end - 1] in _LEANING:
            end -= 1
        parts.append(line[:end])
        line = line[end:]
    return b"\r\n ".join((*parts, line))


def unfolded(content: bytes) -> list[str]:
    """The lines of a file, whole again; lines may also end with a line feed alone."""
    text = content.decode().replace("\r\n", "\n")
    return text.replace("\n ", "").replace("\n\t", "").rstrip("\n").split("\n")
