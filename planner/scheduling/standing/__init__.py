"""Standing: what of an earlier season has begun, by its real dates.

Takes an earlier season's sowings and the Journal. Gives those that stand as they are, those that
may still move, those never begun, and first harvests as predicted and as they came.
"""

from planner.scheduling.standing.begun import begun_of
from planner.scheduling.standing.seen_harvests import seen_harvests

__all__ = [
    "begun_of",
    "seen_harvests",
]
