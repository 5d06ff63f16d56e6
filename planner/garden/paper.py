"""Paper: the size the garden's sheets are printed on."""

from enum import StrEnum


class Paper(StrEnum):
    """A4 is of ISO 216, letter of ANSI/ASME Y14.1."""

    A4 = "A4"
    LETTER = "letter"
