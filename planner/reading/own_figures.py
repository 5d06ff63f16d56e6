"""Figures of bed work that a plan may state, each in place of the usual one."""

from planner.reading.toml_table import TomlTable
from planner.terms import Figure


def own_or_usual(
    table: TomlTable | None, key: str, within: tuple[float, float], usual: Figure
) -> Figure:
    """A number of the plan between two bounds, without a unit; the usual one where it has none."""
    if table is None or key not in table:
        return usual
    number = table.number(key, *within)
    return usual if number is None else Figure(number, number, "", table.source(key))


def own_or_usual_count(
    table: TomlTable | None, key: str, within: tuple[int, int], usual: Figure
) -> Figure:
    """A whole number of the plan between two bounds; the usual one where it has none."""
    if table is None or key not in table:
        return usual
    count = table.whole_number(key, *within)
    return usual if count is None else Figure(count, count, usual.unit, table.source(key))
