"""The questions of a new plan; a wrong answer is told and asked again.

Each answer is read as `planner check` would read it, so that nothing is refused at the end.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from typing import TypeVar

import typer

from planner.almanac import nearest_stations, station
from planner.cli.start_answers import (
    StartAnswers,
    bed_toml,
    midwinter_after,
    target_toml,
    usual_season,
)
from planner.cli.start_reading import problems_added
from planner.garden import FreezeDates
from planner.terms import read_month_day

T = TypeVar("T")


def ask_answers(known: StartAnswers, day: date) -> StartAnswers:
    """Ask for whatever is not known yet."""
    if known.name is None:
        known.name = typer.prompt("What is the garden called", default="My garden")
    if known.latitude is None:
        words = "Latitude in degrees (about 47.6; negative in the south)"
        known.latitude = _ask(words, _latitude, "a number between -66 and 70")
    if not known.knows_freezes:
        _ask_freezes(known, day)
    if known.first is None and known.last is None:
        _ask_season(known, day)
    if known.garden_days is None:
        _ask_garden_days(known, day)
    _ask_beds(known, day)
    _ask_wants(known, day)
    return known


def _ask(words: str, read: Callable[[str], T | None], shape: str, usual: str | None = None) -> T:
    while True:
        value = read(typer.prompt(words, default=usual, show_default=usual is not None))
        if value is not None:
            return value
        typer.echo(f"  That is not {shape}. Please try again.")


def _can_stand(known: StartAnswers, changed: StartAnswers, day: date) -> bool:
    """Whether an answer brings no new problem; tells the problems it brings."""
    problems = problems_added(known, changed, day)
    for problem in problems:
        typer.echo(f"  {problem.wrong}\n  What to do: {problem.remedy}")
    return not problems


def _ask_season(known: StartAnswers, day: date) -> None:
    latitude = known.latitude or 0.0
    while True:
        first = _ask(
            "First day of the season",
            _day,
            "a day: 2027-02-01",
            str(usual_season(day, latitude)[0]),
        )
        end = midwinter_after(date.fromisoformat(first), latitude)
        last = _ask("Last day of the season", _day, "a day: 2027-12-31", str(end))
        if _can_stand(known, replace(known, first=first, last=last), day):
            known.first, known.last = first, last
            return


def _ask_garden_days(known: StartAnswers, day: date) -> None:
    every_day = "Mon, Tue, Wed, Thu, Fri, Sat, Sun"
    while True:
        days = typer.prompt("Days for garden work (Mon, Tue, ...)", default=every_day)
        if _can_stand(known, replace(known, garden_days=days), day):
            known.garden_days = days
            return


def _ask_beds(known: StartAnswers, day: date) -> None:
    words = "A bed, like North 1: 8 ft x 4 ft, 15 in deep, full"
    while (line := _one_more(words, known.beds)) is not None:
        bed = _understood(bed_toml(line))
        if bed and _can_stand(known, replace(known, beds=[*known.beds, bed]), day):
            known.beds.append(bed)


def _ask_wants(known: StartAnswers, day: date) -> None:
    words = "What you want each week, like radish: 25 roots"
    while (line := _one_more(words, known.wants)) is not None:
        want = _understood(target_toml(line))
        if want and _can_stand(known, replace(known, wants=[*known.wants, want]), day):
            known.wants.append(want)


def _one_more(words: str, found: list[str]) -> str | None:
    """A further line, or None when the grower has no more."""
    if not found:
        return str(typer.prompt(words))
    more = f"{words} (Enter when there are no more)"
    return typer.prompt(more, default="", show_default=False) or None


def _understood(text: str | None) -> str | None:
    if text is None:
        typer.echo("  That cannot be understood. Please write it like the example.")
    return text


def _ask_freezes(known: StartAnswers, day: date) -> None:
    typer.echo(
        "Freeze dates: write the day after which half of all years still freezes in spring "
        "(04-15),\nor the id of a weather station, or ? for the stations nearest to a place."
    )
    while not known.knows_freezes:
        answer = typer.prompt("Last spring freeze, station, or ?").strip()
        if answer == "?":
            _show_nearest(known)
        elif read_month_day(answer) or answer == "never":
            words = "First fall freeze (half of all years freeze before it)"
            fall = _ask(words, _freeze, "a month and a day: 10-20")
            dates = replace(known, last_spring_freeze=answer, first_fall_freeze=fall)
            if _can_stand(known, dates, day):
                known.last_spring_freeze, known.first_fall_freeze = answer, fall
        elif station(answer):
            known.station = answer
        else:
            typer.echo("  That is neither a month and a day (04-15) nor a station's id.")


def _show_nearest(known: StartAnswers) -> None:
    longitude = _ask_longitude()
    if longitude is None:
        return
    for near in nearest_stations(known.latitude or 0.0, longitude, 5):
        one = near.station
        dates = ""
        if isinstance(one.freezes, FreezeDates):
            dates = f"{one.freezes.last_spring.half} to {one.freezes.first_fall.half}"
        typer.echo(
            f"  {one.id}  {one.name}, {one.state}, {near.distance_km:.0f} km away, "
            f"{one.elevation_m:.0f} m high: {dates}"
        )


def _number(words: str) -> float | None:
    try:
        return float(words)
    except ValueError:
        return None


def _ask_longitude() -> float | None:
    """A longitude, or None when the grower leaves the question."""
    words = "Longitude in degrees (negative in the west; Enter to go back)"
    while answer := typer.prompt(words, default="", show_default=False).strip():
        number = _number(answer)
        if number is not None and -180 <= number <= 180:
            return number
        typer.echo("  That is not a number between -180 and 180. Please try again.")
    return None


def _latitude(words: str) -> float | None:
    number = _number(words)
    return number if number is not None and -66 <= number <= 70 else None


def _freeze(words: str) -> str | None:
    return words if read_month_day(words) or words == "never" else None


def _is_day(words: str) -> bool:
    try:
        date.fromisoformat(words)
    except ValueError:
        return False
    return True


def _day(words: str) -> str | None:
    return words if _is_day(words) else None
