"""The season of a plan folder, made as on a day, and put in the place of the one there was."""

from datetime import date
from pathlib import Path

from planner.cli.folder.plan_folder import garden_in, journal_in
from planner.cli.folder.season_files import season_files
from planner.cli.folder.season_folder import write_season_folder
from planner.cli.folder.season_record import earlier_season_in
from planner.garden import Garden
from planner.journal import Journal
from planner.scheduling import USUAL_EFFORT, Changing
from planner.season import Season, make_season
from planner.terms import Problem


def season_made(
    folder: Path, as_of: date, effort: int = USUAL_EFFORT, changing: Changing = Changing.LITTLE
) -> Season | tuple[Problem, ...]:
    """The season made of plan, journal and the season before, or every problem of these.

    Nothing is written.
    """
    garden = garden_in(folder)
    if not isinstance(garden, Garden):
        return garden
    earlier = earlier_season_in(folder, garden, as_of)
    if isinstance(earlier, Problem):
        return (earlier,)
    journal = journal_in(folder, garden.crops)
    if not isinstance(journal, Journal):
        return journal
    return make_season(garden, as_of, earlier, effort, journal=journal, changing=changing)


def put_in_place(folder: Path, season: Season) -> Problem | None:
    """Write a season, in one step or not at all; a problem leaves the one there was whole."""
    files = season_files(folder, season)
    return files if isinstance(files, Problem) else write_season_folder(folder, files)
