"""Offers: what the chooser may choose from, and what it weighs.

Takes a crop's candidates and what its weeks lack. Gives its offers as arrays, a start with the day
it leaves, those left out that another beats in every way, and what each thing is worth.
"""

from planner.scheduling.offers.arrays import Floats, Whole
from planner.scheduling.offers.crop_offers import CropOffers, Was, offers_of
from planner.scheduling.offers.crop_sums import CropSums
from planner.scheduling.offers.worth import (
    ELSEWHERE,
    EVERYTHING,
    GUEST,
    ONLY_WANTS,
    SPLIT,
    Worth,
    worth_of,
)

__all__ = [
    "ELSEWHERE",
    "EVERYTHING",
    "GUEST",
    "ONLY_WANTS",
    "SPLIT",
    "CropOffers",
    "CropSums",
    "Floats",
    "Was",
    "Whole",
    "Worth",
    "offers_of",
    "worth_of",
]
