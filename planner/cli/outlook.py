"""`planner outlook`: the season tried against past years."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import earlier_season_in, garden_in, need_record, no_season, planned_on
from planner.cli.option_values import whole_number
from planner.cli.screen import columns
from planner.cli.shell import FolderOrHere, JsonOption, need, print_json
from planner.season import Beside, beside_thumb

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
            parser=whole_number(0, _MOST_REVISED),
            metavar="YEARS",
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
    beside = _tried(Path(folder), revised)
    from planner.writing import (  # noqa: PLC0415 - heavy, and only needed here
        trial_record,
        trial_text,
        trial_weeks,
    )

    if json:
        print_json(trial_record(beside))
        return
    width = columns()
    print(f"{beside.garden.site.name}, as of {beside.as_of}\n")
    print(trial_text(beside, width, sys.stdout.encoding or "ascii"))
    if weeks:
        print(f"\n{trial_weeks(beside.trial)}")


def _tried(folder: Path, revised: int) -> Beside:
    """The season in a folder tried, as it was seen on the day it was made."""
    as_of = planned_on(need_record(folder))
    garden = need(garden_in(folder))
    season = need(earlier_season_in(folder, garden, as_of) or no_season(folder))

    def begins(number: int) -> None:
        print(f"Revising each fortnight, year {number} ...", file=sys.stderr)

    return beside_thumb(garden, season, as_of, revised, begins)
