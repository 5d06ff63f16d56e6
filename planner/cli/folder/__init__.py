"""The plan folder on disk: read whole, written in one step, its journal added to.

Takes the path of a folder, and a Season to write. Gives what its files say, or every problem of
them. What cannot be read or written is told as a problem; nothing is ever half written.
"""

from planner.cli.folder.disk import unwritable
from planner.cli.folder.journal_append import journal_held
from planner.cli.folder.noting import note_entry
from planner.cli.folder.plan_folder import (
    GARDEN,
    JOURNAL,
    garden_in,
    is_folder,
    journal_file_in,
    journal_in,
    need_plan,
    need_record,
    portions_in,
)
from planner.cli.folder.printed import week_pdf
from planner.cli.folder.season_calendars import need_calendar, season_events
from planner.cli.folder.season_files import LIVE, PAGE
from planner.cli.folder.season_folder import SEASON
from planner.cli.folder.season_made import put_in_place, season_made
from planner.cli.folder.season_record import (
    RECORD,
    earlier_season_in,
    names_of,
    no_season,
    planned_on,
    record_in,
)
from planner.cli.folder.written_file import write_new, write_whole

__all__ = [
    "GARDEN",
    "JOURNAL",
    "LIVE",
    "PAGE",
    "RECORD",
    "SEASON",
    "earlier_season_in",
    "garden_in",
    "is_folder",
    "journal_file_in",
    "journal_held",
    "journal_in",
    "names_of",
    "need_calendar",
    "need_plan",
    "need_record",
    "no_season",
    "note_entry",
    "planned_on",
    "portions_in",
    "put_in_place",
    "record_in",
    "season_events",
    "season_made",
    "unwritable",
    "week_pdf",
    "write_new",
    "write_whole",
]
