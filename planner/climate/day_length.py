"""Length of day at a latitude.

Source: W.C. Forsythe and others, "A model comparison for daylength as a function of latitude
and day of year", Ecological Modelling 80 (1995), the CBM model, with the sun's upper limb and
refraction (p = 0.8333 degrees). From memory; tests hold it against published values and an
astronomy library. Within 7 minutes below 56 degrees of latitude.
"""

import math
from datetime import date
from functools import lru_cache

_SUNRISE_DEG = 0.8333


@lru_cache(maxsize=4096)
def day_length_h(latitude_deg: float, day: date) -> float:
    """Hours from sunrise to sunset on `day` (0 in polar night, 24 in polar day)."""
    day_of_year = day.timetuple().tm_yday
    return day_length_of_year_day_h(latitude_deg, day_of_year)


def day_length_of_year_day_h(latitude_deg: float, day_of_year: int) -> float:
    """Hours of daylight on a day of the year counted from 1."""
    revolution = 0.2163108 + 2 * math.atan(0.9671396 * math.tan(0.00860 * (day_of_year - 186)))
    declination = math.asin(0.39795 * math.cos(revolution))
    latitude = math.radians(latitude_deg)
    cosine = (math.sin(math.radians(_SUNRISE_DEG)) + math.sin(latitude) * math.sin(declination)) / (
        math.cos(latitude) * math.cos(declination)
    )
    return 24 - 24 / math.pi * math.acos(max(-1.0, min(1.0, cosine)))


def longest_day(latitude_deg: float, year: int) -> date:
    """Midsummer: 21 June in the north, 21 December in the south."""
    return date(year, 6, 21) if latitude_deg >= 0 else date(year, 12, 21)


def shortest_day(latitude_deg: float, year: int) -> date:
    """Midwinter: 21 December in the north, 21 June in the south."""
    return date(year, 12, 21) if latitude_deg >= 0 else date(year, 6, 21)
