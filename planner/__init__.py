"""Plans raised beds so that there is something to pick every week.

A plan folder goes in, a season comes out. The rooms of this package stand in the
order the data flows; docs/rooms.md draws them.
"""

__version__ = "0.1.0"
