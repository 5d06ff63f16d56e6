"""Weather stations as they are told: where they lie, how high, and when it freezes there."""

import re

from planner.almanac import NearStation, Station
from planner.garden import FreezeDates, NeverFreezes

_M_PER_FT = 0.3048  # exactly: the international foot, NIST SP 811
_KM_PER_MILE = 1.609344  # exactly: 5,280 such feet


def station_of(found: Station | NearStation) -> Station:
    """The station itself."""
    return found.station if isinstance(found, NearStation) else found


def place_words(found: Station | NearStation) -> str:
    """How far away it is, where that is known, and how high it lies."""
    height_m = station_of(found).elevation_m
    height = f"{height_m:.0f} m ({height_m / _M_PER_FT:.0f} ft) high"
    if isinstance(found, Station):
        return height
    km = found.distance_km
    return f"{km:.0f} km ({km / _KM_PER_MILE:.0f} mi) away, {height}"


def no_dates_words(one: Station) -> str:
    """What is told of a station that has no freeze dates; empty for one that has."""
    if isinstance(one.freezes, FreezeDates):
        return ""
    never = isinstance(one.freezes, NeverFreezes)
    return "it never freezes" if never else "any night of the year may freeze"


def has_no_letter(words: str) -> bool:
    """Whether no name can be meant: a latitude and longitude, a postcode, or signs alone."""
    return not any(sign.isalpha() for sign in words)


def read_place(words: str) -> tuple[float, float] | None:
    """Read a latitude and a longitude in degrees: "34.7 -82.8", "34.7, -82.8".

    None for other words, and for two numbers that are no place on Earth.
    """
    numbers = re.fullmatch(r"\s*([-+]?\d+(?:\.\d+)?)[\s,;]+([-+]?\d+(?:\.\d+)?)\s*", words)
    if numbers is None:
        return None
    latitude, longitude = float(numbers[1]), float(numbers[2])
    return (latitude, longitude) if abs(latitude) <= 90 and abs(longitude) <= 180 else None
