"""Bedwork: how much soil, compost, water and seed the beds take, and the cautions.

Takes beds, sowings and blocks, and the climate. Gives amounts, each with its reason.
"""

from planner.bedwork.appetite import CropAppetite, Feeds, NobodySays, appetites_of
from planner.bedwork.away_work import AwayBed, AwayWork, away_work_of
from planner.bedwork.cautions import cautions_of
from planner.bedwork.drip import Runs
from planner.bedwork.evaporation import Evaporation, Known
from planner.bedwork.filling import (
    Doubt,
    Filling,
    Layer,
    LayerKind,
    TightDepth,
    fillings_of,
    tight_depths,
)
from planner.bedwork.manure import ManureCheck, PickAfterManure, manure_checks, needed_days
from planner.bedwork.order import Order, OrderLine, order_of, whole_parcels
from planner.bedwork.proposal import Proposal, ProposedTarget, proposal_of
from planner.bedwork.seed import NoTrays, Seed, SeedNeed, Trays, seed_of
from planner.bedwork.too_early import TooEarly, TooEarlyHarvests, too_early_harvests
from planner.bedwork.turnover import CompostYear, Turnover, compost_years, turnovers_of
from planner.bedwork.water import BedWater, Given, SharedRun, Water, WeekWater, water_of

__all__ = [
    "AwayBed",
    "AwayWork",
    "BedWater",
    "CompostYear",
    "CropAppetite",
    "Doubt",
    "Evaporation",
    "Feeds",
    "Filling",
    "Given",
    "Known",
    "Layer",
    "LayerKind",
    "ManureCheck",
    "NoTrays",
    "NobodySays",
    "Order",
    "OrderLine",
    "PickAfterManure",
    "Proposal",
    "ProposedTarget",
    "Runs",
    "Seed",
    "SeedNeed",
    "SharedRun",
    "TightDepth",
    "TooEarly",
    "TooEarlyHarvests",
    "Trays",
    "Turnover",
    "Water",
    "WeekWater",
    "appetites_of",
    "away_work_of",
    "cautions_of",
    "compost_years",
    "fillings_of",
    "manure_checks",
    "needed_days",
    "order_of",
    "proposal_of",
    "seed_of",
    "tight_depths",
    "too_early_harvests",
    "turnovers_of",
    "water_of",
    "whole_parcels",
]
