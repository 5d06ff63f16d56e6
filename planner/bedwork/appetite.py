"""Appetite: how many people the targets feed, by what is published of portions (§52)."""

from collections.abc import Iterable
from dataclasses import dataclass
from statistics import fmean

from planner.garden import Crop, Garden, Portion, PublishedAmount
from planner.terms import UNITS, conversion


@dataclass(frozen=True, slots=True)
class Feeds:
    """How many people an amount feeds, fewest and most, by the range of a portion."""

    portion: Portion
    fewest: float
    most: float


@dataclass(frozen=True, slots=True)
class NobodySays:
    """A crop of which nobody says what a person eats, in a unit it is counted in."""


@dataclass(frozen=True, slots=True)
class CropAppetite:
    """A wanted crop: the mean amount a week over the weeks it is wanted, and whom that feeds."""

    crop: Crop
    each_week: float
    weeks: int
    feeds: Feeds | NobodySays
    published: tuple[PublishedAmount, ...]


def appetites_of(garden: Garden, portions: Iterable[Portion]) -> tuple[CropAppetite, ...]:
    """Each wanted crop beside what a person eats of it, in the order of the plan."""
    known = {one.crop.name: one for one in portions}
    wants = garden.wants()
    found = []
    for name, crop in garden.crops.items():
        each_week, portion = fmean(wants[name].values()), known.get(name)
        published = portion.published if portion else ()
        feeds = _feeds(crop, each_week, portion) if portion else NobodySays()
        found.append(CropAppetite(crop, each_week, len(wants[name]), feeds, published))
    return tuple(found)


def _feeds(crop: Crop, each_week: float, portion: Portion) -> Feeds | NobodySays:
    eaten = portion.each_week
    factor = conversion(UNITS[eaten.unit], crop.unit)
    if factor is None:
        return NobodySays()
    return Feeds(portion, each_week / (eaten.high * factor), each_week / (eaten.low * factor))
