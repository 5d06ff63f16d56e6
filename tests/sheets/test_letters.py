"""Every letter the sheets say they can show has its type, in both weights."""

import json
from pathlib import Path

import pytest
import typst

from planner.sheets import typesetter
from planner.sheets.letters import STAND_IN, shown

_HERE = Path(typesetter.__file__).parent
_FONTS = typst.Fonts(include_system_fonts=False, font_paths=[_HERE / "fonts"])
_SOURCE = b"""
#import "frame.typ": plain
#set document(title: "Letters")
#show: plain
#for letters in json(bytes(sys.inputs.letters)) [#letters #strong(letters) ]
"""
_ROW = 40


def _set(letters: str) -> None:
    """Set letters by PDF/UA-1, which allows none without type (ISO 14289-1, 7.21)."""
    rows = [letters[first : first + _ROW] for first in range(0, len(letters), _ROW)]
    typst.Compiler(
        root=_HERE,
        font_paths=_FONTS,
        ignore_system_fonts=True,
    ).compile(
        input=_SOURCE,
        format="pdf",
        pdf_standards="ua-1",
        sys_inputs={"letters": json.dumps(rows), "sheet": "{}"},
    )


def _known() -> str:
    every = (chr(number) for number in range(0x20, 0x20000) if not 0xD800 <= number < 0xE000)
    return "".join(letter for letter in every if shown(letter) == letter)


def test_every_letter_said_to_be_known_has_its_type() -> None:
    _set(_known())


@pytest.mark.parametrize("letter", "日한ส🥕")
def test_a_letter_shown_as_a_box_has_none(letter: str) -> None:
    assert shown(letter) == STAND_IN
    with pytest.raises(typst.TypstError, match="could not be displayed"):
        _set(letter)


@pytest.mark.parametrize(
    "letters",
    [
        range(0x20, 0x7F),  # Basic Latin, as The Unicode Standard names its blocks
        [*range(0xA1, 0xAD), *range(0xAE, 0x100)],  # Latin-1 Supplement
        range(0x100, 0x180),  # Latin Extended-A
        range(0x410, 0x450),  # Russian
        range(0x5D0, 0x5EB),  # Hebrew letters
    ],
)
def test_alphabets_of_many_growers_are_known_whole(letters: range | list[int]) -> None:
    text = "".join(map(chr, letters))
    assert STAND_IN not in shown(text, len(text))
