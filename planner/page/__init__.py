"""Page: a season as one page for a browser.

Takes a Season. Gives one HTML text that needs nothing beside it; and, where the page is shared,
the same with what the journal tells, and the small pages on which things are noted.
"""

from planner.page.note_page import NOTHING_SAID, Said, answer_page, note_page, said_part
from planner.page.revision_page import Revision, Stage, revision_page
from planner.page.season_page import season_page
from planner.page.shared_page import shared_page
from planner.page.shared_work import SharedTask, SharedWork
from planner.page.tick_box import entry_words, tick_box
from planner.page.whole_page import policy_of

__all__ = [
    "NOTHING_SAID",
    "Revision",
    "Said",
    "SharedTask",
    "SharedWork",
    "Stage",
    "answer_page",
    "entry_words",
    "note_page",
    "policy_of",
    "revision_page",
    "said_part",
    "season_page",
    "shared_page",
    "tick_box",
]
