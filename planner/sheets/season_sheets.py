"""The season's sheets in one file, and the sheet of one week alone."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from planner.journal import Event
from planner.sheets.day_words import dated_words
from planner.sheets.letters import LONGEST_GARDEN, shown
from planner.sheets.typesetter import typeset
from planner.sheets.week_sheet import WeekSheet, week_sheet
from planner.sheets.work import Work
from planner.terms import Week, week_of

BedLines = Mapping[Week, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class _Sheets:
    """What the template is given: the paper, what every page says, and the weeks."""

    paper: str
    garden: str
    made_on: str
    events: tuple[str, ...]
    weeks: tuple[WeekSheet, ...]


def write_season_sheets(work: Work, bed_lines: BedLines) -> bytes:
    """Every week with tasks from the day of planning on, as a PDF with an outline by week.

    A week without any is one line at the head of the next sheet. `bed_lines`: bed work by week.
    """
    sheets = []
    idle: list[Week] = []
    for week in _weeks(work):
        if week in work.weeks:
            sheets.append(week_sheet(work, week, bed_lines.get(week, ()), idle))
            idle = []
        else:
            idle.append(week)
    return _typeset(work, tuple(sheets))


def write_week_sheet(work: Work, week: Week, bed_lines: BedLines) -> bytes:
    """The sheet of one week as a PDF."""
    return _typeset(work, (week_sheet(work, week, bed_lines.get(week, ()), ()),))


def _weeks(work: Work) -> Iterator[Week]:
    """The weeks from the first with tasks that is not yet over to the last."""
    ahead = [week for week in work.weeks if week >= week_of(work.as_of)]
    return ahead[0].until(ahead[-1]) if ahead else iter(())


def _typeset(work: Work, weeks: tuple[WeekSheet, ...]) -> bytes:
    return typeset(
        "week",
        _Sheets(
            paper=work.garden.paper.value,
            garden=shown(work.garden.site.name, LONGEST_GARDEN),
            made_on=dated_words(work.as_of),
            events=tuple(Event),
            weeks=weeks,
        ),
    )
