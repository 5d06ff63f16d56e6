"""Pictures: a season drawn to scale.

Takes a Season. Gives drawings as SVG text: a bed through the year, the garden from above on a
day, and a crop's harvest by week. It opens no file and looks nothing up.
"""

from planner.pictures.bed_year import bed_year
from planner.pictures.garden_plan import garden_day, garden_plan
from planner.pictures.harvest_weeks import harvest_weeks

__all__ = ["bed_year", "garden_day", "garden_plan", "harvest_weeks"]
