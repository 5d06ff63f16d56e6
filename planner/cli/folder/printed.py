"""What is printed: the season's sheets, and the sheet of one week from the season in a folder."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

from planner.cli.folder.plan_folder import garden_in
from planner.cli.folder.season_record import RECORD, earlier_season_in, planned_on
from planner.cli.shell import command_line, need, refuse
from planner.season import Season, season_tasks, season_unreadable
from planner.tasks import Task
from planner.terms import Place, Problem, Week, week_of

if TYPE_CHECKING:
    from planner.sheets import Work

_TOLD = ("id", "kind", "sowing", "bed", "place", "text")


def sheet_files(season: Season) -> dict[str, bytes]:
    """What is printed of a season, by name."""
    from planner.sheets import (  # noqa: PLC0415 - the typesetter is heavy
        work_of,
        write_labels,
        write_season_sheets,
        write_seed_starting,
    )
    from planner.writing import bedwork_by_week  # noqa: PLC0415 - as above

    work = work_of(season)
    return {
        "sheets.pdf": write_season_sheets(work, bedwork_by_week(work.garden, work.sowings)),
        "labels.pdf": write_labels(work),
        "seed-starting.pdf": write_seed_starting(work),
    }


def week_pdf(folder: Path, record: dict[str, Any], week: Week) -> bytes:
    """The sheet of one week, as the season in the folder has it; or leave and tell why not."""
    from planner.sheets import write_week_sheet  # noqa: PLC0415 - as above
    from planner.writing import bedwork_by_week  # noqa: PLC0415 - as above

    work = _work(folder, record)
    asked = {week, week.after(1)}
    if _told(work, asked) != _recorded(record, asked):
        refuse(
            Problem(
                "season-no-longer-fits",
                Place(RECORD),
                "What it says of this week or the next is no longer what the plan's files say.",
                f"make the season follow with: {command_line('schedule', folder)}",
            )
        )
    return write_week_sheet(work, week, bedwork_by_week(work.garden, work.sowings))


def _work(folder: Path, record: dict[str, Any]) -> "Work":
    """The sowings of a season with their tasks; of crops and beds gone from the plan, none."""
    from planner.sheets import Work  # noqa: PLC0415 - as above

    garden = need(garden_in(folder))
    as_of = planned_on(record)
    try:
        earlier = need(earlier_season_in(folder, garden, as_of))
        sowings = earlier.sowings if earlier else ()
        return Work(garden, as_of, sowings, season_tasks(garden, sowings))
    except (KeyError, ValueError, TypeError, AttributeError, OverflowError, IndexError):
        refuse(season_unreadable(RECORD, "A day or a sowing in it is not what it should be."))


def _told(work: "Work", weeks: set[Week]) -> list[tuple[str, ...]]:
    return [_words(one) for one in work.tasks if week_of(one.on) in weeks]


def _words(task: Task) -> tuple[str, ...]:
    return (
        task.on.isoformat(),
        task.id,
        task.kind.value,
        task.sowing,
        task.bed,
        task.place,
        task.text,
    )


def _recorded(record: dict[str, Any], weeks: set[Week]) -> list[tuple[str, ...]]:
    return [
        (one["on"], *(one[key] for key in _TOLD))
        for one in record["tasks"]
        if week_of(date.fromisoformat(one["on"])) in weeks
    ]
