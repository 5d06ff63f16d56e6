"""Frost kill: the night that ends a crop standing in open ground (rules §38)."""

from datetime import date, timedelta

from planner.climate import SeasonTemperatures
from planner.garden import Crop, FrostTolerance

# Extension classes of freezes: light 29 to 32 degF, moderate 25 to 28, severe 24 and below; which
# class kills which crop, and the classes themselves, are from memory. Lows are compared in tenths
# of a degree C, as in the freeze tables.
_DEADLY_DEGC = {
    FrostTolerance.NONE: 0.0,  # 32 degF
    FrostTolerance.LIGHT_FROST: -2.2,  # 28 degF
    FrostTolerance.SEVERAL_FREEZES: -4.4,  # 24 degF
}
NEVER = date.max


def deadly_degc(crop: Crop) -> float:
    """The low, degrees C, that kills a crop; minus infinity where no freeze does."""
    if crop.frost.hardiness.killed_by_frost:
        return _DEADLY_DEGC[FrostTolerance.NONE]
    return _DEADLY_DEGC.get(crop.frost.tolerance, float("-inf"))


def killed_on(crop: Crop, year: SeasonTemperatures, stands: tuple[date, date]) -> date:
    """The first day whose low kills a crop that stands from one day to another; NEVER if none."""
    deadly = deadly_degc(crop)
    begin = max(0, (stands[0] - year.first).days)
    end = min(len(year.low_degc), (stands[1] - year.first).days + 1)
    for index in range(begin, end):
        if round(year.low_degc[index], 1) <= deadly:
            return year.first + timedelta(days=index)
    return NEVER
