"""The files of the season folder: which there are, by name, and their bytes."""

from pathlib import Path

from planner.cli.season_folder import SEASON
from planner.cli.shell import refuse
from planner.season import Season
from planner.terms import Place, Problem

_UPDATE = "calendar-update.ics"


def season_files(folder: Path, season: Season) -> dict[str, bytes]:
    """Every file a season is written to, by its name below the season folder.

    A name may have one folder in it, as in `pictures/garden.svg`.
    """
    from planner.writing import (  # noqa: PLC0415 - heavy, and only who writes a season needs it
        write_harvest_sheet,
        write_season_json,
        write_sowing_sheet,
    )

    return {
        "season.json": write_season_json(season),
        "sowing-sheet.csv": write_sowing_sheet(season),
        "harvest.csv": write_harvest_sheet(season),
        **_calendars(folder, season),
    }


def _calendars(folder: Path, season: Season) -> dict[str, bytes]:
    """Both calendars, numbered on from the ones written before."""
    from planner.writing import write_calendars  # noqa: PLC0415 - as above

    before = folder / SEASON / _UPDATE
    try:
        calendars = write_calendars(season, before.read_bytes() if before.exists() else None)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        refuse(
            [
                Problem(
                    "season-unreadable",
                    Place(f"{SEASON}/{_UPDATE}"),
                    "The calendar written before cannot be read.",
                    "take that file away; calendars then begin anew, so replace them in your app.",
                )
            ]
        )
    return {"calendar.ics": calendars.live, _UPDATE: calendars.update}
