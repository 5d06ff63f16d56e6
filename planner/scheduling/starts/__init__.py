"""Starts: every start each crop of a garden could have, and what one gives.

Takes a Garden, a Climate and the day of planning. Gives each crop's candidates with the weeks they
could feed, and what the same start gives in past years.
"""

from planner.scheduling.starts.candidate import Candidate, CropTimes, candidate_of, set_out_day
from planner.scheduling.starts.crop_starts import crop_candidates, crop_times
from planner.scheduling.starts.crop_years import (
    CropCandidates,
    CropYears,
    YearOfCrop,
    crop_years,
    evenly,
    open_days_only,
)
from planner.scheduling.starts.workdays import Workdays
from planner.scheduling.starts.years import in_years

__all__ = [
    "Candidate",
    "CropCandidates",
    "CropTimes",
    "CropYears",
    "Workdays",
    "YearOfCrop",
    "candidate_of",
    "crop_candidates",
    "crop_times",
    "crop_years",
    "evenly",
    "in_years",
    "open_days_only",
    "set_out_day",
]
