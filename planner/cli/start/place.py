"""The question where a garden is: by a weather station's name or place, or by freeze dates."""

import re
from collections.abc import Sequence
from dataclasses import replace

from planner.almanac import (
    NearStation,
    Station,
    nearest_stations,
    station,
    station_names,
    stations_named,
)
from planner.cli.start.answers import StartAnswers
from planner.cli.start.dialogue import GoBack, ask, say
from planner.cli.start.words import month_day_words, read_month_words
from planner.cli.station_words import (
    has_no_letter,
    no_dates_words,
    place_words,
    read_place,
    station_of,
)
from planner.garden import FreezeDates
from planner.reading import nearest_word

_SHOWN = 8
_NEAREST = 5
# Beyond this no station speaks for a garden: common practice, no source.
_FARTHEST_KM = 80.0
_SOUTHERNMOST, _NORTHERNMOST = -66.0, 70.0
_WHERE = (
    "When it freezes decides what can be sown when. A weather station near you knows: type the "
    "name of your town, or of a larger one near it, with the state if you like (portland or); no "
    "postcode. Latitude and longitude work too (45.5 -122.7; south and west negative). The "
    "stations are in the United States. Elsewhere, or where none is near, press Enter: then you "
    "are asked for the months."
)
_SPRING = (
    "Spring's last freeze, in a usual year: half of all years still freeze after it. Neighbours "
    "who garden, a farmers' market or an extension office know it. A month is near enough to "
    "begin with: mid May. It can be corrected later. never, where it never freezes."
)


def ask_place(known: StartAnswers) -> StartAnswers:
    """The answers with freeze dates, and with a latitude."""
    found = None if known.knows_freezes else _ask_station()
    if found is not None:
        latitude = known.latitude if known.latitude is not None else round(found.latitude_deg, 1)
        return replace(known, station=found.id, latitude=latitude)
    if known.latitude is None:
        known = replace(known, latitude=_ask_latitude())
    return known if known.knows_freezes else _ask_freezes(known)


def _ask_station() -> Station | None:
    """The station the grower takes; None where there is none to take."""
    question = "Where is the garden? (a town in the United States; Enter for anywhere else)"
    while True:
        words = ask(question, str, "a place", usual="", explained=_WHERE)
        if not words:
            return None
        found = stations_at(words)
        if not found:
            say(_no_station(words), "  ")
            continue
        try:
            taken = _ask_which(found)
        except GoBack:
            continue
        if taken is not None:
            return taken


def _ask_which(found: Sequence[Station | NearStation]) -> Station | None:
    """One of the stations found, or None to look for another."""
    shown = found[:_SHOWN]
    for number, one in enumerate(shown, 1):
        say(f"{number}  {_described(one)}", "  ")
    if len(found) > len(shown):
        say(f"... and {len(found) - len(shown)} more: add the state, or more of the name.", "  ")
    question = "Which of them lies most like your garden? (its number; 0 for another place)"
    explained = (
        "Take the nearest of about your height: a hill or a hollow freezes later in spring than "
        "a town by the water."
    )
    numbers = {str(number): number for number in range(len(shown) + 1)}
    expected = f"a number from 0 to {len(shown)}"
    chosen = ask(question, numbers.get, expected, usual="1", explained=explained)
    return station_of(shown[chosen - 1]) if chosen else None


def stations_at(words: str) -> Sequence[Station | NearStation]:
    """Stations by id, near a latitude and longitude, or by name; those that bear it first."""
    by_id = station(words)
    if by_id is not None:
        return [by_id]
    if has_no_letter(words):
        place = read_place(words)
        near = nearest_stations(*place, _NEAREST) if place else ()
        return [one for one in near if one.distance_km <= _FARTHEST_KM]
    wanted = words.upper().replace(",", " ").split()
    return sorted(stations_named(" ".join(wanted)), key=lambda one: _strangeness(one, wanted))


def _strangeness(one: Station, wanted: list[str]) -> tuple[bool, bool, str, str]:
    whole = set(re.split(r"\W+", f"{one.name} {one.state}"))
    has_all = all(word in whole for word in wanted)
    return (not has_all, not one.name.startswith(wanted[0]), one.name, one.id)


def _described(found: Station | NearStation) -> str:
    one = station_of(found)
    return f"{one.name}, {one.state}, {place_words(found)}: {freezes_words(one)}"


def freezes_words(one: Station) -> str:
    """When it freezes at a station, in a usual year."""
    freezes = one.freezes
    if isinstance(freezes, FreezeDates):
        return frost_free(str(freezes.last_spring.half), str(freezes.first_fall.half))
    return no_dates_words(one)


def frost_free(spring: str, fall: str) -> str:
    """The usual time without frost between two days of the year."""
    return f"usually frost-free {month_day_words(spring)} to {month_day_words(fall)}"


def _no_station(words: str) -> str:
    if has_no_letter(words) and read_place(words) is None:
        return f'"{words}" is no place that is known: postcodes are not. Type the name of a town.'
    near = nearest_word(words, station_names())
    hint = f'Perhaps "{near.title()}".' if near else "Try a larger town nearby."
    return f'No weather station near "{words}" is known. {hint} Or press Enter.'


def _ask_latitude() -> float:
    return ask(
        "How far north is it? (latitude in degrees, such as 47.6; negative in the south)",
        _latitude,
        f"a number between {_SOUTHERNMOST:.0f} and {_NORTHERNMOST:.0f}",
        explained="It tells how long the days are. Maps on a phone show it: the first of the two "
        "numbers of a place. A whole number is near enough.",
    )


def _latitude(words: str) -> float | None:
    match = re.fullmatch(r"(-?\d+(?:\.\d+)?)\s*°?\s*([nNsS]?)", words)
    if match is None:
        return None
    degrees = float(match[1]) * (-1 if match[2] in {"s", "S"} else 1)
    return degrees if _SOUTHERNMOST <= degrees <= _NORTHERNMOST else None


def _ask_freezes(known: StartAnswers) -> StartAnswers:
    expected = "a time of the year, such as mid May, 10 May or 05-10"
    spring = ask(
        "When is the last freeze of spring, in a usual year? (such as mid May)",
        read_month_words,
        expected,
        explained=_SPRING,
    )
    fall = spring
    if spring != "never":
        fall = ask(
            "And the first freeze of fall? (such as early October)",
            read_month_words,
            expected,
            explained="Half of all years have frozen by then.",
        )
        say(f"Taken as {month_day_words(spring)} and {month_day_words(fall)}.", "  ")
    return replace(known, last_spring_freeze=spring, first_fall_freeze=fall)
