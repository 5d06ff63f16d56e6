"""Writing: a season as text or bytes for people and other programs.

Takes a Season. Gives season.json, calendars, sheets and the picture of the weeks. It opens
no file and looks nothing up.
"""

from planner.writing.bedwork_json import filling_record
from planner.writing.bound_text import bound_sentences, bound_text, help_sentences
from planner.writing.calendar import Calendars, write_calendars
from planner.writing.calendar_event import CalendarEvent, event_lines, events_in
from planner.writing.changes_text import changes_text
from planner.writing.filling_text import filling_text
from planner.writing.ground_text import ground_text
from planner.writing.harvest_sheet import write_harvest_sheet
from planner.writing.publication import (
    LEFT,
    Held,
    Published,
    Step,
    begins_anew,
    publication,
)
from planner.writing.saying import Saying, saying_of
from planner.writing.season_json import write_season_json
from planner.writing.site_text import site_text
from planner.writing.sowing_sheet import write_sowing_sheet
from planner.writing.trial_json import trial_record
from planner.writing.trial_text import trial_text, trial_weeks
from planner.writing.unmet_text import UnmetWords, unmet_text, unmet_words
from planner.writing.week_picture import week_picture
from planner.writing.week_text import TaskLine, week_text

__all__ = [
    "LEFT",
    "CalendarEvent",
    "Calendars",
    "Held",
    "Published",
    "Saying",
    "Step",
    "TaskLine",
    "UnmetWords",
    "begins_anew",
    "bound_sentences",
    "bound_text",
    "changes_text",
    "event_lines",
    "events_in",
    "filling_record",
    "filling_text",
    "ground_text",
    "help_sentences",
    "publication",
    "saying_of",
    "site_text",
    "trial_record",
    "trial_text",
    "trial_weeks",
    "unmet_text",
    "unmet_words",
    "week_picture",
    "week_text",
    "write_calendars",
    "write_harvest_sheet",
    "write_season_json",
    "write_sowing_sheet",
]
