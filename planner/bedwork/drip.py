"""Drip lines: how long they run, the depth they give (§48), and on which days (§50)."""

import math
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Bed, NoDrip, WaterWish

_A_MOMENT = 1e-9  # a run that is as long as the longest is not parted


@dataclass(frozen=True, slots=True)
class Runs:
    """So many runs a week of so many minutes, each in `parts` with a rest between."""

    times: int
    minutes: float
    parts: int


def runs_for(volume_l: float, l_per_h: float, wish: WaterWish) -> Runs:
    """The runs of a week that give a volume through a line of a flow."""
    times = int(wish.runs_each_week.middle)
    return in_parts(minutes_for(volume_l, l_per_h) / times, wish)


def in_parts(minutes: float, wish: WaterWish) -> Runs:
    """Runs of so many minutes, parted where they are longer than the grower wants."""
    parts = math.ceil(minutes / wish.longest_run_minutes.middle - _A_MOMENT)
    return Runs(int(wish.runs_each_week.middle), minutes, max(1, parts))


def minutes_for(volume_l: float, l_per_h: float) -> float:
    """How long a line runs to give a volume.

    32 emitters of 0.5 gallons an hour give 22.2 gallons, an inch on 32 square feet at an
    efficiency of 0.9, in 83 minutes (TRADE-S15).
    """
    return volume_l / l_per_h * 60


def depth_mm(bed: Bed, minutes: float, efficiency: float) -> float:
    """The depth of water that so many minutes of a bed's drip line give its roots."""
    if isinstance(bed.drip, NoDrip):
        return 0.0
    return bed.drip.flow.l_per_h * minutes / 60 * efficiency / bed.area_m2


def watering_days(times: int, first: date, last: date) -> tuple[date, ...]:
    """The days of a stretch on which water runs so many times a week, evenly apart.

    Three times a week are Monday, Wednesday and Friday.
    """
    weekdays = {7 * number // times for number in range(times)}
    days = ((last - first).days + 1) if last >= first else 0
    stretch = (first + timedelta(days=number) for number in range(days))
    return tuple(day for day in stretch if day.weekday() in weekdays)
