"""Shared ground: which crop may be the guest of which host, and what it gives there (§30)."""

from dataclasses import dataclass
from enum import StrEnum

from planner.terms import Source


class SharingPattern(StrEnum):
    """How two crops share ground.

    BETWEEN: a quick, shallow guest between young, slow hosts, out before their canopy closes.
    BENEATH: a low guest that bears shade, under a tall host or on its shade side, while it stands.
    RELAY: sown or set under a host about to end, which the guest follows.
    """

    BETWEEN = "between"
    BENEATH = "beneath"
    RELAY = "relay"


@dataclass(frozen=True, slots=True)
class SharedGround:
    """One pair of crops, by name, and how they share ground; `source` tells of the pair.

    `closes_at`: share of the host's time in the ground after which its canopy has closed.
    `ground_share`: share of the host's area that guests may take.
    `yield_share`: what a guest gives against a plant of its own ground, always below 1.
    `relay_days`: how many days before the host is cleared the guest may enter; 0 unless RELAY.
    """

    host: str
    guest: str
    pattern: SharingPattern
    closes_at: float
    ground_share: float
    yield_share: float
    relay_days: int
    source: Source
