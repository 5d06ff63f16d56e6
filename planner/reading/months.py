"""Twelve monthly figures in the text, January first."""

from planner.reading.toml_table import TomlTable
from planner.terms import Dimension, read_quantity


def read_twelve(
    table: TomlTable, key: str, dimension: Dimension, of_what: str, examples: str
) -> tuple[float, ...] | None:
    """Twelve quantities of one dimension in SI units; a problem when the list holds others.

    `examples` shows one in words like '"46 degF" or "8 degC"'. None also where nothing is stated.
    """
    remedy = f"write twelve like {examples}, with commas between, in square brackets."
    written = table.items(key, remedy)
    if written is None:
        return None
    values = [read_quantity(one) if isinstance(one, str) else None for one in written]
    right = [one.si for one in values if one and one.unit.dimension is dimension]
    if len(right) == 12 == len(written):
        return tuple(right)
    table.report(
        "bad-quantity",
        key,
        f'"{key}" needs twelve {of_what}, January first.',
        remedy,
    )
    return None
