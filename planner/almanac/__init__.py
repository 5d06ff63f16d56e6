"""Almanac: published figures of crops and stations, each with its source.

Takes data files of its own. Gives crop pages, complete crops, pairs that may share ground, what bed
work is counted with and its cautions, weather stations and the one bibliography. It knows nothing
of this year's plan.
"""

from planner.almanac.appetite import kitchen_groups, published_amounts
from planner.almanac.assemble import TABLES_OF, Stated, assemble_crop, missing_figures
from planner.almanac.bibliography import BibliographyEntry, bibliography
from planner.almanac.cautions import all_cautions
from planner.almanac.crop_page import CropPage, PublishedRow, crop_page, crop_pages
from planner.almanac.crop_water import ANY_OTHER, crop_waters
from planner.almanac.emergence import EmergenceTable, emergence_tables
from planner.almanac.figure_kinds import FIGURE_KINDS, FigureKind, as_stated, in_engine_unit
from planner.almanac.seed_life import seed_life
from planner.almanac.sharing import Canopy, canopies, sharing_pairs
from planner.almanac.soil import RICH_MIX, USUAL_MIX, soil_figures, soil_mixes
from planner.almanac.stations import (
    NearStation,
    Station,
    nearest_stations,
    station,
    station_names,
    stations_named,
)
from planner.almanac.usual_figures import usual_figures

__all__ = [
    "ANY_OTHER",
    "FIGURE_KINDS",
    "RICH_MIX",
    "TABLES_OF",
    "USUAL_MIX",
    "BibliographyEntry",
    "Canopy",
    "CropPage",
    "EmergenceTable",
    "FigureKind",
    "NearStation",
    "PublishedRow",
    "Stated",
    "Station",
    "all_cautions",
    "as_stated",
    "assemble_crop",
    "bibliography",
    "canopies",
    "crop_page",
    "crop_pages",
    "crop_waters",
    "emergence_tables",
    "in_engine_unit",
    "kitchen_groups",
    "missing_figures",
    "nearest_stations",
    "published_amounts",
    "seed_life",
    "sharing_pairs",
    "soil_figures",
    "soil_mixes",
    "station",
    "station_names",
    "stations_named",
    "usual_figures",
]
