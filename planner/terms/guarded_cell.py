"""Guarded cells: the grower's words in a table, so that no spreadsheet takes them for a formula.

A spreadsheet program runs a cell that begins with one of a few signs, and may begin a cell where
another separator stands in the text (OWASP, "CSV Injection"). There an apostrophe goes before.
"""

import re

# Where a cell begins or may begin; and what must not be first in it, even behind spaces and
# quotes: the signs that begin a formula, wide ones too, a tab, a line's end.
_BEGIN = r"(?:(?<![\s\S])|(?<=[,;|\t\r\n]))"
_FORMULA = "(?=[ \u00a0\"']*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20])"
_UNGUARDED = re.compile(_BEGIN + _FORMULA)
_GUARD = re.compile(f"{_BEGIN}'{_FORMULA}")


def guarded(text: str) -> str:
    """The text as it stands in a table for spreadsheet programs."""
    return _UNGUARDED.sub("'", text)


def unguarded(cell: str) -> str:
    """The text of a cell that was guarded."""
    return _GUARD.sub("", cell)
