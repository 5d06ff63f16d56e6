"""Usual figures of a kind of bed work, that a plan may state otherwise."""

from functools import cache

from planner.almanac.table import table_rows
from planner.terms import Figure, Source


@cache
def usual_figures(table: str) -> dict[str, Figure]:
    """Every figure of one of the tables of usual figures ("water", "seed"), by its name."""
    return {
        row["figure"]: Figure(
            float(row["low"]), float(row["high"]), row["unit"], Source(row["source"])
        )
        for row in table_rows(f"{table}.csv")
    }
