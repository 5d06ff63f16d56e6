"""Slips in TOML, in the grower's words: what Python's parser says of them is for programmers."""

import re

_PLAINER = tuple(
    (re.compile(said), plain)
    for said, plain in (
        (r"Illegal character '\\n'|Unterminated string|Expected ['\"]{3,}.*",
         "A quote that opens on this line is never closed"),
        (r"Cannot overwrite a value|Duplicate inline table key .*", "A word is stated twice"),
        (r"Cannot declare \('(?P<name>[^']*)',\) twice", "The heading [{name}] stands twice"),
        (r"Cannot (declare|redefine|mutate) .*", "This heading tells of what was told already"),
        (r"Expected '=' after .*", "There is no equals sign after the first word"),
        (r"Expected '\]+' at the end of .*", "The brackets around a heading are not closed"),
        (r"Unclosed array", "A square bracket is opened and never closed"),
        (r"Unclosed inline table", "A curly bracket is opened and never closed"),
        (r"Invalid value",
         "What stands here is no text in quotes, no number, no date, and neither true nor false"),
        (r"Invalid date or datetime", "The calendar has no such day"),
        (r"Expected newline or end of document .*",
         "The line goes on after its value; texts and quantities stand in quotes"),
        (r"Unescaped '\\' in a string|Invalid hex value|Escaped character .*",
         "A backslash in quotes is written twice"),
        (r"Invalid statement|Invalid initial character .*",
         "The line begins with a sign that no word begins with"),
        (r"(Found invalid|Illegal) character .*", "A sign stands here that no text may hold"),
    )
)  # fmt: skip


def plainer(said: str) -> str:
    """What the parser said, in plain words; its own where it says something unheard of."""
    for pattern, plain in _PLAINER:
        match = pattern.fullmatch(said)
        if match is not None:
            return plain.format(**match.groupdict())
    return said
