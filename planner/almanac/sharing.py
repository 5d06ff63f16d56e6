"""Sharing of ground: which crops go together, how, and when a host's canopy closes (§30).

Canopies: TRADE-S10 prints the percent of a crop's season at which its cover is full (stage C; what
the stages mean is from memory). A crop without a row there has its nearest relative's, marked as
from memory. Pairs are statements of extension services or common practice; no yield data was seen.
"""

from dataclasses import dataclass
from functools import cache

from planner.almanac.table import table_rows
from planner.garden import SharedGround, SharingPattern
from planner.terms import Source


@dataclass(frozen=True, slots=True)
class Canopy:
    """When a crop's canopy has closed, as a share of its time in the ground."""

    closes_at: float
    source: Source
    note: str


@cache
def canopies() -> dict[str, Canopy]:
    """The canopy of every crop, by the crop's name."""
    return {
        row["crop"]: Canopy(
            float(row["closes_at_percent"]) / 100, Source(row["source"]), row["note"]
        )
        for row in table_rows("canopy.csv")
    }


@cache
def sharing_pairs() -> tuple[SharedGround, ...]:
    """Every pair of the almanac's crops that may share ground, host by host."""
    patterns = {row["pattern"]: row for row in table_rows("sharing_patterns.csv")}
    return tuple(_pair(row, patterns[row["pattern"]]) for row in table_rows("sharing.csv"))


def _pair(row: dict[str, str], pattern: dict[str, str]) -> SharedGround:
    return SharedGround(
        host=row["host"],
        guest=row["guest"],
        pattern=SharingPattern(row["pattern"]),
        closes_at=canopies()[row["host"]].closes_at,
        ground_share=float(pattern["ground_share"]),
        yield_share=float(pattern["yield_share"]),
        relay_days=int(pattern["relay_days"]),
        source=Source(row["source"]),
    )
