"""Frost kill: the nights that end a crop standing in open ground (rules §38)."""

from bisect import bisect_left
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


def deadly_days(crop: Crop, year: SeasonTemperatures) -> tuple[date, ...]:
    """The days of a year whose low kills a crop in open ground, in order."""
    deadly = deadly_degc(crop)
    return tuple(
        year.first + timedelta(days=index)
        for index, low in enumerate(year.low_degc)
        if round(low, 1) <= deadly
    )


def killed_on(deadly: tuple[date, ...], stands: tuple[date, date]) -> date:
    """The first of some deadly days on which a crop stands; NEVER if none.

    `stands`: its first and its last day in open ground.
    """
    index = bisect_left(deadly, stands[0])
    return deadly[index] if index < len(deadly) and deadly[index] <= stands[1] else NEVER
