"""Cautions of the trade: the hazard, the usual caution, whom to ask, and the sources."""

from functools import cache

from planner.almanac.table import table_rows
from planner.garden import Caution, CautionTime
from planner.terms import Source


@cache
def all_cautions() -> tuple[Caution, ...]:
    """Every caution, in the order in which each part of the work tells its own."""
    return tuple(
        Caution(
            hazard=row["hazard"],
            part=row["part"],
            time=CautionTime(row["time"]),
            crops=tuple(filter(None, row["crops"].split(";"))),
            text=row["text"],
            ask=row["ask"],
            sources=tuple(map(Source, row["sources"].split(";"))),
        )
        for row in table_rows("cautions.csv")
    )
