"""Watering as plain values that JSON can hold; millimetres, litres, minutes."""

from collections.abc import Sequence
from typing import Any

from planner.bedwork import AwayWork, BedWater, Runs, Water, WeekWater
from planner.garden import MonthlyDepth, NoDrip
from planner.writing.recorded import recorded


def water_record(water: Water) -> dict[str, Any]:
    """What watering rests on, and every week of it."""
    wish = water.garden.water
    return {
        "evaporation": water.evaporation.known.value,
        "evaporation_source": str(water.evaporation.source),
        "rain_source": str(water.rain.source) if isinstance(water.rain, MonthlyDepth) else None,
        "efficiency": recorded(wish.efficiency.middle),
        "rain_used": recorded(wish.rain_used.middle),
        "weeks": [_week(one) for one in water.weeks],
    }


def _week(one: WeekWater) -> dict[str, Any]:
    return {
        "week": str(one.week),
        "evaporation_mm": recorded(one.evaporation_mm),
        "rain_mm": recorded(one.rain_mm),
        "beds": [_bed(bed) for bed in one.beds],
        "timers": [
            {
                "timer": run.timer,
                **_runs(run.runs),
                "gives": [
                    {
                        "bed": given.bed,
                        "given_mm": recorded(given.given_mm),
                        "wanted_mm": recorded(given.wanted_mm),
                    }
                    for given in run.gives
                ],
            }
            for run in one.shared
        ],
        "not_up": list(one.seedbeds),
    }


def _bed(one: BedWater) -> dict[str, Any]:
    return {
        "bed": one.bed.name,
        "coefficient": recorded(one.coefficient),
        "planted": recorded(one.planted),
        "depth_mm": recorded(one.depth_mm),
        "volume_l": recorded(one.volume_l),
        "drip": None if isinstance(one.runs, NoDrip) else _runs(one.runs),
    }


def _runs(runs: Runs) -> dict[str, Any]:
    return {"times": runs.times, "minutes": recorded(runs.minutes), "parts": runs.parts}


def away_record(times: Sequence[AwayWork]) -> list[dict[str, Any]]:
    """Each time away."""
    return [
        {
            "from": one.away.first.isoformat(),
            "to": one.away.last.isoformat(),
            "water_on": [day.isoformat() for day in one.days],
            "beds": [
                {
                    "bed": bed.water.bed.name,
                    "each_l": recorded(bed.each_l),
                    "drip": None if isinstance(bed.runs, NoDrip) else _runs(bed.runs),
                }
                for bed in one.beds
            ],
            "pick": [sowing.id for sowing in one.picks],
            "ready": [sowing.id for sowing in one.stands],
            "too_early": [sowing.id for sowing in one.waits],
            "trays": [sowing.id for sowing in one.trays],
            "not_up": [sowing.id for sowing in one.seedbeds],
        }
        for one in times
    ]
