"""The sun at the top of the air, and the daylight hours that go with it (FAO-56, chapter 3).

For reference evapotranspiration. Pure geometry of the earth's way around the sun: no clouds, no
refraction, the sun a point. Angles in radians, south negative; days of the year count from 1.

The ten-hour rule (rules §10) must not use `daylight_hours_h`: equation 34 ends the day when the
middle of the sun meets the flat horizon, and runs 6 to 30 minutes short of sunrise to sunset.
That rule takes `day_length_h`, which counts from the sun's upper edge, with refraction.

Source: FAO56, equations 21 to 25 and 34.
"""

import math

SOLAR_CONSTANT_MJ_M2_MIN = 0.0820
# Millimetres of water that one MJ on a square metre evaporates (FAO56, equation 20).
MM_FOR_EACH_MJ_M2 = 0.408
_MINUTES_OF_A_DAY = 24 * 60
_YEAR_DAYS = 365


def inverse_relative_distance(day_of_year: int) -> float:
    """How much nearer the sun stands than on average, squared; no unit (equation 23).

    Example 8: on 3 September, day 246, it is 0.985.
    """
    return 1 + 0.033 * math.cos(2 * math.pi * day_of_year / _YEAR_DAYS)


def solar_declination_rad(day_of_year: int) -> float:
    """How far north of the equator the sun stands overhead, radians (equation 24).

    Example 8: on 3 September, day 246, it is 0.120 rad.
    """
    return 0.409 * math.sin(2 * math.pi * day_of_year / _YEAR_DAYS - 1.39)


def sunset_hour_angle_rad(latitude_rad: float, declination_rad: float) -> float:
    """The angle the earth turns from noon to sunset, radians (equation 25).

    0 where the sun does not rise and pi where it does not set.
    Example 8: at 20 degrees south (-0.35 rad) on 3 September it is 1.527 rad.
    """
    cosine = -math.tan(latitude_rad) * math.tan(declination_rad)
    return math.acos(max(-1.0, min(1.0, cosine)))


def extraterrestrial_radiation_mj_m2(latitude_deg: float, day_of_year: int) -> float:
    """What the sun sends to a level square metre above the air, Ra, MJ a day (equation 21).

    Example 8: at 20 degrees south on 3 September, day 246, it is 32.2 MJ on a square metre.
    """
    latitude = math.radians(latitude_deg)
    declination = solar_declination_rad(day_of_year)
    sunset = sunset_hour_angle_rad(latitude, declination)
    height = sunset * math.sin(latitude) * math.sin(declination)
    swing = math.cos(latitude) * math.cos(declination) * math.sin(sunset)
    strength = SOLAR_CONSTANT_MJ_M2_MIN * inverse_relative_distance(day_of_year)
    return _MINUTES_OF_A_DAY / math.pi * strength * (height + swing)


def extraterrestrial_radiation_mm(latitude_deg: float, day_of_year: int) -> float:
    """The same as millimetres of water it could evaporate in the day (equations 20 and 21).

    Example 8: at 20 degrees south on 3 September, day 246, it is 13.1 mm.
    """
    return MM_FOR_EACH_MJ_M2 * extraterrestrial_radiation_mj_m2(latitude_deg, day_of_year)


def daylight_hours_h(latitude_deg: float, day_of_year: int) -> float:
    """Daylight hours N for evapotranspiration, never for the ten-hour rule (equation 34).

    Example 9: at 20 degrees south on 3 September, day 246, they are 11.7 h.
    """
    declination = solar_declination_rad(day_of_year)
    return 24 / math.pi * sunset_hour_angle_rad(math.radians(latitude_deg), declination)
