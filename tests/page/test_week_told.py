"""What a week tells beyond its tasks: what lies too soon after raw manure, and who is away."""

import csv
import io
from datetime import date
from functools import cache
from itertools import groupby

import icalendar

from planner.page import season_page
from planner.page.element import fragment
from planner.season import Season, make_season
from planner.tasks import TaskKind
from planner.writing import write_calendars, write_sowing_sheet
from tests.plan_text import garden_of
from tests.season_runs import SMALL_PLAN

_MANURE = '[[manure]]\nbed = "Barrel"\non = 2027-03-10\n\n[[target]]'
# 10 March is day 69 of 2027; 120 days later is day 189, 8 July (7 CFR 205.203(c)(1)).
_SAFE = date(2027, 7, 8)


@cache
def _season() -> Season:
    garden = garden_of(SMALL_PLAN.replace("[[target]]", _MANURE, 1))
    return make_season(garden, garden.wish.first, None, 0)


def test_nothing_tells_to_pick_too_soon_after_raw_manure() -> None:
    season = _season()
    early = [
        one
        for one in season.tasks
        if one.kind in {TaskKind.PICK, TaskKind.CUT} and one.bed == "Barrel" and one.on < _SAFE
    ]
    assert early
    page = season_page(season)
    rows = list(csv.DictReader(io.StringIO(write_sowing_sheet(season).decode())))
    for task in early:
        not_yet = f"Do not harvest {task.crop} before 8 July 2027: raw manure on Barrel."
        _, _, item = page.partition(f'id="task-{fragment(task.id)}"')
        assert not_yet in item.partition("</li>")[0]
        (row,) = (
            one
            for one in rows
            if (one["date"], one["sowing"], one["task"])
            == (task.on.isoformat(), task.sowing, task.kind.value)
        )
        assert row["note"] == not_yet
    calendar = icalendar.Calendar.from_ical(write_calendars(season, None).live)
    days = {str(one["SUMMARY"]): one.start for one in calendar.events}
    for sowing in {one.sowing for one in early}:
        assert days.get(f"Harvest {sowing}", _SAFE) >= _SAFE


def test_a_week_has_its_number_and_says_who_is_away() -> None:
    """19 July 2027 is the Monday of week 29 (ISO 8601); the plan has nobody there to 26 July."""
    page = season_page(_season())
    _, _, week = page.partition('id="week-2027-W29"')
    week = week.partition("</details>")[0]
    assert "week 29, bed work alone" in week
    assert "Away: 19 July to 25 July." in week


def test_tasks_of_a_day_go_from_bed_to_bed_as_on_paper() -> None:
    """Nobody walks to a bed twice: indoors first, then the beds in the order of the plan."""
    season = _season()
    page = season_page(season)
    order = ["", *(bed.name for bed in season.garden.beds)]
    several = 0
    for day, of_day in groupby(season.tasks, key=lambda one: one.on):
        placed = {
            page.index(f'id="task-{fragment(one.id)}"'): (
                "" if one.kind in {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF} else one.bed
            )
            for one in of_day
        }
        beds = [order.index(placed[place].split(" + ")[0]) for place in sorted(placed)]
        assert beds == sorted(beds), day
        several += len(set(beds)) > 1
    assert several
