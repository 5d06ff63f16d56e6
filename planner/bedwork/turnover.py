"""Turnover: what is done to the ground of a block when it is cleared (§45)."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from planner.garden import Bed, EatenPart, Garden
from planner.scheduling import Block, Sowing

_YEAR_DAYS = 365
_UM_PER_M = 1e6
_LITTLE_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Turnover:
    """A block cleared, and its ground dressed with compost for what follows.

    `pulled`: what is eaten comes out of the soil with its root; of all else the root stays.
    `held_back`: the year's ceiling leaves less than the usual depth. `running_mm`: compost at
    the fullest spot in the year up to that day, this dressing included.
    """

    on: date
    sowing: str
    bed: Bed
    from_um: int
    to_um: int
    depth_mm: float
    volume_l: float
    running_mm: float
    held_back: bool
    pulled: bool
    followers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CompostYear:
    """The compost a bed gets in a calendar year: in all, and its depth at the fullest spot.

    `full_on`: the first day on which the ceiling of any twelve months held some back; None where
    it never did.
    """

    bed: Bed
    year: int
    volume_l: float
    deepest_mm: float
    full_on: date | None


@dataclass(frozen=True, slots=True)
class _Dressing:
    on: date
    from_um: int
    to_um: int
    depth_mm: float


def turnovers_of(garden: Garden, sowings: Sequence[Sowing]) -> tuple[Turnover, ...]:
    """Every block's turnover, in order of day and place.

    Ground on which the host of a guest still stands, or is cleared the same day, is dressed with
    the host's.
    """
    beds = {bed.name: (place, bed) for place, bed in enumerate(garden.beds)}
    cleared = [
        (sowing.clear_on, *beds[block.bed], block, sowing)
        for sowing in sowings
        for block in sowing.blocks
        if not _host_outlasts(block, sowing, sowings)
    ]
    cleared.sort(key=lambda one: (one[0], one[1], one[3].from_um, one[4].id))
    given: dict[str, list[_Dressing]] = {bed.name: [] for bed in garden.beds}
    return tuple(
        _turnover(garden, bed, block, sowing, (given[bed.name], sowings))
        for _, _, bed, block, sowing in cleared
    )


def compost_years(garden: Garden, turnovers: Sequence[Turnover]) -> tuple[CompostYear, ...]:
    """What each bed gets in each year, in the order of the beds and then of the years."""
    by_year: dict[tuple[str, int], list[Turnover]] = defaultdict(list)
    for one in turnovers:
        by_year[one.bed.name, one.on.year].append(one)
    places = {bed.name: place for place, bed in enumerate(garden.beds)}
    return tuple(
        _compost_year(by_year[bed, year])
        for bed, year in sorted(by_year, key=lambda key: (places[key[0]], key[1]))
    )


def _turnover(
    garden: Garden,
    bed: Bed,
    block: Block,
    sowing: Sowing,
    known: tuple[list[_Dressing], Sequence[Sowing]],
) -> Turnover:
    given, sowings = known
    soil, on = garden.soil, sowing.clear_on
    usual_mm = soil.figures["top_dress"].low
    before_mm = _fullest([one for one in given if (on - one.on).days < _YEAR_DAYS], block)
    depth_mm = max(0.0, min(usual_mm, soil.middle("compost_a_year") - before_mm))
    given.append(_Dressing(on, block.from_um, block.to_um, depth_mm))
    area_m2 = (block.to_um - block.from_um) / _UM_PER_M * bed.width_um / _UM_PER_M
    return Turnover(
        on=on,
        sowing=sowing.id,
        bed=bed,
        from_um=block.from_um,
        to_um=block.to_um,
        depth_mm=depth_mm,
        volume_l=area_m2 * depth_mm,
        running_mm=before_mm + depth_mm,
        held_back=depth_mm < usual_mm - _LITTLE_MM,
        pulled=garden.soil.crops[sowing.crop.name].eaten_part is EatenPart.IN_SOIL,
        followers=tuple(_followers(block, sowing, sowings)),
    )


def _fullest(given: Sequence[_Dressing], block: Block | _Dressing) -> float:
    """The depth at the spot of a stretch that has most."""
    spots = {block.from_um, *(one.from_um for one in given)}
    return max(
        (
            math.fsum(one.depth_mm for one in given if one.from_um <= spot < one.to_um)
            for spot in spots
            if block.from_um <= spot < block.to_um
        ),
        default=0.0,
    )


def _host_outlasts(block: Block, guest: Sowing, sowings: Sequence[Sowing]) -> bool:
    return any(one.id == block.under and one.clear_on >= guest.clear_on for one in sowings)


def _followers(block: Block, sowing: Sowing, sowings: Sequence[Sowing]) -> Iterator[str]:
    """What enters next on any of a block's ground, each once, in order of entering."""
    later = sorted(
        (other.enter_on, one.id)
        for one in sowings
        for other in one.blocks
        if one.id != sowing.id
        and other.bed == block.bed
        and other.enter_on >= sowing.clear_on
        and other.from_um < block.to_um
        and block.from_um < other.to_um
    )
    first = later[0][0] if later else None
    yield from dict.fromkeys(name for on, name in later if on == first)


def _compost_year(turnovers: Sequence[Turnover]) -> CompostYear:
    first = turnovers[0]
    given = [_Dressing(one.on, one.from_um, one.to_um, one.depth_mm) for one in turnovers]
    return CompostYear(
        bed=first.bed,
        year=first.on.year,
        volume_l=math.fsum(one.volume_l for one in turnovers),
        deepest_mm=max(_fullest(given, one) for one in given),
        full_on=min((one.on for one in turnovers if one.held_back), default=None),
    )
