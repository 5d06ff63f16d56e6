"""Unmet wishes: how much of what is missing in which week, why, and what would mend it."""

from dataclasses import dataclass
from enum import StrEnum

from planner.terms import Week


class UnmetKind(StrEnum):
    """Why a week falls short."""

    TOO_EARLY = "too early in the year"
    TOO_LATE = "too late in the year"
    BETWEEN = "nothing ripens then"
    AWAY = "nobody is there"
    NO_GROUND = "no ground free"
    COMING_IN = "not in full harvest"
    TOO_LITTLE = "too little for a sowing"
    HEAT = "too hot or days too long"
    SOIL = "soil too cold or too hot"
    FROST = "no frost-free time"
    PAST = "already past"


@dataclass(frozen=True, slots=True)
class Reason:
    """A reason and a remedy, in sentences."""

    kind: UnmetKind
    why: str
    remedy: str


@dataclass(frozen=True, slots=True)
class Unmet:
    """An amount of a crop that a week will lack."""

    crop: str
    week: Week
    amount: float
    reason: Reason
