"""The plan folder on disk: read whole, written in one step, its journal added to.

Takes the path of a folder, and a Season to write. Gives what its files say, or every problem of
them. What cannot be read or written is told as a problem; nothing is ever half written.
"""

from planner.cli.folder.journal_append import journal_held
from planner.cli.folder.noting import note_entry
from planner.cli.folder.plan_folder import (
    GARDEN,
    JOURNAL,
    RECORD,
    earlier_season,
    earlier_season_in,
    garden_in,
    is_folder,
    journal_file_in,
    journal_in,
    names_in,
    names_of,
    need_garden,
    need_plan,
    need_record,
    portions_in,
    read_journal_in,
    record_in,
    season_record,
)
from planner.cli.folder.printed import week_pdf
from planner.cli.folder.season_calendars import LIVE, need_calendar, season_events
from planner.cli.folder.season_files import PAGE, season_files
from planner.cli.folder.season_folder import SEASON, unwritable, write_season_folder
from planner.cli.folder.written_file import write_whole

__all__ = [
    "GARDEN",
    "JOURNAL",
    "LIVE",
    "PAGE",
    "RECORD",
    "SEASON",
    "earlier_season",
    "earlier_season_in",
    "garden_in",
    "is_folder",
    "journal_file_in",
    "journal_held",
    "journal_in",
    "names_in",
    "names_of",
    "need_calendar",
    "need_garden",
    "need_plan",
    "need_record",
    "note_entry",
    "portions_in",
    "read_journal_in",
    "record_in",
    "season_events",
    "season_files",
    "season_record",
    "unwritable",
    "week_pdf",
    "write_season_folder",
    "write_whole",
]
