"""Starts: every start each crop of a garden could have."""

from datetime import date

from planner.climate import BEYOND, LEAD, Climate
from planner.garden import Garden
from planner.growth import Conditions, Paces, limits_of, outdoor_times
from planner.scheduling.candidate import CropCandidates, CropTimes, candidates_of
from planner.scheduling.workdays import Workdays


def crop_candidates(garden: Garden, climate: Climate, as_of: date) -> list[CropCandidates]:
    """Every start each crop could have, from `as_of` on, in the order of the plan."""
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
            conditions=Conditions(times, paces.of(crop), limits),
            workdays=workdays,
            begin=max(as_of, wish.first),
            last_wanted=min(garden.last_wanted(name), wish.last),
        )
        found.append(CropCandidates(about, candidates_of(about)))
    return found
