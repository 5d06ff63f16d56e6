"""`planner start`: a plan folder by questions or options."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import GARDEN, unwritable, write_new
from planner.cli.option_values import need_people
from planner.cli.screen import telling
from planner.cli.shell import command_line, refuse, today
from planner.cli.start.answers import StartAnswers, garden_toml
from planner.cli.start.options import answers_told
from planner.cli.start.questions import ask_answers
from planner.cli.start.reading import lacking, problems_added, problems_of
from planner.cli.start.spans import never_picked, with_spans
from planner.terms import Place, Problem

_NOTHING_WRITTEN = "Nothing was written."


def start(
    folder: Annotated[str, typer.Argument(help="The folder to make.", show_default=False)],
    name: Annotated[
        str | None, typer.Option(metavar="WORDS", help="What the garden is called.")
    ] = None,
    place: Annotated[
        str | None,
        typer.Option(
            metavar="TOWN",
            help='A town with a weather station, or "45.5 -122.7", near the garden.',
        ),
    ] = None,
    latitude: Annotated[
        float | None,
        typer.Option(metavar="DEGREES", help="Degrees north; negative in the south."),
    ] = None,
    station: Annotated[
        str | None,
        typer.Option(metavar="ID", help="Id of a weather station (see planner stations)."),
    ] = None,
    last_spring_freeze: Annotated[
        str | None,
        typer.Option(
            metavar="DAY", help='Half of all years freeze after this day: "04-15", "mid April".'
        ),
    ] = None,
    first_fall_freeze: Annotated[
        str | None,
        typer.Option(
            metavar="DAY", help='Half of all years freeze before this day: "10-20", "20 October".'
        ),
    ] = None,
    first: Annotated[
        str | None,
        typer.Option(
            "--from", metavar="DAY", help='First day of the season: "2027-02-15", "mid February".'
        ),
    ] = None,
    last: Annotated[
        str | None, typer.Option("--to", metavar="DAY", help="Last day of the season.")
    ] = None,
    garden_days: Annotated[
        str | None,
        typer.Option(metavar="DAYS", help='Days for garden work: "Wed, Sat", "weekends".'),
    ] = None,
    bed: Annotated[
        list[str] | None,
        typer.Option(
            metavar="BED", help='A bed, again and again: "North 1: 8 ft x 4 ft, 15 in deep, full".'
        ),
    ] = None,
    people: Annotated[
        float, typer.Option(metavar="NUMBER", help="How many people eat from it.")
    ] = 2,
    eat: Annotated[
        str | None,
        typer.Option(metavar="CROPS", help='What they like to eat: "radish, lettuce, tomato".'),
    ] = None,
    want: Annotated[
        list[str] | None,
        typer.Option(
            metavar="WISH", help='An exact amount a week, again and again: "radish: 25 roots".'
        ),
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
    _need_free(path / GARDEN)
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
        eaten=(eat or "", need_people(people)),
        day=today(),
    )
    wrong = problems_added(StartAnswers(), answers, today())
    if wrong:
        refuse(*wrong)
    if sys.stdin.isatty():
        answers = ask_answers(answers, today())
        problems = _made(path, answers)
        if problems:
            print(f"Your answers, to save by hand as {GARDEN}:\n\n{garden_toml(answers, today())}")
    else:
        problems = tuple(lacking(answers)) or _made(path, answers)
    if problems:
        refuse(*problems)


def _need_free(path: Path) -> None:
    """Leave after telling that a plan is there already, or that nothing can be there."""
    try:
        taken = path.exists()
    except OSError as error:
        refuse(unwritable(path.parent, error, _NOTHING_WRITTEN))
    if taken:
        refuse(
            Problem(
                "folder-taken",
                Place(str(path)),
                "A garden.toml is there, and a new plan never overwrites one.",
                "edit that file, or choose another folder.",
            )
        )


def _made(folder: Path, answers: StartAnswers) -> tuple[Problem, ...]:
    """Write the plan and tell of it; or every reason why it is not written."""
    day = today()
    problems = problems_of(garden_toml(answers, day))
    if problems:
        return problems
    with telling("Seeing what can be picked when"):
        answers = with_spans(answers, day)
    try:
        write_new(folder / GARDEN, garden_toml(answers, day).encode())
    except OSError as error:
        return (unwritable(folder, error, _NOTHING_WRITTEN),)
    for one in never_picked(answers):
        print(f"{one.crop} can be picked in no week of this season; planner schedule tells why.")
    print(f"Wrote {folder / GARDEN}. Read it over, change what you like, then:")
    print(f"  {command_line('check', folder)}\n  {command_line('schedule', folder)}")
    return ()
