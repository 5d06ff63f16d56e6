"""Sharing: the season's page and calendar over HTTP, and what is ticked off there noted.

Takes requests at an address nobody can guess. Gives pages, the live calendar, lines of journal.csv
and a revised season.
"""

from planner.cli.share.command import share

__all__ = [
    "share",
]
