"""`planner bedwork`: what the beds take: soil, compost, water, seed; and the cautions."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from planner.bedwork import fillings_of
from planner.cli.plan_folder import RECORD, earlier_season, need_garden, season_record
from planner.cli.season_folder import SEASON
from planner.cli.shell import FolderArgument, JsonOption, print_json, refuse
from planner.cli.week import need_record
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.season import season_unreadable

_LEAST_WIDTH = 40


class Part(StrEnum):
    """The parts of bed work, in the order they are shown."""

    FILLING = "filling"


_NEEDS_NO_SEASON = frozenset({Part.FILLING})


@dataclass(frozen=True, slots=True)
class _Desk:
    """What the parts are worked out from."""

    garden: Garden
    sowings: tuple[Sowing, ...]
    width: int


@dataclass(frozen=True, slots=True)
class _Said:
    """A part in words and as plain values for another program."""

    head: str
    text: str
    record: object


def bedwork(
    folder: FolderArgument,
    part: Annotated[
        Part | None, typer.Option("--part", help="Only this part.", show_default=False)
    ] = None,
    json: JsonOption = False,
) -> None:
    """Tell what the beds take: soil for new ones, compost, water, seed, and what to take care of.

    What rests on sowings needs a season; make one first with planner schedule.

    Example: planner bedwork my-garden --part filling
    """
    garden, sowings = _plan(folder, part)
    wide = max(_LEAST_WIDTH, shutil.get_terminal_size().columns)
    desk = _Desk(garden, sowings or (), wide)
    parts = [one for one in _wanted(part) if sowings is not None or one in _NEEDS_NO_SEASON]
    said = {one: _SAID[one](desk) for one in parts}
    if json:
        print_json({one.value: said[one].record for one in parts})
        return
    print("\n\n".join(f"{one.head}\n\n{one.text}" for one in said.values()))
    if sowings is None:
        print(f"\nThe rest needs a season; make one with: planner schedule {folder}")


def _wanted(part: Part | None) -> Iterator[Part]:
    return (one for one in Part if part in {None, one})


def _plan(folder: str, part: Part | None) -> tuple[Garden, tuple[Sowing, ...] | None]:
    """The garden, and its sowings; None for them where there is no season and none is needed."""
    path = Path(folder)
    garden = need_garden(path)
    if part is None or part in _NEEDS_NO_SEASON:
        record = season_record(path)
        if record is None:
            return garden, None
    else:
        record = need_record(path, folder)
    try:
        as_of = date.fromisoformat(record["as_of"])
    except (KeyError, TypeError, ValueError):
        refuse([season_unreadable(f"{SEASON}/{RECORD}", "It has no readable as_of.")])
    season = earlier_season(path, garden, as_of)
    return garden, season.sowings if season else ()


def _filling(desk: _Desk) -> _Said:
    from planner.writing import filling_record, filling_text  # noqa: PLC0415 - heavy

    fillings = fillings_of(desk.garden)
    return _Said("Filling new beds", filling_text(fillings, desk.width), filling_record(fillings))


_SAID: dict[Part, Callable[[_Desk], _Said]] = {Part.FILLING: _filling}
