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
from planner.scheduling.starts.candidate import CropTimes, candidates_of
from planner.scheduling.starts.crop_years import CropCandidates
from planner.scheduling.starts.workdays import Workdays
from planner.scheduling.starts.years import few_years


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
    for crop in garden.crops.values():
        pace = _pace(paces, crop, own or {})
        about = crop_times(crop, garden, paces, workdays, max(as_of, wish.first), pace)
        found.append(CropCandidates(about, candidates_of(about), few_years(about, paces)))
    return found


def crop_times(
    crop: Crop, garden: Garden, paces: Paces, workdays: Workdays, begin: date, pace: CropPace
) -> CropTimes:
    """What a crop meets by the odds, as it is planned; nothing is started before `begin`."""
    wish, climate = garden.wish, paces.climate
    days = (wish.first, wish.last)
    times = outdoor_times(crop, climate, wish.freeze_risk, days, wish.cover_weeks)
    limits = limits_of(crop, climate, paces.temperatures)
    last_wanted = min(garden.last_wanted(crop.name), wish.last)
    return CropTimes(crop, Conditions(times, pace, limits), workdays, begin, last_wanted)


def _pace(paces: Paces, crop: Crop, own: Mapping[str, OwnPace]) -> CropPace:
    pace = paces.of(crop)
    return at_own_pace(pace, own[crop.name]) if crop.name in own else pace
