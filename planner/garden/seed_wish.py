"""Seed: how sure to be of enough plants, and what lies in the seed box."""

from collections.abc import Mapping
from dataclasses import dataclass

from planner.terms import Figure


@dataclass(frozen=True, slots=True)
class SeedKind:
    """A crop's seed: share that comes up when fresh, life in years, and how many in a packet.

    `packet` is 0 where the size of a packet is not told. `packed_in` is the year of what lies in
    the seed box and `in_box` its number of seeds; both are 0 where nothing is told of it.
    """

    comes_up: Figure
    life_years: Figure
    packet: int
    packed_in: int = 0
    in_box: int = 0


@dataclass(frozen=True, slots=True)
class SeedWish:
    """What seeds are counted with. `kept`: the share of seedlings that reach their place.

    `confidence`: how surely there are to be enough plants. `lead_weeks`: how long before its
    first use seed is ordered. `tray_cells`: cells of a tray.
    """

    confidence: float
    kept: Figure
    lead_weeks: float
    tray_cells: int
    kinds: Mapping[str, SeedKind]
