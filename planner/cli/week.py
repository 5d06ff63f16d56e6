"""`planner week`: the tasks of one week."""

from datetime import date
from pathlib import Path
from typing import Annotated, Any

import typer

from planner.cli.folder import need_record, week_pdf, write_whole
from planner.cli.screen import columns
from planner.cli.shell import FolderOrHere, JsonOption, need, print_json, read_day
from planner.terms import Week, week_of


def week(
    folder: FolderOrHere = ".",
    of: Annotated[
        str | None, typer.Option("--of", metavar="DAY", help="The week of this day, not of today.")
    ] = None,
    pdf: Annotated[
        str | None,
        typer.Option(
            "--pdf", help="Write the week's sheet for printing to this file.", metavar="FILE"
        ),
    ] = None,
    json: JsonOption = False,
) -> None:
    """Show what is to do this week, day by day, with the place in each bed.

    Example: planner week my-garden --of 2027-05-01 --pdf this-week.pdf
    """
    wanted = week_of(read_day(of, "--of"))
    path = Path(folder)
    record = need_record(path)
    if pdf is not None:
        _print_to(Path(pdf), path, record, wanted)
    tasks = [one for one in record["tasks"] if week_of(date.fromisoformat(one["on"])) == wanted]
    if json:
        print_json(tasks)
        return
    from planner.writing import TaskLine, week_text  # noqa: PLC0415 - heavy, and only needed here

    lines = [
        TaskLine(
            date.fromisoformat(one["on"]),
            *(str(one[key]) for key in ("kind", "sowing", "bed", "place", "text")),
        )
        for one in tasks
    ]
    print(week_text(wanted, lines, max(40, columns())))
    if pdf is not None:
        print(f"\nWritten for printing: {pdf}")


def _print_to(path: Path, folder: Path, record: dict[str, Any], wanted: Week) -> None:
    """Write the week's sheet, or leave after telling why it cannot be."""
    need(write_whole(path, week_pdf(folder, record, wanted)))
