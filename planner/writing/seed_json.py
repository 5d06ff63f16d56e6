"""Seed as plain values that JSON can hold."""

from typing import Any

from planner.bedwork import NoTrays, Seed, SeedNeed

_PLACES = 4


def seed_record(seed: Seed) -> dict[str, Any]:
    """What seed is needed of each crop, by when, and the trays."""
    wish, trays = seed.garden.seed, seed.trays
    return {
        "as_of": seed.as_of.isoformat(),
        "confidence": wish.confidence,
        "kept": round(wish.kept.middle, _PLACES),
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
        "comes_up": round(one.comes_up, _PLACES),
        "in_box": one.in_box,
        "too_old": one.too_old,
        "to_buy": one.to_buy,
        "packets": one.packets or None,
        "first_on": one.first_on.isoformat(),
        "order_by": one.order_by.isoformat(),
    }
