"""Emergence: the day a seed comes up, from the soil's temperature day by day.

A seed that needs n days at a temperature is 1/n of the way up after each day of it. Between the
temperatures of its table this rate runs straight from one to the next; days add up until they
make 1. Colder than the table's coldest or hotter than its hottest point a seed stands still.

    up on the first day d with   sum of rate(soil[i]) over start < i <= d   >= 1

Sources: the tables are UCSC-A4; adding up daily rates is common practice, and so is the straight
line between them (memory). How long a seed stands still before it is lost is from memory.
"""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

# From memory: seed in hot or cold wet soil rots or is eaten. Hot soil is the quicker.
LONGEST_WAIT_IN_HEAT_DAYS = 21
LONGEST_WAIT_IN_COLD_DAYS = 60
_UP = 1 - 1e-9


class WhyNotUp(StrEnum):
    """What kept a seed from coming up."""

    TOO_HOT = "the soil stays too hot for the seed to come up"
    TOO_COLD = "the soil stays too cold for the seed to come up"
    DAYS_RUN_OUT = "the temperatures end before the seed is up"


@dataclass(frozen=True, slots=True)
class NoEmergence:
    """A seed that does not come up, and why."""

    reason: WhyNotUp


def emergence_day(
    points: Sequence[tuple[float, float]], soil_degc_by_day: Sequence[float], start_index: int
) -> int | NoEmergence:
    """The index of the day on which seed sown on `start_index` is up.

    `points` are (degrees C, days to emerge), coldest first; a point of infinitely many days says
    that nothing comes up at that temperature. The day of sowing itself does not count, so at a
    constant temperature of n days the seed is up n days after sowing.
    """
    coldest, hottest = points[0][0], points[-1][0]
    done = 0.0
    cold_days = hot_days = 0
    for index in range(start_index + 1, len(soil_degc_by_day)):
        soil_degc = soil_degc_by_day[index]
        if coldest <= soil_degc <= hottest:
            done += _rate_within(points, soil_degc)
        elif soil_degc > hottest:
            hot_days += 1
        else:
            cold_days += 1
        if done >= _UP:
            return index
        if hot_days > LONGEST_WAIT_IN_HEAT_DAYS:
            return NoEmergence(WhyNotUp.TOO_HOT)
        if cold_days > LONGEST_WAIT_IN_COLD_DAYS:
            return NoEmergence(WhyNotUp.TOO_COLD)
    return NoEmergence(WhyNotUp.DAYS_RUN_OUT)


def emergence_rate(points: Sequence[tuple[float, float]], soil_degc: float) -> float:
    """The share of its way up that a seed makes in one day; 0 outside its table."""
    if points[0][0] <= soil_degc <= points[-1][0]:
        return _rate_within(points, soil_degc)
    return 0.0


def _rate_within(points: Sequence[tuple[float, float]], soil_degc: float) -> float:
    above = bisect_right(points, soil_degc, key=lambda point: point[0])
    colder_degc, colder_days = points[above - 1]
    if above == len(points):
        return 1 / colder_days
    warmer_degc, warmer_days = points[above]
    share = (soil_degc - colder_degc) / (warmer_degc - colder_degc)
    return (1 - share) / colder_days + share / warmer_days
