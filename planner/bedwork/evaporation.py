"""What evaporates and what rains on a day, as far as it is known (§48)."""

from calendar import monthrange
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import Enum

from planner.climate import (
    Climate,
    KnownTemperatures,
    UnknownTemperatures,
    reference_evapotranspiration_mm,
)
from planner.garden import DailyWeather, Garden, MonthlyDepth, NotTold
from planner.terms import Source


class Known(Enum):
    """How evaporation is known."""

    OWN = "the plan's own monthly figures"
    TEMPERATURES = "worked out from temperatures"
    RULE = "not known; the plain rule of so much a week"


@dataclass(frozen=True, slots=True)
class Evaporation:
    """Reference evapotranspiration by day, millimetres, and how it is known.

    By the plain rule it is what the rule gives a day, whatever grows; days outside the warm
    months then have none, because the rule says nothing of them.
    """

    known: Known
    source: Source
    by_day: dict[date, float]


def evaporation_of(garden: Garden, climate: Climate, days: tuple[date, date]) -> Evaporation:
    """What evaporates on each day, from the best that is known."""
    water = garden.water
    dates = [date.fromordinal(n) for n in range(days[0].toordinal(), days[1].toordinal() + 1)]
    if isinstance(water.evaporation, MonthlyDepth):
        by_day = {day: in_month(water.evaporation, day) for day in dates}
        return Evaporation(Known.OWN, water.evaporation.source, by_day)
    temperatures = climate.temperatures(days)
    if isinstance(temperatures, UnknownTemperatures):
        each = water.rule_mm.middle / 7
        warm = dict.fromkeys(_warm_days(climate, dates), each)
        return Evaporation(Known.RULE, water.rule_mm.source, warm)
    return _by_temperatures(garden, temperatures, dates)


def _by_temperatures(
    garden: Garden, temperatures: KnownTemperatures, dates: Iterable[date]
) -> Evaporation:
    latitude = garden.site.latitude_deg
    average = temperatures.average
    by_day = {day: reference_evapotranspiration_mm(average, latitude, day) for day in dates}
    return Evaporation(Known.TEMPERATURES, temperatures.source, by_day)


def _warm_days(climate: Climate, dates: list[date]) -> Iterator[date]:
    """The days between the half-of-years freezes; every day where there are none such."""
    years = climate.freeze_years(dates[0], dates[-1])
    for day in dates:
        if not years or any(one.spring_half < day < one.fall_half for one in years):
            yield day


def rain_of(garden: Garden) -> MonthlyDepth | NotTold:
    """The plan's own monthly rain, or that of its daily record, or none."""
    weather = garden.site.weather
    if isinstance(garden.water.rain, NotTold) and isinstance(weather, DailyWeather):
        return weather.rain
    return garden.water.rain


def in_month(depth: MonthlyDepth, day: date) -> float:
    """A day's part of what its month has in all."""
    return depth.mm[day.month - 1] / monthrange(day.year, day.month)[1]
