"""Heat, cold and long days close parts of the year to sowing or to harvest (rules §22, §23).

Where no temperatures are known nothing is closed, and the plan says that heat is not counted.
"""

import math
from dataclasses import dataclass, field
from datetime import date, timedelta
from statistics import fmean

from planner.climate import Climate, KnownTemperatures, SeasonTemperatures
from planner.garden import Crop, HeatNeeds, NeverBolts, NoEmergenceTable, Pick, StartFrom, Store
from planner.growth.emergence import NoEmergence, WhyNotUp, emergence_day

# The limits of air are published for monthly means: each day is judged by the month about it.
_SMOOTHING_DAYS = 15
# Heat keeps fruit from setting; what has set ripens on. About a month lies between; from memory.
_FRUIT_SET_DAYS = 30
_SPOILS = "on average days are warmer than {degrees}, and it spoils"
_SETS_NO_FRUIT = "average days a month before are warmer than {degrees}, and fruit does not set"


@dataclass(frozen=True, slots=True)
class Limits:
    """For each day from `first` on, why a crop is not sown or not harvested; "" where it is."""

    first: date
    sowing: tuple[str, ...] = field(default=())
    harvest: tuple[str, ...] = field(default=())
    emergence: tuple[date | None, ...] = field(default=())
    emergence_words: str = ""

    def emerges_on(self, day: date) -> date | None:
        """The day seed sown on `day` comes up by the soil's warmth; None where it is not known."""
        index = (day - self.first).days
        return self.emergence[index] if 0 <= index < len(self.emergence) else None

    def why_not_sown(self, day: date) -> str:
        """Why seed is not sown in open ground on a day; empty where it is."""
        return self._on(day, self.sowing)

    def why_not_harvested(self, day: date) -> str:
        """Why there is no harvest worth having on a day; empty where there is."""
        return self._on(day, self.harvest)

    def harvest_closes(self, day: date) -> tuple[date, str] | None:
        """The last day of harvest from `day` on, and what ends it; None when nothing does."""
        index = (day - self.first).days
        for later in range(max(0, index), len(self.harvest)):
            if self.harvest[later]:
                return self.first + timedelta(days=later - 1), self.harvest[later]
        return None

    def _on(self, day: date, reasons: tuple[str, ...]) -> str:
        index = (day - self.first).days
        return reasons[index] if 0 <= index < len(reasons) else ""


def limits_of(crop: Crop, climate: Climate, known: KnownTemperatures | None) -> Limits:
    """The limits of a crop over the days whose temperatures are known.

    Fruit is closed a month after the heat that keeps it from setting; what is lifted into a store
    does not spoil in the ground by heat.
    """
    if known is None or not isinstance(crop.heat, HeatNeeds):
        return Limits(date.min)
    average = known.average
    soil = average.soil_degc()
    sown_in_place = crop.start_from is StartFrom.SEED
    rising = _emergence(crop.heat, soil) if sown_in_place else ()
    table = crop.heat.emergence
    source = "" if isinstance(table, NoEmergenceTable) else f"{table.source}, "
    return Limits(
        first=average.first,
        emergence_words=f"by the warmth of the soil, estimated from the air ({source}§24)",
        sowing=tuple(
            _why_not_sown(crop.heat, degc, rising[index]) if sown_in_place else ""
            for index, degc in enumerate(soil)
        ),
        emergence=tuple(
            average.first + timedelta(days=up) if isinstance(up, int) else None for up in rising
        ),
        harvest=_harvest_reasons(crop, crop.heat, climate, average),
    )


def harvest_limits(crop: Crop, climate: Climate, year: SeasonTemperatures) -> Limits:
    """The limits one year's temperatures set to harvest; sowing is left open."""
    if not isinstance(crop.heat, HeatNeeds):
        return Limits(date.min)
    return Limits(year.first, harvest=_harvest_reasons(crop, crop.heat, climate, year))


def comes_up_on(crop: Crop, soil_degc: tuple[float, ...], first: date, sow_on: date) -> date | None:
    """The day one seed comes up in soil as warm as this from `first` on; None if not known."""
    heat, index = crop.heat, (sow_on - first).days
    if not isinstance(heat, HeatNeeds) or crop.start_from is not StartFrom.SEED or index < 0:
        return None
    if isinstance(heat.emergence, NoEmergenceTable):
        return None
    up = emergence_day(_points(heat, heat.emergence.points), soil_degc, index)
    return first + timedelta(days=up) if isinstance(up, int) else None


def _harvest_reasons(
    crop: Crop, needs: HeatNeeds, climate: Climate, year: SeasonTemperatures
) -> tuple[str, ...]:
    if isinstance(crop.habit, Store):
        return ()
    air = [(low + high) / 2 for low, high in zip(year.low_degc, year.high_degc, strict=True)]
    smooth = _smoothed(air)
    spoiling = _SPOILS
    if isinstance(crop.habit, Pick):
        spoiling = _SETS_NO_FRUIT
        smooth = [*smooth[:1] * _FRUIT_SET_DAYS, *smooth][: len(smooth)]
    return tuple(
        _why_not_harvested(
            needs, degc, climate.day_length_h(year.first + timedelta(days=index)), spoiling
        )
        for index, degc in enumerate(smooth)
    )


def _smoothed(values: list[float]) -> list[float]:
    """The mean of each day and those about it, as far as there are any."""
    return [
        fmean(values[max(0, index - _SMOOTHING_DAYS) : index + _SMOOTHING_DAYS + 1])
        for index in range(len(values))
    ]


def _emergence(needs: HeatNeeds, soil: tuple[float, ...]) -> tuple[int | NoEmergence, ...]:
    """For each day, the day index by which seed sown then is up, or why it does not come up."""
    if isinstance(needs.emergence, NoEmergenceTable):
        return tuple(NoEmergence(WhyNotUp.DAYS_RUN_OUT) for _ in soil)
    points = _points(needs, needs.emergence.points)
    return tuple(emergence_day(points, soil, index) for index in range(len(soil)))


def _points(
    needs: HeatNeeds, table: tuple[tuple[float, float], ...]
) -> tuple[tuple[float, float], ...]:
    """The table; beyond its ends the rate runs down to nothing where germination ends."""
    points = table
    coldest = needs.germinates_from.low
    if coldest < points[0][0] - 0.1:
        points = ((coldest, math.inf), *points)
    hottest = needs.germinates_to.high
    if hottest > points[-1][0] + 0.1:
        points = (*points, (hottest, math.inf))
    return points


def _why_not_sown(needs: HeatNeeds, soil_degc: float, rising: int | NoEmergence) -> str:
    table = needs.emergence
    if (
        not isinstance(table, NoEmergenceTable)
        and isinstance(rising, NoEmergence)
        and rising.reason is not WhyNotUp.DAYS_RUN_OUT
    ):
        return f"{rising.reason} ({table.source})"
    low, high = needs.germinates_from, needs.germinates_to
    if soil_degc < low.low - 1e-9:
        return (
            f"the soil is colder than {_degrees(low.low)}, the least its seed needs ({low.source})"
        )
    if soil_degc > high.high + 1e-9:
        return f"the soil is warmer than {_degrees(high.high)}, its seed's most ({high.source})"
    return ""


def _why_not_harvested(needs: HeatNeeds, air_degc: float, day_h: float, spoiling: str) -> str:
    spoils = needs.harvest_below
    if air_degc > spoils.high:
        return f"{spoiling.format(degrees=_degrees(spoils.high))} ({spoils.source})"
    bolts = needs.bolts_above_h
    if isinstance(bolts, NeverBolts) or day_h <= bolts.high or air_degc < needs.best.low:
        return ""
    return f"warm days longer than {bolts.high:g} hours make it bolt ({bolts.source})"


def _degrees(degc: float) -> str:
    return f"{degc:.0f} degC ({degc * 9 / 5 + 32:.0f} degF)"
