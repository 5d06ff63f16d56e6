"""Quantities as a grower writes them: a number and a unit, or a range of numbers."""

import re
from dataclasses import dataclass

from planner.terms.unit import OTHER_SPELLINGS, UNITS, Unit

_LARGEST = 1e300
_NUMBER = r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)"
_QUANTITY = re.compile(
    rf"\s*(?P<low>{_NUMBER})\s*(?:(?:-|–|to)\s*(?P<high>{_NUMBER}))?\s*(?P<unit>m3|(?:cu\s+)?[A-Za-z]+)\s*"  # noqa: RUF001 - growers paste ranges with a long dash
)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with the unit it was written in."""

    value: float
    unit: Unit

    @property
    def si(self) -> float:
        """The value in metres, litres, kilograms, degrees C, days or hours; counts stay counts."""
        return self.value * self.unit.factor + self.unit.offset

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit.name}"


@dataclass(frozen=True, slots=True)
class QuantityRange:
    """Two numbers with one unit; `low` may equal `high`."""

    low: float
    high: float
    unit: Unit


def read_range(text: str) -> QuantityRange | None:
    """Read "6-8 weeks" or "30 days"; None when the words are not a number and a known unit.

    "8-6 weeks" is the same range, told from its other end.
    """
    match = _QUANTITY.fullmatch(text)
    if match is None:
        return None
    written = " ".join(match["unit"].split())
    unit = UNITS.get(OTHER_SPELLINGS.get(written, written))
    if unit is None:
        return None
    low = _number(match["low"])
    high = _number(match["high"]) if match["high"] is not None else low
    return QuantityRange(min(low, high), max(low, high), unit)


def _number(digits: str) -> float:
    """The number, or the largest there is when it has more digits than a computer can hold."""
    return max(-_LARGEST, min(_LARGEST, float(digits)))


def read_quantity(text: str) -> Quantity | None:
    """Read "4 ft" or "25 roots"; None when the words are not one number and a known unit."""
    span = read_range(text)
    if span is None or span.low != span.high:
        return None
    return Quantity(span.low, span.unit)
