"""`planner start`: a plan folder by questions or options."""

import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.plan_folder import GARDEN
from planner.cli.shell import refuse, today
from planner.cli.start_answers import (
    StartAnswers,
    bed_toml,
    garden_toml,
    target_toml,
)
from planner.cli.start_questions import ask_answers
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Place, Problem

_Writer = Callable[[str], str]


def start(
    folder: Annotated[str, typer.Argument(help="The folder to make.", show_default=False)],
    name: Annotated[str | None, typer.Option(help="What the garden is called.")] = None,
    latitude: Annotated[
        float | None, typer.Option(help="Degrees north; negative in the south.")
    ] = None,
    station: Annotated[
        str | None, typer.Option(help="Id of a weather station (see planner stations).")
    ] = None,
    last_spring_freeze: Annotated[
        str | None, typer.Option(help='Half of all years freeze after this day: "04-15".')
    ] = None,
    first_fall_freeze: Annotated[
        str | None, typer.Option(help='Half of all years freeze before this day: "10-20".')
    ] = None,
    first: Annotated[str | None, typer.Option("--from", help="First day of the season.")] = None,
    last: Annotated[str | None, typer.Option("--to", help="Last day of the season.")] = None,
    garden_days: Annotated[
        str | None, typer.Option(help='Days for garden work: "Wed, Sat".')
    ] = None,
    bed: Annotated[
        list[str] | None,
        typer.Option(help='A bed, again and again: "North 1: 8 ft x 4 ft, 15 in deep, full".'),
    ] = None,
    want: Annotated[
        list[str] | None,
        typer.Option(help='A wish, again and again: "radish: 25 roots".'),
    ] = None,
) -> None:
    """Make a plan folder, asking what the options leave open.

    Without a terminal to ask on, everything must be in the options.

    Example: planner start my-garden --latitude 47.6 --last-spring-freeze 03-28
    --first-fall-freeze 11-09 --bed "North 1: 8 ft x 4 ft, 15 in deep, full"
    --want "radish: 25 roots"
    """
    path = Path(folder)
    try:
        taken = (path / GARDEN).exists()
    except OSError as error:
        refuse([_unwritable(path, error)])
    if taken:
        refuse([_taken(path)])
    answers = StartAnswers(
        name=name,
        latitude=latitude,
        station=station,
        last_spring_freeze=last_spring_freeze,
        first_fall_freeze=first_fall_freeze,
        first=first,
        last=last,
        garden_days=garden_days,
        beds=_written(bed, bed_toml),
        wants=_written(want, target_toml),
    )
    if sys.stdin.isatty():
        answers = ask_answers(answers, today())
    _make(path, garden_toml(answers, _usual_season(today())))


def _usual_season(day: date) -> tuple[date, date]:
    """The rest of this year, or the whole of the next when fall has begun."""
    if day.month >= 9:
        return date(day.year + 1, 1, 1), date(day.year + 1, 12, 31)
    return day, date(day.year, 12, 31)


def _written(lines: list[str] | None, write: Callable[[str], str | None]) -> list[str]:
    texts = []
    problems = []
    for line in lines or []:
        text = write(line)
        if text is None:
            problems.append(
                Problem(
                    "bad-quantity",
                    Place("command line"),
                    f'"{line}" cannot be understood.',
                    'write "North 1: 8 ft x 4 ft, 15 in deep, full" for a bed, '
                    '"radish: 25 roots" for a wish.',
                )
            )
        else:
            texts.append(text)
    if problems:
        refuse(problems)
    return texts


def _taken(path: Path) -> Problem:
    return Problem(
        "folder-taken",
        Place(str(path / GARDEN)),
        "A garden.toml is there, and a new plan never overwrites one.",
        "edit that file, or choose another folder.",
    )


def _unwritable(path: Path, error: OSError) -> Problem:
    return Problem(
        "folder-unwritable",
        Place(str(path)),
        f"The computer says: {error.strerror}.",
        "choose a folder you may write in.",
    )


def _make(path: Path, text: str) -> None:
    content = text.encode()
    garden = read_garden(PlanFiles(PlanFile(GARDEN, content)))
    if not isinstance(garden, Garden):
        refuse(garden)
    try:
        path.mkdir(parents=True, exist_ok=True)
        with (path / GARDEN).open("xb") as file:
            file.write(content)
    except OSError as error:
        refuse([_unwritable(path, error)])
    print(f"Wrote {path / GARDEN}. Read it over, change what you like, then:")
    print(f"  planner check {path}\n  planner schedule {path}")
