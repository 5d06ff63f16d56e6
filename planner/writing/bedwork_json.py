"""Bed work as plain values that JSON can hold: one function for each part.

Lengths are metres, volumes litres, weights kilograms, whatever the grower writes.
"""

from collections.abc import Sequence
from typing import Any

from planner.bedwork import Filling

_PLACES = 4


def filling_record(fillings: Sequence[Filling]) -> list[dict[str, Any]]:
    """What fills each new bed."""
    return [{"bed": one.bed.name, "volume_l": _round(one.volume_l)} for one in fillings]


def _round(value: float) -> float:
    return round(value, _PLACES)
