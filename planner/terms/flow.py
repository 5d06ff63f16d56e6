"""Flow of water: as stamped on an emitter, or as measured with a jug and a watch."""

import re
from dataclasses import dataclass

from planner.terms.unit import OTHER_SPELLINGS, UNITS, Dimension

_NUMBER = r"(\d+(?:\.\d*)?|\.\d+)"
_RATE = re.compile(rf"\s*{_NUMBER}\s*([A-Za-z]+)\s*(?:/|\bper\b|\ban?\b)\s*([A-Za-z]+)\s*")
_MEASURED = re.compile(rf"\s*{_NUMBER}\s*([A-Za-z]+)\s+in\s+{_NUMBER}\s*([A-Za-z]+)\s*")
_SHORT = re.compile(rf"\s*{_NUMBER}\s*(gph|gpm|lph|lpm)\s*", re.IGNORECASE)
_HOURS = {"h": 1.0, "hour": 1.0, "min": 1 / 60, "minute": 1 / 60, "s": 1 / 3600, "second": 1 / 3600}
_SHORT_FORMS = {"gph": ("gal", "h"), "gpm": ("gal", "min"), "lph": ("L", "h"), "lpm": ("L", "min")}


@dataclass(frozen=True, slots=True)
class Flow:
    """So many litres an hour; `measured` when it was caught in so much time."""

    l_per_h: float
    measured: bool


def read_flow(text: str) -> Flow | None:
    """Read "0.5 gal/h", "2 L an hour", "1 gpm" or "3 gal in 15 min"; None for anything else."""
    short = _SHORT.fullmatch(text)
    if short is not None:
        volume, time = _SHORT_FORMS[short[2].casefold()]
        return _flow(float(short[1]), volume, 1.0, time, measured=False)
    rate = _RATE.fullmatch(text)
    if rate is not None:
        return _flow(float(rate[1]), rate[2], 1.0, rate[3], measured=False)
    caught = _MEASURED.fullmatch(text)
    if caught is not None:
        return _flow(float(caught[1]), caught[2], float(caught[3]), caught[4], measured=True)
    return None


def _flow(amount: float, volume: str, time: float, of_time: str, *, measured: bool) -> Flow | None:
    unit = UNITS.get(OTHER_SPELLINGS.get(volume, volume))
    hours = _HOURS.get(of_time) or _HOURS.get(of_time.removesuffix("s"))
    if unit is None or unit.dimension is not Dimension.VOLUME or hours is None or time <= 0:
        return None
    return Flow(amount * unit.factor / (time * hours), measured)
