"""The files of the season folder: which there are, by name, and their bytes."""

from pathlib import Path

from planner.cli.folder.printed import sheet_files
from planner.cli.folder.season_folder import SEASON
from planner.cli.folder.season_pictures import season_pictures
from planner.season import Season
from planner.terms import Place, Problem

PAGE = "season.html"
LIVE, UPDATE = "calendar.ics", "calendar-update.ics"


def season_files(folder: Path, season: Season) -> dict[str, bytes] | Problem:
    """Every file a season is written to, by its name below the season folder.

    A name may have one folder in it, as in `pictures/garden.svg`.
    """
    from planner.page import season_page  # noqa: PLC0415 - heavy, only who writes seasons needs it
    from planner.writing import (  # noqa: PLC0415 - as above
        write_harvest_sheet,
        write_season_json,
        write_season_workbook,
        write_sowing_sheet,
    )

    calendars = _calendars(folder, season)
    if isinstance(calendars, Problem):
        return calendars
    return {
        "season.json": write_season_json(season),
        "sowing-sheet.csv": write_sowing_sheet(season),
        "harvest.csv": write_harvest_sheet(season),
        "season.xlsx": write_season_workbook(season),
        PAGE: season_page(season).encode(),
        **season_pictures(season),
        **sheet_files(season),
        **calendars,
    }


def _calendars(folder: Path, season: Season) -> dict[str, bytes] | Problem:
    """Both calendars, numbered on from the ones written before."""
    from planner.writing import write_calendars  # noqa: PLC0415 - as above

    before = folder / SEASON / UPDATE
    try:
        calendars = write_calendars(season, before.read_bytes() if before.exists() else None)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return Problem(
            "season-unreadable",
            Place(f"{SEASON}/{UPDATE}"),
            "The calendar written before cannot be read.",
            "take that file away; calendars then begin anew, so replace them in your app.",
        )
    return {LIVE: calendars.live, UPDATE: calendars.update}
