"""How a file is harmed: in its bytes, its lines, its TOML, its table cells, its JSON."""

import json
import re
from collections.abc import Callable, Sequence
from typing import Any

from hypothesis import strategies as st

from tests.fuzz.materials import words_of_reading

# Values of every type, at and beyond every edge.
ODD_VALUES = (
    "1", "0", "-1", "-0", "0.0", "1e3", "1e400", "-1e308", "nan", "inf", "0x1F", "1_000",
    "99999999999999999999", "true", "false", '""', '" "', '"full"', '"radish"', '"8 ft"', '"0 ft"',
    '"1e9 ft"', '"-3 in"', '"0.05 m"', '"200 m"', '"12 roots"', '"1 lb"', '"0.0001 oz"',
    '"9999 roots"', '"3-5 days"', '"5-3 days"', '"10 to 20 days"', '"50 degF"', '"never"',
    '"02-29"', '"12-31"', '"01-01"', '"13-01"', '"2027-05-01"', "2027-05-01", "2028-02-29",
    "1900-01-01", "2200-12-31", "0001-01-01", "9999-12-31", "2027-05-01T07:32:00Z", "07:32:00",
    "[]", "[1]", '["Wed"]', '["Wed", "Wed"]', '["1 degC"]', "[[]]", "[{}]", "{}", "{ a = 1 }",
    "{ from = 2027-05-01, to = 2027-05-09 }", "[{ from = 2027-05-01, to = 2027-05-09 }]",
    '"""\nmany\nlines"""', "'''raw\\'''", '"\\u0000"', '"\\u202E"', '"\\u001b[2J"', '"☂ Ünïcode"',
    '"\u017fun"', '"İ"', '"\uff26ull"', '"8\\u00a0ft"', '"٣ ft"', '"½ ft"', '"a" "b"', "", "=", "#",
    '"' + "long " * 200 + '"', '"3 gal in 15 min"', '"1 L/h"', '"0 gal/h"', '"1.5 cu ft"', '"0 L"',
    '{ emitters = 24, each = "0.5 gal/h" }', "{ emitters = 0 }", "{ topsoil = 0 }",
    "{ compost = 1e308, topsoil = 1 }", '["1 in"]', "0.5", "0.999", "1.0", "2025", "1950",
)  # fmt: skip
ODD_CELLS = (
    "", "0", "-1", "nan", "inf", "1e400", "9999", "-9999", "2027-02-30", "2027-5-1", "05/01/2027",
    "0001-01-01", "9999-12-31", "2026-01-01", "sown", "picked", "undone", "late", "lost", "missed",
    "set out", "radish 1", "radish 99", "Radish  1", "leaf lettuce 1", "radish 0", "radish",
    "25 roots", "1e9 roots", "-3 roots", "6 plants", "10 days", "-99999 days", '"', '""', "'", ";",
    "=1+1", "\x00", "\u202e", "٣", "☂", "x" * 500, " ", "\t", "date", "TMIN", "low", "high",
)  # fmt: skip
_SIGNS: tuple[str, ...] = (
    *"\x00\ufeff\r\n\t\u2028\u0301☂\"'[]{}=#,;.\\\x85\x0c\x1a",
    "\r\n",
    "\x1b[31m",
)
_ODD_NUMBERS = ("0", "-1", "1e9", "007", "1" * 40, "½", "٣", "")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")

Harm = Callable[[st.DrawFn, str], str]


def _place(draw: st.DrawFn, things: Sequence[object]) -> int:
    return draw(st.integers(0, max(0, len(things) - 1)))


# Bytes.


@st.composite
def harmed_bytes(draw: st.DrawFn, content: bytes, most: int = 3) -> bytes:
    """Some bytes flipped, put in, taken out, doubled, or the end cut off."""
    for _ in range(draw(st.integers(1, most))):
        at = _place(draw, content)
        end = min(len(content), at + draw(st.sampled_from((1, 2, 7, 40, 400))))
        way = draw(st.sampled_from(("flip", "put", "out", "twice", "cut", "sign")))
        if way == "flip":
            content = content[:at] + bytes([draw(st.integers(0, 255))]) + content[at + 1 :]
        elif way == "put":
            content = content[:at] + draw(st.binary(min_size=1, max_size=5)) + content[at:]
        elif way == "sign":
            content = content[:at] + draw(st.sampled_from(_SIGNS)).encode() + content[at:]
        elif way == "out":
            content = content[:at] + content[end:]
        elif way == "twice":
            content = content[:end] + content[at:]
        else:
            content = content[:at]
    return content


# Lines and words.


def _line(draw: st.DrawFn, text: str) -> str:
    """A line taken out, doubled, moved, or cut short."""
    lines = text.split("\n")
    at = _place(draw, lines)
    way = draw(st.sampled_from(("out", "twice", "move", "short", "swap")))
    if way == "out":
        del lines[at]
    elif way == "twice":
        lines.insert(_place(draw, lines), lines[at])
    elif way == "move":
        lines.insert(_place(draw, lines), lines.pop(at))
    elif way == "swap":
        other = _place(draw, lines)
        lines[at], lines[other] = lines[other], lines[at]
    else:
        lines[at] = lines[at][: _place(draw, lines[at])]
    return "\n".join(lines)


def _number(draw: st.DrawFn, text: str) -> str:
    """One number changed: a little, much, or into no number."""
    found = list(_NUMBER.finditer(text))
    if not found:
        return text
    one = draw(st.sampled_from(found))
    was = float(one[0])
    near = (was + 1, was - 1, was * 10, was / 10, was * 1.5)
    now = draw(st.sampled_from((*(f"{number:g}" for number in near), f"{was:.0f}.", *_ODD_NUMBERS)))
    return text[: one.start()] + now + text[one.end() :]


def _sign(draw: st.DrawFn, text: str) -> str:
    at = _place(draw, text)
    return text[:at] + draw(st.sampled_from(_SIGNS)) + text[at + draw(st.integers(0, 2)) :]


def _ends(draw: st.DrawFn, text: str) -> str:
    """Other line ends, or a byte order mark."""
    return draw(
        st.sampled_from(
            (text.replace("\n", "\r\n"), text.replace("\n", "\r"), f"\ufeff{text}", text.rstrip())
        )
    )


# TOML.


def _toml_lines(text: str) -> list[int]:
    return [number for number, line in enumerate(text.split("\n")) if "=" in line]


def _value(draw: st.DrawFn, text: str) -> str:
    """Another value behind a key: an odd one, or that of another line."""
    lines, keyed = text.split("\n"), _toml_lines(text)
    if not keyed:
        return text
    at = draw(st.sampled_from(keyed))
    others = [lines[one].split("=", 1)[1].strip() for one in keyed]
    now = draw(st.one_of(st.sampled_from(ODD_VALUES), st.sampled_from(others)))
    lines[at] = f"{lines[at].split('=', 1)[0]}= {now}"
    return "\n".join(lines)


def _key(draw: st.DrawFn, text: str) -> str:
    """Another word before a value, quoted perhaps, or dotted."""
    lines, keyed = text.split("\n"), _toml_lines(text)
    if not keyed:
        return text
    at = draw(st.sampled_from(keyed))
    word = draw(st.sampled_from(words_of_reading()))
    key = draw(st.sampled_from((word, f'"{word}"', f"site.{word}", f"{word}.{word}", f"{word}x")))
    lines[at] = f"{key} = {lines[at].split('=', 1)[1].strip()}"
    return "\n".join(lines)


def _more(draw: st.DrawFn, text: str) -> str:
    """A line more: a word that is known somewhere, with a value from anywhere."""
    lines = text.split("\n")
    word = draw(st.sampled_from(words_of_reading()))
    lines.insert(_place(draw, lines), f"{word} = {draw(st.sampled_from(ODD_VALUES))}")
    return "\n".join(lines)


def _heading(draw: st.DrawFn, text: str) -> str:
    """Another heading."""
    lines = text.split("\n")
    headings = [number for number, line in enumerate(lines) if line.startswith("[")]
    if not headings:
        return text
    word = draw(st.sampled_from((*words_of_reading(), "crop.oca", "bed", "site", "target", "")))
    lines[draw(st.sampled_from(headings))] = draw(
        st.sampled_from((f"[{word}]", f"[[{word}]]", f"[{word}", f"[a.{word}]", f'["{word}"]', ""))
    )
    return "\n".join(lines)


def _part(draw: st.DrawFn, text: str) -> str:
    """A part under a heading taken out, doubled, or moved."""
    parts = re.split(r"\n(?=\[)", text)
    at = _place(draw, parts)
    way = draw(st.sampled_from(("out", "twice", "move")))
    if way == "twice":
        parts.insert(_place(draw, parts), parts[at])
    else:
        part = parts.pop(at)
        if way == "move":
            parts.insert(_place(draw, parts), part)
    return "\n".join(parts)


_TOML: tuple[Harm, ...] = (_value, _value, _value, _key, _more, _more, _heading, _part, _line,
                           _number, _number, _number, _sign, _ends)  # fmt: skip


@st.composite
def harmed_toml(draw: st.DrawFn, text: str) -> bytes:
    """TOML with a few of its words, values, headings, parts or signs changed."""
    for _ in range(draw(st.integers(1, 3))):
        text = draw(st.sampled_from(_TOML))(draw, text)
    return text.encode("utf-8", "surrogatepass")


# Tables.


def _cell(draw: st.DrawFn, text: str) -> str:
    lines = text.split("\n")
    at = draw(st.one_of(st.integers(0, min(4, len(lines) - 1)), st.integers(0, len(lines) - 1)))
    cells = lines[at].split(",")
    cells[_place(draw, cells)] = draw(st.one_of(st.sampled_from(ODD_CELLS), st.text(max_size=8)))
    lines[at] = ",".join(cells)
    return "\n".join(lines)


def _columns(draw: st.DrawFn, text: str) -> str:
    """One column of every line taken out, doubled or moved, or another mark between them."""
    way = draw(st.sampled_from(("out", "twice", "move", "mark")))
    if way == "mark":
        return text.replace(",", draw(st.sampled_from((";", "\t", ", ", "|"))))
    at, to = draw(st.integers(0, 4)), draw(st.integers(0, 4))
    lines = []
    for line in text.split("\n"):
        cells = line.split(",")
        if at < len(cells):
            one = cells[at] if way == "twice" else cells.pop(at)
            if way != "out":
                cells.insert(to, one)
        lines.append(",".join(cells))
    return "\n".join(lines)


_TABLE: tuple[Harm, ...] = (_cell, _cell, _cell, _columns, _line, _number, _sign, _ends)


@st.composite
def harmed_table(draw: st.DrawFn, text: str) -> bytes:
    """A table with a few of its cells, columns, lines or signs changed."""
    for _ in range(draw(st.integers(1, 3))):
        text = draw(st.sampled_from(_TABLE))(draw, text)
    return text.encode("utf-8", "surrogatepass")


# JSON.

_ODD_JSON: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 10**30, 1.5, -0.0, 1e308, float("inf"), float("nan"), "", "x",
    "2027-05-01", "9999-12-31", "0001-01-01", "2027-W19", "radish 1", "radish", "Gate bed", [], {},
    [None], [[]], {"on": 1}, "\x00", "\u202e", "x" * 500, "picked", "begun", "lost", "planned",
)  # fmt: skip


@st.composite
def harmed_json(draw: st.DrawFn, value: object) -> object:
    """JSON with one thing in it, at any depth, changed, taken out, or doubled."""
    if isinstance(value, dict) and value and draw(st.integers(0, 7)):
        return _harmed_words(draw, value)
    if isinstance(value, list) and value and draw(st.integers(0, 7)):
        return _harmed_list(draw, value)
    if isinstance(value, str) and value and draw(st.booleans()):
        return _number(draw, value)
    if isinstance(value, int | float) and not isinstance(value, bool) and draw(st.booleans()):
        return value * draw(st.sampled_from((-1, 2, 10, 0.5, 1e6)))
    return draw(st.sampled_from(_ODD_JSON))


def _harmed_words(draw: st.DrawFn, value: dict[str, object]) -> dict[str, object]:
    key = draw(st.sampled_from(sorted(value)))
    changed = dict(value)
    if draw(st.integers(0, 9)) == 0:
        del changed[key]
    else:
        changed[key] = draw(harmed_json(value[key]))
    return changed


def _harmed_list(draw: st.DrawFn, value: list[object]) -> list[object]:
    at = _place(draw, value)
    way = draw(st.integers(0, 9))
    if way == 0:
        return [*value[:at], *value[at + 1 :]]
    if way == 1:
        return [*value[: at + 1], *value[at:]]
    return [*value[:at], draw(harmed_json(value[at])), *value[at + 1 :]]


def json_bytes(value: object) -> bytes:
    """JSON as `planner schedule` might have written it."""
    return json.dumps(value, ensure_ascii=False).encode("utf-8", "surrogatepass")
