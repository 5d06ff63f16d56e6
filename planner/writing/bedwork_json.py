"""Soil work as plain values that JSON can hold: one function for each part, and the cautions.

Lengths are metres or millimetres, volumes litres, weights kilograms, whatever the grower writes;
prices are in the grower's own money.
"""

from collections.abc import Sequence
from typing import Any

from planner.bedwork import (
    CompostYear,
    Filling,
    ManureCheck,
    Order,
    TightDepth,
    Turnover,
    compost_years,
)
from planner.garden import Caution, Garden, NoPrice
from planner.writing.recorded import recorded

_UM_PER_M = 1e6


def filling_record(
    fillings: Sequence[Filling], order: Order, tight: Sequence[TightDepth]
) -> dict[str, Any]:
    """What fills each new bed, what to buy for all, and crops that would have deeper soil."""
    return {
        "beds": [_filling(one) for one in fillings],
        "order": {
            "parts": [
                {
                    "part": line.part,
                    "volume_l": recorded(line.volume_l),
                    "bags": line.bags,
                    "loads": line.loads,
                }
                for line in order.lines
            ],
            "bag_kg": recorded(order.bag_kg),
            "bags_cost": _price(order.bags_cost),
            "loads_cost": _price(order.loads_cost),
        },
        "tight": [
            {
                "bed": one.bed.name,
                "depth_m": recorded(one.bed.soil_depth_m),
                "crop": one.crop.name,
                "wanted_m": recorded(one.crop.ground.soil_depth.high / 1000),
            }
            for one in tight
        ],
    }


def turnover_record(garden: Garden, turnovers: Sequence[Turnover]) -> dict[str, Any]:
    """Each block's turnover, the compost of each bed and year, and the hunger of each crop."""
    return {
        "blocks": [_turnover(one) for one in turnovers],
        "compost": [_compost(one) for one in compost_years(garden, turnovers)],
        "feeding": [
            {
                "crop": name,
                "class": soil.feeding.value,
                "source": soil.feeding_source.key,
                "disputed": soil.disputed,
                "fed_again": soil.side_dressing,
            }
            for name, soil in garden.soil.crops.items()
        ],
    }


def manure_record(checks: Sequence[ManureCheck]) -> list[dict[str, Any]]:
    """Each spreading of manure with the first harvest of each sowing after it."""
    return [
        {
            "bed": one.manure.bed,
            "on": one.manure.on.isoformat(),
            "touching_from": one.touching_from.isoformat(),
            "clear_from": one.clear_from.isoformat(),
            "unchecked": list(one.unchecked),
            "picks": [
                {
                    "sowing": pick.sowing,
                    "eaten_part": pick.eaten_part.value,
                    "on": pick.on.isoformat(),
                    "days": pick.days,
                    "needed_days": pick.needed_days,
                    "from_on": pick.from_on.isoformat(),
                    "too_early": pick.is_too_early,
                }
                for pick in one.picks
            ],
        }
        for one in checks
    ]


def cautions_record(cautions: Sequence[Caution]) -> list[dict[str, Any]]:
    """Cautions with who decides and where they are from."""
    return [
        {
            "part": one.part,
            "hazard": one.hazard,
            "crops": list(one.crops),
            "text": one.text,
            "ask": one.ask,
            "sources": [source.key for source in one.sources],
        }
        for one in cautions
    ]


def _filling(one: Filling) -> dict[str, Any]:
    return {
        "bed": one.bed.name,
        "volume_l": recorded(one.volume_l),
        "layers": [
            {
                "kind": layer.kind.value,
                "depth_m": recorded(layer.depth_m),
                "volume_l": recorded(layer.volume_l),
            }
            for layer in one.layers
        ],
        "mix": {"parts": dict(one.mix.parts), "source": one.mix.source.key},
        "mix_l": {part: recorded(volume_l) for part, volume_l in one.parts.items()},
        "settles_l": recorded(one.settles_l),
        "wet_kg": recorded(one.wet_kg),
        "first_in": one.first_in.isoformat() if one.first_in else None,
        "shallow_when_settled_for": list(one.shallow_for),
        "doubts": [doubt.value for doubt in one.doubts],
    }


def _turnover(one: Turnover) -> dict[str, Any]:
    return {
        "on": one.on.isoformat(),
        "sowing": one.sowing,
        "bed": one.bed.name,
        "from_m": one.from_um / _UM_PER_M,
        "to_m": one.to_um / _UM_PER_M,
        "pulled": one.pulled,
        "compost_l": recorded(one.volume_l),
        "compost_mm": recorded(one.depth_mm),
        "running_mm": recorded(one.running_mm),
        "held_back": one.held_back,
        "followers": list(one.followers),
    }


def _compost(one: CompostYear) -> dict[str, Any]:
    return {
        "bed": one.bed.name,
        "year": one.year,
        "volume_l": recorded(one.volume_l),
        "deepest_mm": recorded(one.deepest_mm),
        "full_on": one.full_on.isoformat() if one.full_on else None,
    }


def _price(cost: float | NoPrice) -> float | None:
    return None if isinstance(cost, NoPrice) else round(cost, 2)
