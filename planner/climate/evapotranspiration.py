"""Reference evapotranspiration: what a well-watered lawn takes in a day, from lows and highs.

By Hargreaves, for places of which neither sun, wind nor damp is known; FAO-56 trusts it over weeks
rather than single days. Source: FAO56, equation 52.
"""

import math
from datetime import date

from planner.climate.radiation import extraterrestrial_radiation_mm
from planner.climate.temperatures import SeasonTemperatures

_SLOPE = 0.0023
_ADDED_DEGC = 17.8


def hargreaves_mm(low_degc: float, high_degc: float, radiation_mm: float) -> float:
    """Millimetres a day, from a day's low and high and the sun above the air (equation 52).

    `radiation_mm` is Ra as water it could evaporate. Never below nothing, in hard cold.
    Example 20: at 45.72 degrees north on 15 July, 14.8 and 26.6 degC, it is 5.0 mm.
    """
    mean = (low_degc + high_degc) / 2
    swing = math.sqrt(max(0.0, high_degc - low_degc))
    return max(0.0, _SLOPE * (mean + _ADDED_DEGC) * swing * radiation_mm)


def reference_evapotranspiration_mm(
    temperatures: SeasonTemperatures, latitude_deg: float, day: date
) -> float:
    """Millimetres of one day, as a year's temperatures have it."""
    place = (day - temperatures.first).days
    radiation = extraterrestrial_radiation_mm(latitude_deg, day.timetuple().tm_yday)
    low, high = temperatures.low_degc[place], temperatures.high_degc[place]
    return hargreaves_mm(low, high, radiation)
