"""Sheets: what is printed and carried to the beds.

Takes a Season, or the sowings and tasks of one. Gives PDF files: the weeks' sheets, labels and
the list of what is raised indoors.
"""

from planner.sheets.label import write_labels
from planner.sheets.season_sheets import BedworkByWeek, write_season_sheets, write_week_sheet
from planner.sheets.seed_starting import write_seed_starting
from planner.sheets.work import Work, work_of

__all__ = [
    "BedworkByWeek",
    "Work",
    "work_of",
    "write_labels",
    "write_season_sheets",
    "write_seed_starting",
    "write_week_sheet",
]
