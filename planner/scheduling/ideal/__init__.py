"""The ideal season: every sowing of any size, ground counted by classes of beds.

Takes offers and the ground there is. Gives what no plan can pass, the sowings it would have, and
what a week and a stretch of ground are worth on each day.
"""

from planner.scheduling.ideal.ideal_season import IdealSeason, Part
from planner.scheduling.ideal.pricing import GroundThereIs
from planner.scheduling.ideal.tenure import held

__all__ = [
    "GroundThereIs",
    "IdealSeason",
    "Part",
    "held",
]
