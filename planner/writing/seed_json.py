"""Seed as plain values that JSON can hold."""

from typing import Any

from planner.bedwork import NoTrays, Seed, SeedNeed
from planner.writing.recorded import recorded


def seed_record(seed: Seed) -> dict[str, Any]:
    """What seed is needed of each crop, by when, and the trays."""
    wish, trays = seed.garden.seed, seed.trays
    return {
        "as_of": seed.as_of.isoformat(),
        "confidence": wish.confidence,
        "kept": recorded(wish.kept.middle),
        "crops": [_need(one) for one in seed.needs],
        "trays": None
        if isinstance(trays, NoTrays)
        else {"cells": trays.cells, "trays": trays.trays, "on": trays.on.isoformat()},
    }


def _need(one: SeedNeed) -> dict[str, Any]:
    return {
        "crop": one.crop.name,
        "start_from": one.crop.start_from.value,
        "plants": one.plants,
        "seeds": one.seeds,
        "comes_up": recorded(one.comes_up),
        "in_box": one.in_box,
        "too_old": one.too_old,
        "to_buy": one.to_buy,
        "packets": one.packets or None,
        "first_on": one.first_on.isoformat(),
        "order_by": one.order_by.isoformat(),
    }
