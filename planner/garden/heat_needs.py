"""Heat needs: what temperatures a crop grows, comes up, spoils and bolts at."""

from dataclasses import dataclass

from planner.terms import Figure, Source


@dataclass(frozen=True, slots=True)
class Emergence:
    """Days to emerge by soil temperature: (degrees C, days), coldest first."""

    points: tuple[tuple[float, float], ...]
    source: Source


@dataclass(frozen=True, slots=True)
class HeatNeeds:
    """Temperatures of a crop, degrees C.

    Growth begins at `base` and gains nothing above `upper`; days to maturity are meant for
    `best`. Days with a mean above `harvest_below` spoil it. Seed comes up in soil between
    `germinates_from` and `germinates_to`.
    """

    base: Figure
    best: Figure
    upper: Figure
    harvest_below: Figure
    germinates_from: Figure
    germinates_to: Figure
    bolts_above_h: "Figure | NeverBolts"
    emergence: "Emergence | NoEmergenceTable"


@dataclass(frozen=True, slots=True)
class NeverBolts:
    """A crop whose flowering does not depend on the length of day, as far as is published."""


@dataclass(frozen=True, slots=True)
class NoEmergenceTable:
    """A crop without a published table of emergence by soil temperature."""


@dataclass(frozen=True, slots=True)
class NoHeatNeeds:
    """A crop of which these temperatures are not known; it grows by the calendar."""

    missing: tuple[str, ...]
