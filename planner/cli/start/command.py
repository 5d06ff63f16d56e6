"""`planner start`: a plan folder by questions or options."""

import sys
from pathlib import Path
from typing import Annotated, BinaryIO

import typer

from planner.cli.folder import GARDEN
from planner.cli.screen import telling
from planner.cli.shell import refuse, today
from planner.cli.start.answers import StartAnswers, garden_toml
from planner.cli.start.options import answers_told
from planner.cli.start.questions import ask_answers
from planner.cli.start.reading import lacking, problems_added, problems_of
from planner.cli.start.spans import never_picked, with_spans
from planner.terms import Place, Problem


def start(
    folder: Annotated[str, typer.Argument(help="The folder to make.", show_default=False)],
    name: Annotated[str | None, typer.Option(help="What the garden is called.")] = None,
    place: Annotated[
        str | None,
        typer.Option(help='A town with a weather station, or "45.5 -122.7", near the garden.'),
    ] = None,
    latitude: Annotated[
        float | None, typer.Option(help="Degrees north; negative in the south.")
    ] = None,
    station: Annotated[
        str | None, typer.Option(help="Id of a weather station (see planner stations).")
    ] = None,
    last_spring_freeze: Annotated[
        str | None,
        typer.Option(help='Half of all years freeze after this day: "04-15", "mid April".'),
    ] = None,
    first_fall_freeze: Annotated[
        str | None,
        typer.Option(help='Half of all years freeze before this day: "10-20", "20 October".'),
    ] = None,
    first: Annotated[str | None, typer.Option("--from", help="First day of the season.")] = None,
    last: Annotated[str | None, typer.Option("--to", help="Last day of the season.")] = None,
    garden_days: Annotated[
        str | None, typer.Option(help='Days for garden work: "Wed, Sat", "weekends".')
    ] = None,
    bed: Annotated[
        list[str] | None,
        typer.Option(help='A bed, again and again: "North 1: 8 ft x 4 ft, 15 in deep, full".'),
    ] = None,
    people: Annotated[float, typer.Option(help="How many people eat from it.", min=0.5)] = 2,
    eat: Annotated[
        str | None, typer.Option(help='What they like to eat: "radish, lettuce, tomato".')
    ] = None,
    want: Annotated[
        list[str] | None,
        typer.Option(help='An exact amount a week, again and again: "radish: 25 roots".'),
    ] = None,
) -> None:
    """Make a plan folder, asking what the options leave open.

    Each question explains itself, wrong answers are asked again, and nothing is written before
    you have seen the whole. Without a terminal to ask on, everything must be in the options.

    Example: planner start my-garden

    Example: planner start my-garden --place "clemson univ" --people 4 --eat "radish, lettuce"
    --bed "North 1: 8 ft x 4 ft, 15 in deep, full"
    """
    path = Path(folder)
    try:
        taken = (path / GARDEN).exists()
    except OSError as error:
        refuse([_unwritable(path, error)])
    if taken:
        refuse([_taken(path)])
    answers = answers_told(
        StartAnswers(
            name=name,
            latitude=latitude,
            station=station.strip().upper() if station else None,
            last_spring_freeze=last_spring_freeze,
            first_fall_freeze=first_fall_freeze,
            first=first,
            last=last,
        ),
        place=place,
        garden_days=garden_days,
        beds=bed or [],
        wants=want or [],
        eaten=(eat or "", people),
    )
    wrong = problems_added(StartAnswers(), answers, today())
    if wrong:
        refuse(wrong)
    if sys.stdin.isatty():
        _make(path, ask_answers(answers, today()), shows_text=True)
        return
    lacks = tuple(lacking(answers))
    if lacks:
        refuse(lacks)
    _make(path, answers, shows_text=False)


def _make(path: Path, answers: StartAnswers, *, shows_text: bool) -> None:
    """Write the plan; what was typed is shown when it cannot be written."""
    day = today()
    problems = problems_of(garden_toml(answers, day))
    if not problems:
        with telling("Seeing what can be picked when"):
            answers = with_spans(answers, day)
        problems = _write(path, garden_toml(answers, day))
    if problems:
        if shows_text:
            print(f"Your answers, to save by hand as {GARDEN}:\n\n{garden_toml(answers, day)}")
        refuse(problems)
    for one in never_picked(answers):
        print(f"{one.crop} can be picked in no week of this season; planner schedule tells why.")
    print(f"Wrote {path / GARDEN}. Read it over, change what you like, then:")
    print(f"  planner check {path}\n  planner schedule {path}")


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


def _write(path: Path, text: str) -> tuple[Problem, ...]:
    """Write the new garden.toml; the problem when the computer refuses."""
    try:
        path.mkdir(parents=True, exist_ok=True)
        with (path / GARDEN).open("xb") as file:
            _write_whole(path / GARDEN, file, text.encode())
    except OSError as error:
        return (_unwritable(path, error),)
    return ()


def _write_whole(path: Path, file: BinaryIO, content: bytes) -> None:
    """Write all of a new file, or take it away again."""
    try:
        file.write(content)
        file.flush()
    except BaseException:
        path.unlink(missing_ok=True)
        raise
