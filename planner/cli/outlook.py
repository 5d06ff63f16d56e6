"""`planner outlook`: the season tried against past years."""

import shutil
import sys
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import RECORD, SEASON, earlier_season, need_garden, need_record
from planner.cli.shell import FolderOrHere, JsonOption, print_json, refuse
from planner.season import Beside, KnownSeason, beside_thumb, season_unreadable

_MOST_REVISED = 30


def outlook(
    folder: FolderOrHere = ".",
    weeks: Annotated[
        bool, typer.Option("--weeks", help="Also every week's poor, usual and good harvest.")
    ] = False,
    revised: Annotated[
        int,
        typer.Option(
            "--revised",
            min=0,
            max=_MOST_REVISED,
            help="Also revise the season each fortnight in so many of the years; takes a minute.",
        ),
    ] = 0,
    json: JsonOption = False,
) -> None:
    """Try the season in past years: does it hold?

    Each past year of the weather record brings the season's sowings on at its own pace, closes
    harvest by its own heat and kills by its own freezes, while the plan is kept. Without a daily
    record only the early, likely and late dates are tried, and that is said. The rule of thumb is
    tried beside it on the same beds.

    Example: planner outlook my-garden --weeks
    """
    beside = _tried(Path(folder), folder, revised)
    from planner.writing import (  # noqa: PLC0415 - heavy, and only needed here
        trial_record,
        trial_text,
        trial_weeks,
    )

    if json:
        print_json(trial_record(beside))
        return
    width = shutil.get_terminal_size().columns
    print(f"{beside.garden.site.name}, as of {beside.as_of}\n")
    print(trial_text(beside, width, sys.stdout.encoding or "ascii"))
    if weeks:
        print(f"\n{trial_weeks(beside.trial)}")


def _tried(path: Path, named: str, revised: int) -> Beside:
    """The season in a folder tried, as it was seen on the day it was made."""
    record = need_record(path, named)
    garden = need_garden(path)
    try:
        as_of = date.fromisoformat(record["as_of"])
    except (KeyError, TypeError, ValueError):
        refuse([season_unreadable(f"{SEASON}/{RECORD}", "It has no readable as_of.")])
    season = earlier_season(path, garden, as_of)
    sowings, names = (season.sowings, season.names_given) if season else ((), {})

    def begins(number: int) -> None:
        print(f"Revising each fortnight, year {number} ...", file=sys.stderr)

    return beside_thumb(garden, KnownSeason(as_of, sowings, names), revised, begins)
