"""What people eat of each crop, as published, and how kitchens group crops.

Published amounts differ by a factor of three and are kept side by side; none of them is the answer.
"""

from functools import cache

from planner.almanac.table import table_rows
from planner.garden import AmountBasis, PublishedAmount
from planner.terms import Figure, Source

_BASES = {one.name.casefold(): one for one in AmountBasis}


@cache
def published_amounts() -> dict[str, tuple[PublishedAmount, ...]]:
    """Every published amount of each crop, by the crop's name."""
    found: dict[str, tuple[PublishedAmount, ...]] = {}
    for row in table_rows("appetite.csv"):
        figure = Figure(float(row["low"]), float(row["high"]), row["unit"], Source(row["source"]))
        one = PublishedAmount(_BASES[row["basis"]], figure, row["note"])
        found[row["crop"]] = (*found.get(row["crop"], ()), one)
    return found


@cache
def kitchen_groups() -> dict[str, str]:
    """The group of each crop in the kitchen, by the crop's name; from memory."""
    return {row["crop"]: row["group"] for row in table_rows("kitchen_groups.csv")}
