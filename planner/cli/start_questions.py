"""The questions of a new plan; a wrong answer is told and asked again."""

from collections.abc import Callable
from datetime import date
from typing import TypeVar

import typer

from planner.almanac import crop_page, nearest_stations, station
from planner.cli.start_answers import StartAnswers, bed_toml, target_toml
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
        _ask_freezes(known)
    if known.first is None and known.last is None:
        year = day.year + 1 if day.month >= 9 else day.year
        first = typer.prompt("First day of the season", default=max(f"{year}-01-01", f"{day}"))
        known.first = first if _is_day(first) else _ask("First day", _day, "a day: 2027-02-01")
        known.last = _ask("Last day of the season", _day, "a day: 2027-12-31")
    if known.garden_days is None:
        known.garden_days = typer.prompt(
            "Days for garden work (Mon, Tue, ...)", default="Mon, Tue, Wed, Thu, Fri, Sat, Sun"
        )
    _ask_list(known.beds, "A bed, like North 1: 8 ft x 4 ft, 15 in deep, full", bed_toml)
    _ask_list(known.wants, "What you want each week, like radish: 25 roots", _want)
    return known


def _ask(words: str, read: Callable[[str], T | None], shape: str) -> T:
    while True:
        value = read(typer.prompt(words))
        if value is not None:
            return value
        typer.echo(f"  That is not {shape}. Please try again.")


def _ask_list(found: list[str], words: str, read: Callable[[str], str | None]) -> None:
    while True:
        last = " (Enter when there are no more)" if found else ""
        line = typer.prompt(f"{words}{last}", default="" if found else None)
        if not line and found:
            return
        text = read(line)
        if text is None:
            typer.echo("  That cannot be understood. Please write it like the example.")
        else:
            found.append(text)


def _ask_freezes(known: StartAnswers) -> None:
    typer.echo(
        "Freeze dates: write the day after which half of all years still freezes in spring "
        "(04-15),\nor the id of a weather station, or ? for the stations nearest to a place."
    )
    while not known.knows_freezes:
        answer = typer.prompt("Last spring freeze, station, or ?").strip()
        if answer == "?":
            _show_nearest(known)
        elif read_month_day(answer) or answer == "never":
            known.last_spring_freeze = answer
            words = "First fall freeze (half of all years freeze before it)"
            known.first_fall_freeze = _ask(words, _freeze, "a month and a day: 10-20")
        elif station(answer):
            known.station = answer
        else:
            typer.echo("  That is neither a month and a day (04-15) nor a station's id.")


def _show_nearest(known: StartAnswers) -> None:
    longitude = _ask("Longitude in degrees (negative in the west)", _number, "a number")
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


def _want(line: str) -> str | None:
    text = target_toml(line)
    if text is not None and crop_page(line.split(":", maxsplit=1)[0]) is None:
        typer.echo("  The almanac has no such crop; planner crops lists them.")
        return None
    return text
