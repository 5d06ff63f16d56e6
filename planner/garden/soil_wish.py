"""Soil: what new beds are filled with, what feeds the others, and where manure was spread."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from planner.terms import Figure, Place, Source


class Feeding(StrEnum):
    """How hungry a crop is, from the least on."""

    LIGHT = "light"
    LIGHT_TO_MEDIUM = "light to medium"
    MEDIUM = "medium"
    MEDIUM_TO_HEAVY = "medium to heavy"
    HEAVY = "heavy"
    UNKNOWN = "unknown"


class EatenPart(StrEnum):
    """Where what is eaten grows, which decides how long raw manure must have lain (§46)."""

    IN_SOIL = "in the soil"
    ON_SOIL = "on the soil"
    CLEAR_OF_SOIL = "clear of the soil"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class SoilMix:
    """What good mix is made of: each part by name, and how many parts of it by volume."""

    parts: Mapping[str, float]
    source: Source

    @property
    def shares(self) -> dict[str, float]:
        """Each part's share of the volume; all sum to 1."""
        whole = math.fsum(self.parts.values())
        return {name: parts / whole for name, parts in self.parts.items()}


@dataclass(frozen=True, slots=True)
class NoPrice:
    """Of what the grower tells no price."""


@dataclass(frozen=True, slots=True)
class Parcel:
    """How soil is sold: so many litres at a time, at a price in the grower's own money."""

    size: Figure
    price: float | NoPrice


@dataclass(frozen=True, slots=True)
class Manure:
    """Raw manure worked into a bed on a day."""

    bed: str
    on: date
    place: Place = field(repr=False)


@dataclass(frozen=True, slots=True)
class CropSoil:
    """What soil work asks of a crop: how hungry it is, when it is fed again, where it is eaten.

    `disputed` says what another source holds of its hunger; empty where none does, as
    `side_dressing` is where nothing is printed.
    """

    feeding: Feeding
    feeding_source: Source
    disputed: str
    side_dressing: str
    eaten_part: EatenPart
    eaten_source: Source


@dataclass(frozen=True, slots=True)
class SoilWish:
    """All that soil work is counted with.

    `mix` is the grower's or the almanac's; a bed too shallow for it gets the `rich_mix`.
    `figures` are the almanac's, and the grower's where stated: lengths in millimetres, volumes in
    litres, weights in kilograms, densities in kilograms a litre. `crops` by the plan's names.
    """

    mix: SoilMix
    rich_mix: SoilMix
    other_mixes: tuple[SoilMix, ...]
    bag: Parcel
    bulk: Parcel
    figures: Mapping[str, Figure]
    manure: tuple[Manure, ...]
    crops: Mapping[str, CropSoil]

    def middle(self, figure: str) -> float:
        """A figure's planning value."""
        return self.figures[figure].middle
