"""Starts: every start each crop of a garden could have."""

from collections.abc import Mapping
from datetime import date

from planner.climate import BEYOND, LEAD, Climate
from planner.garden import Crop, Garden
from planner.growth import (
    Conditions,
    CropPace,
    OwnPace,
    Paces,
    at_own_pace,
    limits_of,
    outdoor_times,
)
from planner.scheduling.candidate import CropTimes, candidates_of
from planner.scheduling.crop_years import CropCandidates
from planner.scheduling.workdays import Workdays
from planner.scheduling.years import few_years


def crop_candidates(
    garden: Garden, climate: Climate, as_of: date, own: Mapping[str, OwnPace] | None = None
) -> list[CropCandidates]:
    """Every start each crop could have, from `as_of` on, in the order of the plan.

    `own` is the garden's own pace of the crops for which it is known.
    """
    wish = garden.wish
    paces = Paces(climate, wish.first - LEAD, wish.last + BEYOND)
    workdays = Workdays(wish)
    found = []
    for name, crop in garden.crops.items():
        times = outdoor_times(
            crop, climate, wish.freeze_risk, (wish.first, wish.last), wish.cover_weeks
        )
        limits = limits_of(crop, climate, paces.temperatures)
        about = CropTimes(
            crop=crop,
            conditions=Conditions(times, _pace(paces, crop, own or {}), limits),
            workdays=workdays,
            begin=max(as_of, wish.first),
            last_wanted=min(garden.last_wanted(name), wish.last),
        )
        years = few_years(about, paces, wish)
        found.append(CropCandidates(about, candidates_of(about), years))
    return found


def _pace(paces: Paces, crop: Crop, own: Mapping[str, OwnPace]) -> CropPace:
    pace = paces.of(crop)
    return at_own_pace(pace, own[crop.name]) if crop.name in own else pace
