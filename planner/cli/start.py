"""`planner start`: a plan folder by questions or options."""

import sys
from collections.abc import Callable
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
from planner.cli.start_reading import lacking, problems_of
from planner.terms import Place, Problem


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
        _make_by_questions(path, ask_answers(answers, today()))
    else:
        _make_by_options(path, answers)


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


def _make_by_questions(path: Path, answers: StartAnswers) -> None:
    """Write the plan; what was typed is shown when it cannot be written."""
    text = garden_toml(answers, today())
    problems = problems_of(text) or _write(path, text)
    if problems:
        print(f"Your answers, to save by hand as {GARDEN}:\n\n{text}")
        refuse(problems)
    _tell_next(path)


def _make_by_options(path: Path, answers: StartAnswers) -> None:
    lacks = tuple(lacking(answers))
    if lacks:
        refuse(lacks)
    text = garden_toml(answers, today())
    problems = problems_of(text) or _write(path, text)
    if problems:
        refuse(problems)
    _tell_next(path)


def _write(path: Path, text: str) -> tuple[Problem, ...]:
    """Write the new garden.toml; the problem when the computer refuses."""
    try:
        path.mkdir(parents=True, exist_ok=True)
        with (path / GARDEN).open("xb") as file:
            file.write(text.encode())
    except OSError as error:
        return (_unwritable(path, error),)
    return ()


def _tell_next(path: Path) -> None:
    print(f"Wrote {path / GARDEN}. Read it over, change what you like, then:")
    print(f"  planner check {path}\n  planner schedule {path}")
