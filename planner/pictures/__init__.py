"""Pictures: a season drawn to scale.

Takes a Season. Gives drawings as SVG text: a bed through the year, the garden from above on a
day, and a crop's harvest by week; and what their colours become on a dark page. It opens no file
and looks nothing up.
"""

from planner.pictures.bed_year import bed_year
from planner.pictures.garden_plan import garden_day, garden_plan
from planner.pictures.harvest_weeks import harvest_weeks
from planner.pictures.in_the_dark import colours_in_the_dark

__all__ = ["bed_year", "colours_in_the_dark", "garden_day", "garden_plan", "harvest_weeks"]
