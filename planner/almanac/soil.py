"""Soil work: figures in engine units, and published mixes.

Lengths become millimetres, volumes litres, weights kilograms, densities kilograms a litre, feeding
kilograms a square metre.
"""

from functools import cache

from planner.almanac.table import table_rows
from planner.almanac.usual_figures import usual_figures
from planner.garden import SoilMix
from planner.terms import M2_PER_SQ_FT, UNITS, Dimension, Figure, Source

_ENGINE_UNITS = {
    Dimension.LENGTH: (1000, "mm"),
    Dimension.VOLUME: (1, "L"),
    Dimension.MASS: (1, "kg"),
}
_LB_KG = UNITS["lb"].factor
_BY_HAND = {
    "lb/cu yd": (_LB_KG / UNITS["cu yd"].factor, "kg/L"),
    "lb/100 sq ft": (_LB_KG / (100 * M2_PER_SQ_FT), "kg/m2"),
    "d": (1.0, "days"),
    "": (1.0, ""),
}
USUAL_MIX, RICH_MIX = "usual", "rich"


@cache
def soil_figures() -> dict[str, Figure]:
    """What soil work is counted with where the plan states nothing else, in engine units."""
    return {name: _in_engine_unit(one) for name, one in usual_figures("soil").items()}


def _in_engine_unit(figure: Figure) -> Figure:
    if figure.unit in _BY_HAND:
        return figure.times(*_BY_HAND[figure.unit])
    written = UNITS[figure.unit]
    factor, name = _ENGINE_UNITS[written.dimension]
    return figure.times(written.factor * factor, name)


@cache
def soil_mixes() -> dict[str, SoilMix]:
    """Published mixes by name; those named usual and rich are counted with."""
    parts: dict[str, dict[str, float]] = {}
    sources: dict[str, Source] = {}
    for row in table_rows("soil_mixes.csv"):
        parts.setdefault(row["mix"], {})[row["part"]] = float(row["parts"])
        sources.setdefault(row["mix"], Source(row["source"]))
    return {name: SoilMix(mix, sources[name]) for name, mix in parts.items()}
