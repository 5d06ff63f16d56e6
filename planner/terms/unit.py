"""Units a grower may write, and what each is in SI.

Source of the factors: NIST Special Publication 811 (2008), appendix B.8, exact values for
foot, inch and avoirdupois pound; US gallon 3.785411784 L. A cubic foot is the cube of a foot.
"""

from dataclasses import dataclass
from enum import Enum


class Dimension(Enum):
    """What a unit measures."""

    LENGTH = "a length"
    VOLUME = "a volume"
    MASS = "a weight"
    COUNT = "a count"
    PLANTS = "a number of plants"
    TEMPERATURE = "a temperature"
    TIME = "a number of days or weeks"
    DAYLIGHT = "a number of hours of day"


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: `si = value * factor + offset`.

    SI here is metres, litres, kilograms, degrees C, days, and hours for the length of day; counts
    stay counts.
    """

    name: str
    dimension: Dimension
    factor: float
    offset: float = 0.0

    @property
    def is_imperial(self) -> bool:
        """Whether it is one of feet and inches, so that what goes with it is told in pounds too."""
        return self.name in _IMPERIAL_LENGTHS


_IMPERIAL_LENGTHS = {"in", "ft"}
_FAHRENHEIT = 5 / 9

UNITS: dict[str, Unit] = {
    unit.name: unit
    for unit in (
        Unit("in", Dimension.LENGTH, 0.0254),
        Unit("ft", Dimension.LENGTH, 0.3048),
        Unit("mm", Dimension.LENGTH, 0.001),
        Unit("cm", Dimension.LENGTH, 0.01),
        Unit("m", Dimension.LENGTH, 1.0),
        Unit("gal", Dimension.VOLUME, 3.785411784),
        Unit("L", Dimension.VOLUME, 1.0),
        Unit("m3", Dimension.VOLUME, 1000.0),
        Unit("cu ft", Dimension.VOLUME, 28.316846592),
        Unit("cu yd", Dimension.VOLUME, 764.554857984),
        Unit("oz", Dimension.MASS, 0.45359237 / 16),
        Unit("lb", Dimension.MASS, 0.45359237),
        Unit("g", Dimension.MASS, 0.001),
        Unit("kg", Dimension.MASS, 1.0),
        Unit("roots", Dimension.COUNT, 1.0),
        Unit("heads", Dimension.COUNT, 1.0),
        Unit("bunches", Dimension.COUNT, 1.0),
        Unit("each", Dimension.COUNT, 1.0),
        Unit("cuts", Dimension.COUNT, 1.0),
        Unit("plants", Dimension.PLANTS, 1.0),
        Unit("degF", Dimension.TEMPERATURE, _FAHRENHEIT, -32 * _FAHRENHEIT),
        Unit("degC", Dimension.TEMPERATURE, 1.0),
        Unit("days", Dimension.TIME, 1.0),
        Unit("weeks", Dimension.TIME, 7.0),
        Unit("h", Dimension.DAYLIGHT, 1.0),
    )
}

MASS_UNITS: tuple[str, ...] = tuple(
    name for name, unit in UNITS.items() if unit.dimension is Dimension.MASS
)

# The word for one of what is counted in pieces or times.
ONE_OF: dict[str, str] = {
    "roots": "root",
    "heads": "head",
    "bunches": "bunch",
    "cuts": "cut",
    "plants": "plant",
    "days": "day",
    "weeks": "week",
}

# Other words for a unit, and the name it goes by here.
OTHER_SPELLINGS: dict[str, str] = {
    **{one: many for many, one in ONE_OF.items()},
    "d": "days",
    "l": "L",
    "liter": "L",
    "liters": "L",
    "litre": "L",
    "litres": "L",
    "gallon": "gal",
    "gallons": "gal",
    "hour": "h",
    "hours": "h",
    "inch": "in",
    "inches": "in",
    "foot": "ft",
    "feet": "ft",
}
