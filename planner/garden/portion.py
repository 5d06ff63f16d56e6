"""Portions: what one person eats of a crop, as published, and how kitchens group crops."""

from dataclasses import dataclass
from enum import Enum

from planner.garden.crop import Crop
from planner.terms import Figure


class AmountBasis(Enum):
    """What a published amount is for."""

    SEASON = "a person and season"
    SHARE = "a household's weekly share"
    PLOT = "planted for a person"


@dataclass(frozen=True, slots=True)
class PublishedAmount:
    """An amount as somebody publishes it, in their unit; sources differ by a factor of three."""

    basis: AmountBasis
    figure: Figure
    note: str


@dataclass(frozen=True, slots=True)
class Portion:
    """A crop and what one person eats of it in a week, in the portion's own unit.

    `group` is the kind of food it is in the kitchen, empty where nobody says.
    """

    crop: Crop
    each_week: Figure
    group: str
    published: tuple[PublishedAmount, ...]

    @property
    def seen(self) -> bool:
        """Whether somebody published it, or the grower states it."""
        return self.each_week.source.key != "memory"
