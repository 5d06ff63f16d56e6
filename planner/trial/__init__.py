"""Trial: what a season would have given in each past year.

Takes Sowings, a Garden and a Climate. Gives a Trial: the harvest by week in every year on record,
poor, usual and good, and the weeks that hold in the fewest years.
"""

from planner.trial.crop_trial import CropTrial
from planner.trial.trial import TooFewPicks, Trial, trial_of
from planner.trial.tried_year import Basis, TriedYears, tried_years
from planner.trial.weak_week import Failing, WeakWeek

__all__ = [
    "Basis",
    "CropTrial",
    "Failing",
    "TooFewPicks",
    "Trial",
    "TriedYears",
    "WeakWeek",
    "trial_of",
    "tried_years",
]
