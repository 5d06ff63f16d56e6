"""The rule of thumb: equal gaps between sowings, grown as everything is here.

Takes a Garden, a Climate and the gap a grower would keep on paper. Gives the sowings that find room
and what they bring, to compare a season with.
"""

from planner.scheduling.thumb.rule_of_thumb import Room, Thumb, ThumbResult, rule_of_thumb

__all__ = [
    "Room",
    "Thumb",
    "ThumbResult",
    "rule_of_thumb",
]
