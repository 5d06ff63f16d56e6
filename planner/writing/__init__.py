"""Writing: a season as text or bytes for people and other programs.

Takes a Season. Gives season.json, calendars, sheets and the picture of the weeks. It opens
no file and looks nothing up.
"""

from planner.writing.appetite_json import appetite_record, proposal_record
from planner.writing.appetite_text import appetite_text, proposal_text
from planner.writing.away_text import (
    away_days_words,
    away_lists,
    away_text,
    each_time_words,
    watering_words,
)
from planner.writing.bed_by_bed import bed_by_bed
from planner.writing.bedwork_json import (
    cautions_record,
    filling_record,
    manure_record,
    turnover_record,
)
from planner.writing.bedwork_lines import (
    WeekBedwork,
    bedwork_by_week,
    bedwork_lines,
    not_yet_lines,
)
from planner.writing.bound_text import bound_sentences, bound_text, help_sentences, promise_text
from planner.writing.calendar import Calendars, write_calendars
from planner.writing.calendar_event import CalendarEvent, event_lines, events_in
from planner.writing.cautions_text import caution_words, cautions_text
from planner.writing.changes_text import changes_text
from planner.writing.filling_text import filling_lines, filling_text, order_notes, tight_lines
from planner.writing.ground_text import ground_text
from planner.writing.harvest_sheet import write_harvest_sheet
from planner.writing.manure_text import manure_lines, manure_rule, manure_text
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
from planner.writing.season_workbook import write_season_workbook
from planner.writing.seed_json import seed_record
from planner.writing.seed_text import in_the_box, seed_grounds, seed_months, seed_text
from planner.writing.share_words import share_words
from planner.writing.site_text import site_text
from planner.writing.sowing_sheet import write_sowing_sheet
from planner.writing.trial_json import trial_record
from planner.writing.trial_text import trial_text, trial_weeks
from planner.writing.turnover_text import (
    ceiling_words,
    turnover_rule,
    turnover_text,
    turnover_words,
)
from planner.writing.unmet_text import UnmetWords, unmet_text, unmet_words
from planner.writing.water_json import away_record, water_record
from planner.writing.water_lines import runs_in, times_words, water_lines
from planner.writing.water_text import water_advice, water_grounds, water_text
from planner.writing.water_words import run_words, water_words
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
    "WeekBedwork",
    "appetite_record",
    "appetite_text",
    "away_days_words",
    "away_lists",
    "away_record",
    "away_text",
    "bed_by_bed",
    "bedwork_by_week",
    "bedwork_lines",
    "begins_anew",
    "bound_sentences",
    "bound_text",
    "caution_words",
    "cautions_record",
    "cautions_text",
    "ceiling_words",
    "changes_text",
    "each_time_words",
    "event_lines",
    "events_in",
    "filling_lines",
    "filling_record",
    "filling_text",
    "ground_text",
    "help_sentences",
    "in_the_box",
    "manure_lines",
    "manure_record",
    "manure_rule",
    "manure_text",
    "not_yet_lines",
    "order_notes",
    "promise_text",
    "proposal_record",
    "proposal_text",
    "publication",
    "run_words",
    "runs_in",
    "saying_of",
    "seed_grounds",
    "seed_months",
    "seed_record",
    "seed_text",
    "share_words",
    "site_text",
    "tight_lines",
    "times_words",
    "trial_record",
    "trial_text",
    "trial_weeks",
    "turnover_record",
    "turnover_rule",
    "turnover_text",
    "turnover_words",
    "unmet_text",
    "unmet_words",
    "water_advice",
    "water_grounds",
    "water_lines",
    "water_record",
    "water_text",
    "water_words",
    "watering_words",
    "week_picture",
    "week_text",
    "write_calendars",
    "write_harvest_sheet",
    "write_season_json",
    "write_season_workbook",
    "write_sowing_sheet",
]
