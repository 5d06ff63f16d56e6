"""Options of a new plan, read in the same words as answers to the questions."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from datetime import date
from typing import TypeVar

from planner.almanac import NearStation, Station
from planner.almanac import station as station_of
from planner.cli.crop_names import crops_meant, what_to_write
from planner.cli.shell import refuse
from planner.cli.start.answers import NewWant, StartAnswers
from planner.cli.start.lines import (
    BED_EXAMPLE,
    WANT_EXAMPLE,
    read_bed_line,
    read_eaten,
    read_want_line,
)
from planner.cli.start.place import stations_at
from planner.cli.start.reading import OPTIONS
from planner.cli.start.words import read_day_words, read_month_words, read_weekdays
from planner.terms import Place, Problem

T = TypeVar("T")
_MOST_NAMED = 5


def answers_told(
    told: StartAnswers,
    *,
    place: str | None,
    garden_days: str | None,
    beds: Iterable[str],
    wants: Iterable[str],
    eaten: tuple[str, float],
    day: date,
) -> StartAnswers:
    """The answers that options give on a day; or leave after telling what is not understood.

    `eaten` is what is eaten, in the grower's words, and by how many people.
    """
    problems: list[Problem] = []
    first = _day(told.first, day)
    known = replace(
        told,
        beds=_all_read(beds, read_bed_line, BED_EXAMPLE, problems),
        wants=[
            *_all_read(wants, read_want_line, WANT_EXAMPLE, problems),
            *read_eaten(*eaten),
        ],
        last_spring_freeze=_freeze(told.last_spring_freeze),
        first_fall_freeze=_freeze(told.first_fall_freeze),
        first=first,
        last=_day(told.last, read_day_words(first or "", day) or day),
    )
    problems += _unclear(known.wants)
    if garden_days is not None:
        known.garden_days = read_weekdays(garden_days)
        if known.garden_days is None:
            problems.append(_not_understood(garden_days, "Wed, Sat"))
    if place is not None:
        found = _only_station(place)
        if isinstance(found, Problem):
            problems.append(found)
        else:
            known.station = found.id
    if problems:
        refuse(*problems)
    return _with_latitude(known)


def _freeze(words: str | None) -> str | None:
    """Words of the year as a plan has them; what is not understood stays, and is told as such."""
    return (read_month_words(words) or words) if words else None


def _day(words: str | None, since: date) -> str | None:
    """A day as a plan has it; what is not understood stays, and is told as such."""
    return str(read_day_words(words, since) or words) if words else None


def _unclear(wants: Iterable[NewWant]) -> Iterator[Problem]:
    """A problem for each name that may be more than one crop."""
    for one in wants:
        if len(crops_meant(one.crop)) > 1:
            wrong = f'"{one.crop}" may be more than one crop.'
            yield Problem("unknown-crop", OPTIONS, wrong, what_to_write(one.crop, ""))


def _with_latitude(known: StartAnswers) -> StartAnswers:
    """A station knows its latitude."""
    found = station_of(known.station) if known.station else None
    if known.latitude is None and found is not None:
        return replace(known, latitude=round(found.latitude_deg, 1))
    return known


def _all_read(
    lines: Iterable[str], read: Callable[[str], T | None], example: str, problems: list[Problem]
) -> list[T]:
    found = []
    for line in lines:
        one = read(line)
        if one is None:
            problems.append(_not_understood(line, example))
        else:
            found.append(one)
    return found


def _not_understood(words: str, example: str) -> Problem:
    wrong = f'"{words}" cannot be understood.'
    return Problem("bad-quantity", OPTIONS, wrong, f'write it like "{example}".')


def _only_station(words: str) -> Station | Problem:
    """The one station meant: the nearest to a place, or the only one of a name."""
    found = stations_at(words) if words.strip() else []
    if not found:
        return Problem(
            "nothing-found",
            Place("--place"),
            f'No weather station is known near "{words}".',
            "name a larger town nearby, or give --latitude, --last-spring-freeze and "
            "--first-fall-freeze.",
        )
    first = found[0]
    if isinstance(first, NearStation):
        return first.station
    named = [one for one in found if isinstance(one, Station)]
    if len(named) == 1:
        return first
    listed = ", ".join(f"{one.id} ({one.name}, {one.state})" for one in named[:_MOST_NAMED])
    more = ", ..." if len(named) > _MOST_NAMED else ""
    return Problem(
        "not-a-place",
        Place("--place"),
        f'"{words}" may be {listed}{more}.',
        "name one of them with --station.",
    )
