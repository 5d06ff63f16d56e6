"""Crop coefficients: how thirsty a crop is on a day, against reference evapotranspiration.

Single coefficients of FAO-56, not adjusted to wind and damp. The published stages are scaled to the
time the sowing has in its ground (§49). Source: FAO56, chapter 6, equation 66.
"""

import math
from itertools import accumulate

from planner.garden import CropWater


def crop_coefficient(water: CropWater, day: float) -> float:
    """The coefficient on a day counted from the start, on the days the stages have as published.

    Level through the initial and middle stages, a straight line through the two others.
    """
    initial, development, mid, late = accumulate(water.stages)
    if day <= initial:
        return water.initial
    if day < development:
        return _between(water.initial, water.mid, (day - initial) / (development - initial))
    if day <= mid:
        return water.mid
    return _between(water.mid, water.end, min(1.0, (day - mid) / (late - mid)))


def coefficient_at(water: CropWater, share: float) -> float:
    """The coefficient when a share of a sowing's time in the ground has gone."""
    return crop_coefficient(water, share * math.fsum(water.stages))


def _between(first: float, last: float, share: float) -> float:
    return first + (last - first) * share
