"""The calendars of a season on disk, as `planner schedule` wrote them."""

from pathlib import Path
from typing import TYPE_CHECKING

from planner.cli.folder.plan_folder import need_plan
from planner.cli.folder.season_files import LIVE, UPDATE
from planner.cli.folder.season_folder import SEASON, recover
from planner.cli.folder.season_record import no_season
from planner.cli.shell import command_line, refuse
from planner.terms import Place, Problem

if TYPE_CHECKING:
    from planner.writing import CalendarEvent


def season_events(folder: Path) -> "list[CalendarEvent]":
    """What is live, then what was called off; or leave after telling what is amiss."""
    from planner.writing import events_in  # noqa: PLC0415 - heavy, and only needed here

    need_calendar(folder)
    name = LIVE
    try:
        live = events_in((folder / SEASON / LIVE).read_bytes())
        name = UPDATE
        update = events_in((folder / SEASON / UPDATE).read_bytes())
    except (OSError, ValueError):
        refuse(
            Problem(
                "season-unreadable",
                Place(f"{SEASON}/{name}"),
                "The calendar cannot be read.",
                "take that file away and make the season again: "
                f"{command_line('schedule', folder)}",
            )
        )
    gone = [one for uid, one in update.items() if uid not in live and one.is_called_off]
    return [*live.values(), *gone]


def need_calendar(folder: Path) -> None:
    """Leave after telling that there is no calendar, where there is none."""
    need_plan(folder)
    recover(folder)
    if not (folder / SEASON / LIVE).is_file():
        refuse(no_season(folder, f"{SEASON}/{LIVE}"))
