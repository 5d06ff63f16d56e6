"""`planner schedule`: make or remake the season."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import SEASON, put_in_place, season_made
from planner.cli.option_values import whole_number
from planner.cli.screen import columns, telling
from planner.cli.shell import FolderOrHere, JsonOption, need, print_json, read_day
from planner.cli.status import SOMETHING_UNMET
from planner.climate import Climate
from planner.scheduling import EFFORTS, USUAL_EFFORT, Changing, Room, Thumb, rule_of_thumb
from planner.season import Season, record_of


def schedule(
    folder: FolderOrHere = ".",
    as_of: Annotated[
        str | None,
        typer.Option("--as-of", metavar="DAY", help="Plan as on this day, not today (2027-05-01)."),
    ] = None,
    strict: Annotated[
        bool, typer.Option("--strict", help="Leave with status 1 when something is unmet.")
    ] = False,
    effort: Annotated[
        int,
        typer.Option(
            "--effort",
            parser=whole_number(0, len(EFFORTS) - 1),
            metavar=f"0-{len(EFFORTS) - 1}",
            help="How long to look for a better season: 0 a draft, 1 as usual, 2 or 3 more.",
        ),
    ] = USUAL_EFFORT,
    what_if: Annotated[
        bool, typer.Option("--what-if", help="Only show what would change; write nothing.")
    ] = False,
    freely: Annotated[
        bool,
        typer.Option("--freely", help="Let all that is not yet begun move, worth it or not."),
    ] = False,
    json: JsonOption = False,
) -> None:
    """Make the season, or revise it by what the journal tells.

    Staggered blocks in every bed, calendar and sheets: writes FOLDER/season in one step. What
    was begun before the day stays where it is; of the rest only changes that are worth it are
    made. The same plan, journal and day give the same season, however slow the computer.

    Example: planner schedule my-garden
    """
    path = Path(folder)
    day = read_day(as_of, "--as-of")
    with telling("Looking for a season"):
        changing = Changing.FREELY if freely else Changing.LITTLE
        season = need(season_made(path, day, effort, changing))
    if not what_if:
        with telling("Drawing and writing it"):
            problem = put_in_place(path, season)
        need(problem)
    if json:
        print_json(record_of(season))
    else:
        written = f"Written to {path / SEASON}: {', '.join(_WRITTEN)}"
        _show(season, "Nothing was written (--what-if)." if what_if else written)
    if strict and season.unmet:
        raise typer.Exit(SOMETHING_UNMET)


def _show(season: Season, written: str) -> None:
    from planner.writing import (  # noqa: PLC0415 - heavy, and only this command needs it
        bound_text,
        changes_text,
        promise_text,
        unmet_text,
        week_picture,
    )

    width = columns()
    print(f"{season.garden.site.name}, as of {season.as_of}\n")
    print(week_picture(season, width, sys.stdout.encoding or "ascii"))
    changes = changes_text(season, width)
    if changes:
        print(f"\nWhat changed:\n{changes}")
    unmet = unmet_text(season, width)
    if unmet:
        print(f"\nWhat stays unmet, and why:\n{unmet}")
    print(
        f"\n{promise_text(season, width)}\n"
        f"{bound_text(season, _by_thumb(season), width)}\n{_how_counted(season)}\n"
        f"{written}"
    )


def _by_thumb(season: Season) -> float:
    """The share that sowing at fixed intervals would meet in the same beds."""
    garden = season.garden
    climate = Climate(garden.site)
    found = rule_of_thumb(garden, climate, season.as_of, Thumb.KNOWS_SEASON, Room.LIMITED)
    return found.fill


def _how_counted(season: Season) -> str:
    ways = sorted({one.counted for one in season.sowings})
    how = " or ".join(ways) or "by the calendar"
    return f"Dates are counted {how}. Freeze dates are odds, not a forecast."


# What a grower opens; season.json and the calendar of changes are for programs.
_WRITTEN = (
    "season.html",
    "pictures",
    "calendar.ics",
    "sheets.pdf",
    "labels.pdf",
    "seed-starting.pdf",
    "sowing-sheet.csv",
    "harvest.csv",
    "season.xlsx",
)
