"""`planner bedwork`: what the beds take: soil, compost, water, seed; and the cautions."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from planner.bedwork import (
    appetites_of,
    away_work_of,
    cautions_of,
    fillings_of,
    manure_checks,
    order_of,
    proposal_of,
    seed_of,
    tight_depths,
    turnovers_of,
    water_of,
)
from planner.cli.folder import (
    earlier_season_in,
    garden_in,
    need_record,
    planned_on,
    portions_in,
    record_in,
)
from planner.cli.option_values import need_people
from planner.cli.screen import columns
from planner.cli.shell import FolderOrHere, JsonOption, command_line, need, print_json
from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Sowing


class Part(StrEnum):
    """The parts of bed work, in the order they are shown."""

    FILLING = "filling"
    TURNOVER = "turnover"
    MANURE = "manure"
    WATER = "water"
    AWAY = "away"
    SEED = "seed"
    APPETITE = "appetite"


_NEEDS_NO_SEASON = frozenset({Part.FILLING, Part.APPETITE})


@dataclass(frozen=True, slots=True)
class _Desk:
    """What the parts are worked out from."""

    garden: Garden
    sowings: tuple[Sowing, ...]
    as_of: date
    width: int
    folder: Path
    people: float | None


@dataclass(frozen=True, slots=True)
class _Said:
    """A part in words and as plain values for another program."""

    head: str
    text: str
    record: object


def bedwork(
    folder: FolderOrHere = ".",
    part: Annotated[
        Part | None, typer.Option("--part", help="Only this part.", show_default=False)
    ] = None,
    people: Annotated[
        float | None,
        typer.Option(
            metavar="NUMBER",
            help="Also propose targets that would feed so many people, to paste into garden.toml.",
            show_default=False,
        ),
    ] = None,
    json: JsonOption = False,
) -> None:
    """Tell what the beds take: soil for new ones, compost, water, seed, and what to take care of.

    What rests on sowings needs a season; make one first with planner schedule.

    Example: planner bedwork my-garden --part filling
    """
    if people is not None:
        need_people(people)
    path = Path(folder)
    garden = need(garden_in(path))
    sowings, as_of = _planned(path, garden, part)
    width = columns()
    desk = _Desk(garden, sowings or (), as_of, width, path, people)
    parts = [one for one in _wanted(part) if sowings is not None or one in _NEEDS_NO_SEASON]
    said = {one: _SAID[one](desk) for one in parts}
    from planner.writing import cautions_record, cautions_text  # noqa: PLC0415 - heavy

    cautions = cautions_of(garden, [one.value for one in parts])
    if json:
        told = [caution for one in parts for caution in cautions[one.value]]
        records = {one.value: said[one].record for one in parts}
        print_json({**records, "cautions": cautions_record(told)})
        return
    texts: list[str] = []
    for one in parts:
        care = cautions_text(cautions[one.value], width)
        texts += filter(None, [said[one].head, said[one].text, care])
    if sowings is None and part is None:
        texts.append(f"The rest needs a season; make one with: {command_line('schedule', path)}")
    print("\n\n".join(texts))


def _wanted(part: Part | None) -> Iterator[Part]:
    return (one for one in Part if part in {None, one})


def _planned(
    folder: Path, garden: Garden, part: Part | None
) -> tuple[tuple[Sowing, ...] | None, date]:
    """The sowings of the season, and the day they were planned as seen on.

    None for sowings where there is no season and none is needed.
    """
    needs_none = part is None or part in _NEEDS_NO_SEASON
    record = need(record_in(folder)) if needs_none else need_record(folder)
    if record is None:
        return None, garden.wish.first
    as_of = planned_on(record)
    season = need(earlier_season_in(folder, garden, as_of))
    return season.sowings if season else (), as_of


def _filling(desk: _Desk) -> _Said:
    from planner.writing import filling_record, filling_text  # noqa: PLC0415 - heavy

    garden = desk.garden
    fillings = fillings_of(garden, desk.sowings)
    order = order_of(garden.soil, fillings)
    tight = tight_depths(garden, desk.sowings)
    text = filling_text(garden, fillings, order, tight, desk.width)
    return _Said("Filling new beds", text, filling_record(fillings, order, tight))


def _turnover(desk: _Desk) -> _Said:
    from planner.writing import turnover_record, turnover_text  # noqa: PLC0415 - heavy

    turnovers = turnovers_of(desk.garden, desk.sowings)
    text = turnover_text(desk.garden, turnovers, desk.width)
    return _Said("Turnover", text, turnover_record(desk.garden, turnovers))


def _manure(desk: _Desk) -> _Said:
    from planner.writing import manure_record, manure_text  # noqa: PLC0415 - heavy

    checks = manure_checks(desk.garden, desk.sowings)
    return _Said("Raw manure", manure_text(desk.garden, checks, desk.width), manure_record(checks))


def _water(desk: _Desk) -> _Said:
    from planner.writing import water_record, water_text  # noqa: PLC0415 - heavy

    water = water_of(desk.garden, Climate(desk.garden.site), desk.sowings)
    return _Said("Water", water_text(water, desk.width), water_record(water))


def _away(desk: _Desk) -> _Said:
    from planner.writing import away_record, away_text  # noqa: PLC0415 - heavy

    water = water_of(desk.garden, Climate(desk.garden.site), desk.sowings)
    times = away_work_of(water, desk.sowings, desk.as_of)
    text = away_text(times, desk.garden.beds[0].note.unit, desk.width)
    return _Said("For whoever waters while you are away", text, away_record(times))


def _seed(desk: _Desk) -> _Said:
    from planner.writing import seed_record, seed_text  # noqa: PLC0415 - heavy

    seed = seed_of(desk.garden, desk.sowings, desk.as_of)
    return _Said("Seed to order", seed_text(seed, desk.width), seed_record(seed))


def _appetite(desk: _Desk) -> _Said:
    from planner.writing import (  # noqa: PLC0415 - heavy
        appetite_record,
        appetite_text,
        proposal_record,
        proposal_text,
    )

    portions = portions_in(desk.folder)
    appetites = appetites_of(desk.garden, portions)
    text, record = appetite_text(appetites, desk.width), {"wanted": appetite_record(appetites)}
    if desk.people is None:
        hint = "Targets that would feed a household from these beds: add --people 4"
        return _Said("Appetite", f"{text}\n\n{hint}", record)
    climate = Climate(desk.garden.site)
    proposal = proposal_of(desk.garden, climate, portions, desk.people, desk.garden.wish.first)
    told = f"{text}\n\nTo paste into garden.toml, in place of targets there:\n\n"
    record_too = {**record, "proposal": proposal_record(proposal)}
    return _Said("Appetite", f"{told}{proposal_text(proposal)}", record_too)


_SAID: dict[Part, Callable[[_Desk], _Said]] = {
    Part.FILLING: _filling,
    Part.TURNOVER: _turnover,
    Part.MANURE: _manure,
    Part.WATER: _water,
    Part.AWAY: _away,
    Part.SEED: _seed,
    Part.APPETITE: _appetite,
}
