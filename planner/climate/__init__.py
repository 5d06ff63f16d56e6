"""Climate: the year at this site and its odds.

Takes a Site. Gives Climate: the last freeze of spring and the first of fall at any risk, in
either hemisphere and across New Year, and the length of any day.
"""

from planner.climate.climate import Climate, FreezeYear
from planner.climate.day_length import day_length_h, shortest_day

__all__ = ["Climate", "FreezeYear", "day_length_h", "shortest_day"]
