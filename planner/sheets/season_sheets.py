"""The season's sheets in one file, and the sheet of one week alone."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from planner.journal import Event
from planner.sheets.frame import Frame, frame_of
from planner.sheets.typesetter import typeset
from planner.sheets.week_sheet import WeekSheet, week_sheet
from planner.sheets.work import Work
from planner.terms import Week, week_of
from planner.writing import WeekBedwork

BedworkByWeek = Mapping[Week, WeekBedwork]


@dataclass(frozen=True, slots=True)
class _Sheets:
    """What the template is given: the paper, what every page says, and the weeks."""

    frame: Frame
    events: tuple[str, ...]
    weeks: tuple[WeekSheet, ...]


def write_season_sheets(work: Work, bedwork: BedworkByWeek) -> bytes:
    """Every week with something to do from the day of planning on, as a PDF with an outline.

    A week without anything is one line at the head of the next sheet.
    """
    sheets = []
    idle: list[Week] = []
    for week in _weeks(work, bedwork):
        if week in work.weeks or week in bedwork:
            sheets.append(week_sheet(work, week, bedwork.get(week, WeekBedwork()), idle))
            idle = []
        else:
            idle.append(week)
    return _typeset(work, tuple(sheets))


def write_week_sheet(work: Work, week: Week, bedwork: BedworkByWeek) -> bytes:
    """The sheet of one week as a PDF."""
    return _typeset(work, (week_sheet(work, week, bedwork.get(week, WeekBedwork()), ()),))


def _weeks(work: Work, bedwork: BedworkByWeek) -> Iterator[Week]:
    """The weeks from the first with something to do that is not yet over to the last."""
    ahead = sorted(week for week in {*work.weeks, *bedwork} if week >= week_of(work.as_of))
    return ahead[0].until(ahead[-1]) if ahead else iter(())


def _typeset(work: Work, weeks: tuple[WeekSheet, ...]) -> bytes:
    return typeset(
        "week",
        _Sheets(
            frame=frame_of(work),
            events=tuple(Event),
            weeks=weeks,
        ),
    )
