"""Arranging: sowings put on real ground, filled in, regrown, topped up and tightened.

Takes offers, the beds and what ground is worth. Gives a working plan in which whole plants stand
in whole rows of real beds.
"""

from planner.scheduling.arranging.filling import CropMarket, fill
from planner.scheduling.arranging.intents import arrange, intents_of
from planner.scheduling.arranging.places import CropPlaces, fits_of
from planner.scheduling.arranging.proposals import CropProposals, Mood
from planner.scheduling.arranging.putting_back import offers_taken, put_back
from planner.scheduling.arranging.regrowing import Regrowing
from planner.scheduling.arranging.tightening import tighten
from planner.scheduling.arranging.topping_up import top_up
from planner.scheduling.arranging.working_plan import Placed, WorkingPlan

__all__ = [
    "CropMarket",
    "CropPlaces",
    "CropProposals",
    "Mood",
    "Placed",
    "Regrowing",
    "WorkingPlan",
    "arrange",
    "fill",
    "fits_of",
    "intents_of",
    "offers_taken",
    "put_back",
    "tighten",
    "top_up",
]
