"""Scheduling: which sowings, when, how large and where, so that each week's targets are met.

Takes Targets, Beds, a Climate, and the sowings that have begun already. Gives Sowings with
their Blocks, and what stays Unmet with a reason and a remedy.
"""

from planner.scheduling.bound import Bound, MoreGround
from planner.scheduling.choice import USUAL_EFFORT, Choice, choose_sowings
from planner.scheduling.naming import NamesGiven, name_sowings
from planner.scheduling.rule_of_thumb import Room, Thumb, ThumbResult, rule_of_thumb
from planner.scheduling.sowing import Block, HarvestDay, Method, Sowing, SowingState
from planner.scheduling.supply import Supply, supply_of
from planner.scheduling.unmet import Reason, Unmet, UnmetKind
from planner.scheduling.workdays import Workdays

__all__ = [
    "USUAL_EFFORT",
    "Block",
    "Bound",
    "Choice",
    "HarvestDay",
    "Method",
    "MoreGround",
    "NamesGiven",
    "Reason",
    "Room",
    "Sowing",
    "SowingState",
    "Supply",
    "Thumb",
    "ThumbResult",
    "Unmet",
    "UnmetKind",
    "Workdays",
    "choose_sowings",
    "name_sowings",
    "rule_of_thumb",
    "supply_of",
]
