"""Season: runs the rooms in order and holds the result.

Takes a Garden, a day, and the season made before (if any). Gives a Season: sowings, tasks,
expected harvest, what stays unmet and how well the plan does; and its record, the form in
which a season is kept between two runs. Tries a season beside the rule of thumb.
"""

from planner.season.beside import Beside, beside_thumb
from planner.season.changes import Changed, Changes, WeekChange
from planner.season.crop_outlook import CropOutlook
from planner.season.measures import Measures
from planner.season.record import read_record, record_of
from planner.season.record_check import season_unreadable, what_is_wrong
from planner.season.repeats import Repeat
from planner.season.revised import Revised
from planner.season.season import EarlierSeason, Season, make_season
from planner.season.season_tasks import season_tasks

__all__ = [
    "Beside",
    "Changed",
    "Changes",
    "CropOutlook",
    "EarlierSeason",
    "Measures",
    "Repeat",
    "Revised",
    "Season",
    "WeekChange",
    "beside_thumb",
    "make_season",
    "read_record",
    "record_of",
    "season_tasks",
    "season_unreadable",
    "what_is_wrong",
]
