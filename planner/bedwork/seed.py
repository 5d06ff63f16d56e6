"""Seed: how much to have, how much to buy, and by when (§51)."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Crop, Garden, SeedKind, StartFrom
from planner.scheduling import Method, Sowing, SowingState, comes_up_in, is_usable
from planner.terms import days_between


@dataclass(frozen=True, slots=True)
class SeedNeed:
    """A crop's seed for all that is still to be sown.

    `plants` are wanted from `seeds`; `in_box` is what the box has that is still worth sowing, and
    `too_old` what it has that is not. `to_buy` seeds are lacking, in so many `packets`: 0 where
    the size of a packet is not told. `order_by` is `lead_weeks` before the first use of what is to
    be bought.
    """

    crop: Crop
    kind: SeedKind
    plants: int
    seeds: int
    comes_up: float
    in_box: int
    too_old: int
    to_buy: int
    packets: int
    first_on: date
    order_by: date

    @property
    def is_seed(self) -> bool:
        """Whether it is seed; cloves, sets, tubers and slips are each one plant."""
        return self.crop.start_from is StartFrom.SEED


@dataclass(frozen=True, slots=True)
class Trays:
    """The most cells that are in use on one day, in so many trays, and the first such day."""

    cells: int
    trays: int
    on: date


@dataclass(frozen=True, slots=True)
class NoTrays:
    """Nothing is still to be started indoors."""


@dataclass(frozen=True, slots=True)
class Seed:
    """Seed of a season: each crop's need in order of the day to order it, and trays."""

    garden: Garden
    as_of: date
    needs: tuple[SeedNeed, ...]
    trays: Trays | NoTrays


def seed_of(garden: Garden, sowings: Sequence[Sowing], as_of: date) -> Seed:
    """What seed is needed for the sowings that are still to be begun."""
    ahead = [one for one in sowings if one.state is SowingState.PLANNED]
    by_crop: dict[str, list[Sowing]] = defaultdict(list)
    for one in sorted(ahead, key=lambda one: (one.sow_on, one.id)):
        by_crop[one.crop.name].append(one)
    needs = (_need(garden, of_crop) for of_crop in by_crop.values())
    in_order = sorted(needs, key=lambda one: (one.order_by, one.crop.name))
    return Seed(garden, as_of, tuple(in_order), trays_of(ahead, garden.seed.tray_cells))


def _need(garden: Garden, sowings: Sequence[Sowing]) -> SeedNeed:
    """The need of one crop's sowings, in order of their days."""
    crop, wish = sowings[0].crop, garden.seed
    kind = wish.kinds[crop.name]
    year = sowings[0].sow_on.year
    usable = is_usable(kind, year)
    in_box = kind.in_box if usable else 0
    seeds = sum(one.seeds for one in sowings)
    to_buy = max(0, seeds - in_box)
    first_on = _first_bought(sowings, in_box)
    return SeedNeed(
        crop=crop,
        kind=kind,
        plants=sum(one.plants for one in sowings),
        seeds=seeds,
        comes_up=comes_up_in(kind, year),
        in_box=in_box,
        too_old=0 if usable else kind.in_box,
        to_buy=to_buy,
        packets=math.ceil(to_buy / kind.packet) if kind.packet else 0,
        first_on=first_on,
        order_by=first_on - timedelta(weeks=wish.lead_weeks),
    )


def _first_bought(sowings: Sequence[Sowing], in_box: int) -> date:
    """The day of the first sowing that the box does not fill; the first of all when it does."""
    left = in_box
    for one in sowings:
        left -= one.seeds
        if left < 0:
            return one.sow_on
    return sowings[0].sow_on


def trays_of(sowings: Sequence[Sowing], tray_cells: int) -> Trays | NoTrays:
    """The day on which most cells are in use, one seed to a cell; of equals the first."""
    indoors = [one for one in sowings if one.method is Method.INDOORS]
    cells: dict[date, int] = defaultdict(int)
    for one in indoors:
        for day in _indoor_days(one):
            cells[day] += one.seeds
    if not cells:
        return NoTrays()
    most = max(cells.values())
    on = min(day for day, count in cells.items() if count == most)
    return Trays(most, math.ceil(most / tray_cells), on)


def _indoor_days(one: Sowing) -> Iterator[date]:
    """The days from sowing indoors to the day before setting out."""
    return days_between(one.sow_on, (one.set_out_on or one.sow_on) - timedelta(days=1))
