"""Made-up daily records and the gardens they belong to."""

import math
from collections.abc import Callable
from datetime import date, timedelta

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from tests.reference.schemas import plan_faults

Degc = Callable[[date], float]
SWING_DEGC = 5.5
FIRST_YEAR, LAST_YEAR = 1991, 2020
_DAYS = [
    date(FIRST_YEAR, 1, 1) + timedelta(days=number)
    for number in range((date(LAST_YEAR, 12, 31) - date(FIRST_YEAR, 1, 1)).days + 1)
]


def constant(degc: float) -> Degc:
    """The same mean on every day."""
    return lambda _: degc


def wave(mean_degc: float, swing_degc: float) -> Degc:
    """The same year each year, warmest in the middle of July."""

    def degc(day: date) -> float:
        same = date(2023, day.month, min(day.day, 28) if day.month == 2 else day.day)
        days = (same - date(2023, 7, 15)).days
        return mean_degc + swing_degc * math.cos(math.tau * days / 365)

    return degc


def recorded_lines(degc: Degc) -> list[str]:
    """Thirty years as lines of weather.csv, 11 degC from low to high."""
    lines = [f"{day},{degc(day) - SWING_DEGC:.3f},{degc(day) + SWING_DEGC:.3f}" for day in _DAYS]
    return ["date,low_degc,high_degc", *lines]


def recorded_garden(plan: str, degc: Degc, crops: str = "") -> Garden:
    """The garden of a plan with thirty years in weather.csv."""
    weather = PlanFile("weather.csv", "\n".join(recorded_lines(degc)).encode())
    own = PlanFile("crops.toml", crops.encode()) if crops else None
    read = read_garden(PlanFiles(PlanFile("garden.toml", plan.encode()), own, lambda _: weather))
    assert isinstance(read, Garden), "\n".join(map(str, read))
    assert plan_faults(plan, crops) == []
    return read


def plan_of(*wants: tuple[str, str, str, str], length: str = "16 ft") -> str:
    """A plan with one bed and these weekly wants: crop, amount, first and last day."""
    head = f"""
plan = 1
[site]
latitude = 40.0
weather = "weather.csv"
[season]
from = 2027-03-01
to = 2027-11-30
garden_days = ["Wed", "Sat"]
[[bed]]
name = "Long bed"
length = "{length}"
width = "4 ft"
soil_depth = "18 in"
sun = "full"
"""
    targets = [
        f'[[target]]\ncrop = "{crop}"\neach_week = "{amount}"\nfrom = {first}\nto = {last}\n'
        for crop, amount, first, last in wants
    ]
    return head + "".join(targets)
