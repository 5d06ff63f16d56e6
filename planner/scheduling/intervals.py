"""Fixed intervals: how often growers' literature says to sow a crop again.

The planner itself uses none of them (rules §12); the rule of thumb does, to be compared with.
"""

from dataclasses import dataclass

from planner.garden import Crop, Cut, Once, Pick, Store


@dataclass(frozen=True, slots=True)
class Interval:
    """Days from one sowing of a crop to its next, and who says so."""

    days: int
    source: str


_GROWERS = "P. Dawling, grower and author, article on successions"
_PUBLISHED = {
    "radish": Interval(8, "7 to 10 days: Iowa State University Extension, planting times"),
    "bush bean": Interval(17, "2 to 3 weeks: UF/IFAS Extension Hillsborough 2025"),
    "sweet corn": Interval(14, f"2 weeks: {_GROWERS}"),
    "cucumber": Interval(21, f"3 weeks: {_GROWERS}"),
    "summer squash": Interval(21, f"3 weeks: {_GROWERS}"),
    "carrot": Interval(28, f"4 weeks: {_GROWERS}"),
    "melon": Interval(28, f"4 weeks: {_GROWERS}"),
}
_MOST_CROPS = Interval(14, "2 weeks for most crops: Barrow Journal column 2018")


def interval_of(crop: Crop) -> Interval:
    """The published interval; for a crop harvested for longer, the time it is harvested for."""
    published = _PUBLISHED.get(crop.name, _MOST_CROPS)
    lasts = int(harvest_days(crop))
    if isinstance(crop.habit, Once) or lasts <= published.days:
        return published
    return Interval(lasts, "a new sowing when the one before has given all it gives")


def harvest_days(crop: Crop) -> float:
    """How long one sowing is harvested, or eaten from the store, by its published days."""
    match crop.habit:
        case Once(hold_days=hold):
            return hold.middle
        case Cut(cuts=cuts, regrow_days=regrow):
            return int(cuts.middle) * regrow.middle
        case Pick(picking_days=picking):
            return picking.middle
        case Store(store_days=store):
            return store.middle
