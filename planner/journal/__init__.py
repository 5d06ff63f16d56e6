"""Journal: what has really happened in the beds.

Takes nothing but terms. Gives a Journal: entries in the order they were written, and for every
sowing its history, in which what was undone no longer counts.
"""

from planner.journal.entry import Entry, Event
from planner.journal.history import History
from planner.journal.journal import NOTHING_TOLD, Journal

__all__ = ["NOTHING_TOLD", "Entry", "Event", "History", "Journal"]
