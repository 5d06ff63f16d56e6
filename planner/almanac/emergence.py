"""Emergence tables: days from sowing to emergence by soil temperature, as published.

Source: UCSC-A4, after J. F. Harrington and P. A. Minges, seed half an inch deep, soil at a
constant temperature, steps of 9 F (5 C). The same experiment is printed elsewhere with some
values a day lower (OSU-GERM). Temperatures that were not tried are left out. Crops grown from
relatives' figures say so in their note; crops from sets, cloves, tubers or slips have no table.
"""

from dataclasses import dataclass
from functools import cache

from planner.almanac.table import table_rows
from planner.terms import Source


@dataclass(frozen=True, slots=True)
class EmergenceTable:
    """How long a crop's seed takes to come up, from cold to warm.

    `points` are (soil temperature in degrees C, days). `too_cold_degc` and `too_hot_degc` are
    the temperatures below and above them at which nothing came up; empty where none was tried.
    """

    crop: str
    points: tuple[tuple[float, float], ...]
    too_cold_degc: tuple[float, ...]
    too_hot_degc: tuple[float, ...]
    source: Source
    notes: tuple[str, ...]


@cache
def emergence_tables() -> dict[str, EmergenceTable]:
    """Every table by the crop's name; a crop that is missing here has no table."""
    by_crop: dict[str, list[dict[str, str]]] = {}
    for row in table_rows("emergence.csv"):
        by_crop.setdefault(row["crop"], []).append(row)
    return {crop: _table(crop, rows) for crop, rows in by_crop.items()}


def _table(crop: str, rows: list[dict[str, str]]) -> EmergenceTable:
    points = tuple(
        (float(row["soil_degc"]), float(row["days"])) for row in rows if row["days"] != "none"
    )
    nothing = [float(row["soil_degc"]) for row in rows if row["days"] == "none"]
    return EmergenceTable(
        crop=crop,
        points=points,
        too_cold_degc=tuple(degc for degc in nothing if degc < points[0][0]),
        too_hot_degc=tuple(degc for degc in nothing if degc > points[-1][0]),
        source=Source(rows[0]["source"]),
        notes=tuple(dict.fromkeys(row["note"] for row in rows if row["note"])),
    )
