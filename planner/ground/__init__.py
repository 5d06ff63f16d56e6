"""Ground: which stretch of which bed is free from one day to another, and what stands beside it.

Takes Beds and the holdings on them. Gives gaps in which a block may stand, on ground of its
own or under a host, and the classes of beds that are alike to the crops wanted.
"""

from planner.ground.bed_class import BedClass, classes_of
from planner.ground.gap import Gap
from planner.ground.ground import NOBODY, Ground, Holding
from planner.ground.shared_gap import shared_gaps

__all__ = ["NOBODY", "BedClass", "Gap", "Ground", "Holding", "classes_of", "shared_gaps"]
