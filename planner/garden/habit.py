"""Habits of harvest: once, cut again and again, picked over weeks, or lifted into a store."""

from dataclasses import dataclass

from planner.terms import Figure


@dataclass(frozen=True, slots=True)
class Once:
    """Each plant gives once and stands `hold_days` at usable size."""

    hold_days: Figure


@dataclass(frozen=True, slots=True)
class Cut:
    """Leaves are cut `cuts` times, `regrow_days` apart."""

    cuts: Figure
    regrow_days: Figure


@dataclass(frozen=True, slots=True)
class Pick:
    """Fruit or pods ripen over `picking_days` and are picked as they do."""

    picking_days: Figure


@dataclass(frozen=True, slots=True)
class Store:
    """Lifted together within `hold_days`, then eaten from the store for `store_days`."""

    hold_days: Figure
    store_days: Figure


Habit = Once | Cut | Pick | Store
