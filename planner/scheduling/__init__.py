"""Scheduling: which sowings, when, how large and where, so that each week's targets are met.

Takes Targets, Beds, a Climate, the sowings of an earlier season and the Journal. Gives Sowings with
their Blocks, and what stays Unmet with a reason and a remedy.
"""

from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling.changing import Changing
from planner.scheduling.chosen import Bound, Choice, MoreGround
from planner.scheduling.earlier import Earlier
from planner.scheduling.effort import EFFORTS, USUAL_EFFORT
from planner.scheduling.naming import NamesGiven, name_sowings
from planner.scheduling.seed_count import comes_up_in, is_usable, seeds_for, seeds_to_sow
from planner.scheduling.sowing import HARVEST_PLACES, Block, HarvestDay, Method, Sowing, SowingState
from planner.scheduling.starts import (
    Candidate,
    CropCandidates,
    CropTimes,
    CropYears,
    Workdays,
    YearOfCrop,
    candidate_of,
    crop_candidates,
    crop_times,
    crop_years,
    evenly,
    open_days_only,
)
from planner.scheduling.supply import Supply, supply_of
from planner.scheduling.thumb import Room, Thumb, ThumbResult, rule_of_thumb
from planner.scheduling.unfed import Opening, openings
from planner.scheduling.unmet import Reason, Unmet, UnmetKind

__all__ = [
    "EFFORTS",
    "HARVEST_PLACES",
    "USUAL_EFFORT",
    "Block",
    "Bound",
    "Candidate",
    "Changing",
    "Choice",
    "CropCandidates",
    "CropTimes",
    "CropYears",
    "Earlier",
    "HarvestDay",
    "Method",
    "MoreGround",
    "NamesGiven",
    "Opening",
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
    "YearOfCrop",
    "candidate_of",
    "choose_sowings",
    "comes_up_in",
    "crop_candidates",
    "crop_times",
    "crop_years",
    "evenly",
    "is_usable",
    "name_sowings",
    "open_days_only",
    "openings",
    "rule_of_thumb",
    "seeds_for",
    "seeds_to_sow",
    "supply_of",
]


def choose_sowings(
    garden: Garden,
    climate: Climate,
    as_of: date,
    earlier: Earlier,
    effort: int = USUAL_EFFORT,
) -> Choice:
    """The sowings that feed the garden's targets from `as_of` on, around those begun earlier.

    The work is counted, not timed: the same garden gives the same sowings on any machine.
    """
    from planner.scheduling import choice  # noqa: PLC0415 - the solver is heavy to load

    return choice.choose_sowings(garden, climate, as_of, earlier, effort)
