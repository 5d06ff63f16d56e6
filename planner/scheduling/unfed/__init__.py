"""Unfed weeks: which lack something, why, and what would feed them.

Takes the sowings chosen and every start each crop could have. Gives what stays Unmet, each with
its reason and its remedy.
"""

from planner.scheduling.unfed.lacking import unmet_of
from planner.scheduling.unfed.openings import Opening, openings

__all__ = [
    "Opening",
    "openings",
    "unmet_of",
]
