"""Publishing: the season's events sent to a calendar on a server, and kept in step with it.

Takes the calendars of a season, an account, and what was sent before. Gives requests to the server,
and a line for each event it took.
"""

from planner.cli.publish.command import publish

__all__ = [
    "publish",
]
