"""Temperatures of a crop, held against each other: each pair in the order it must have."""

from collections.abc import Callable, Mapping

from planner.almanac import Stated
from planner.reading.toml_table import TomlTable
from planner.terms import Fact, Figure

# Colder figure, warmer figure, and when the two can stand together: as the engine counts them.
_ORDERS: tuple[tuple[str, str, Callable[[Figure, Figure], bool]], ...] = (
    ("base_temperature", "best_temperature", lambda base, best: base.middle < best.low),
    ("base_temperature", "upper_temperature", lambda base, upper: base.middle < upper.middle),
    ("best_temperature", "upper_temperature", lambda best, upper: best.low <= upper.middle),
    ("germinates_from", "germinates_to", lambda coldest, warmest: coldest.low < warmest.high),
)


def check_heat(table: TomlTable, own: Mapping[str, Figure | Fact], stated: Stated) -> None:
    """A problem for each of the grower's `own` figures out of order among all that is `stated`.

    The almanac's own figures are in order; tests/almanac/test_heat_figures.py holds them to it.
    """
    told: set[str] = set()
    for colder, warmer, can_stand in _ORDERS:
        key = next((one for one in (colder, warmer) if one in own), None)
        low, high = stated.get(colder), stated.get(warmer)
        if key is None or not (isinstance(low, Figure) and isinstance(high, Figure)):
            continue
        if key not in told and not can_stand(low, high):
            told.add(key)
            _report(table, key, f'"{colder}" ({_told(low)})', f'"{warmer}" ({_told(high)})')


def _told(figure: Figure) -> str:
    return f"{figure}, {figure.source}"


def _report(table: TomlTable, key: str, colder: str, warmer: str) -> None:
    table.report(
        "out-of-range",
        key,
        f"{colder} must lie below {warmer}.",
        "check both numbers and their units, and state the other one too if it differs.",
    )
