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
_STANDS_SHORT = "2 weeks for most crops, but no longer than it stands ready; at least a week"
_GIVES_LONG = "a new sowing when the one before has given all it gives"
# From here on a crop that is taken once, or cut again, is sown anew only when it has to be.
_STANDS_LONG_DAYS = 28
_CUT_ABOUT_WEEKLY_DAYS = 10


def interval_of(crop: Crop) -> Interval:
    """The crop's published interval, or the one for most crops.

    A crop that gives for long (it is picked, is cut about every week, stands for four weeks, or
    keeps in the store) is sown again when it no longer does.
    """
    if crop.name in _PUBLISHED:
        return _PUBLISHED[crop.name]
    lasts = int(harvest_days(crop))
    match crop.habit:
        case Once() if lasts < _MOST_CROPS.days:
            return Interval(max(7, lasts), _STANDS_SHORT)
        case Once() if lasts < _STANDS_LONG_DAYS:
            return _MOST_CROPS
        case Cut(regrow_days=regrow) if regrow.middle > _CUT_ABOUT_WEEKLY_DAYS:
            return _MOST_CROPS
    return Interval(max(_MOST_CROPS.days, lasts), _GIVES_LONG)


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
