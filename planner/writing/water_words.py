"""Depths, volumes and minutes of water in the grower's system."""

from planner.terms import UNITS, Unit


def depth_words(depth_mm: float, unit: Unit) -> str:
    """A depth of water like "0.9 in" or "23 mm", in the system of a bed's unit."""
    if unit.is_imperial:
        return f"{depth_mm / 25.4:.1f} in"
    return f"{depth_mm:.0f} mm"


def water_words(volume_l: float, unit: Unit) -> str:
    """A volume of water like "22 gal", "1.5 gal" or "84 L", in the system of a bed's unit."""
    name = volume_unit(unit)
    amount = volume_l / UNITS[name].factor
    return f"{amount:.0f} {name}" if amount >= 10 else f"{float(f'{amount:.1f}'):g} {name}"


def volume_unit(unit: Unit) -> str:
    """The unit water is told in, in the system of a bed's unit."""
    return "gal" if unit.is_imperial else "L"


def finger_words(unit: Unit) -> str:
    """How deep to feel the soil before watering (TRADE-S16)."""
    return "two to four inches" if unit.is_imperial else "5 to 10 cm"


def flow_words(l_per_h: float, unit: Unit) -> str:
    """A flow like "16 gal/h" or "60 L/h"."""
    return f"{water_words(l_per_h, unit)}/h"


def run_words(minutes: float, parts: int = 1) -> str:
    """A run like "28 min", or "2 x 40 min" with a rest between; never less than a minute."""
    each = max(1, round(minutes / parts))
    return f"{each} min" if parts == 1 else f"{parts} x {each} min"
