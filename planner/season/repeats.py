"""Repeats: sowings that follow a crop of their own family in the same ground (rules §34)."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import combinations

from planner.garden import Garden
from planner.scheduling import Block, Sowing

_REST = timedelta(days=365)


@dataclass(frozen=True, slots=True)
class Repeat:
    """A sowing that stands where `after`, of the same family, stood less than a year before."""

    sowing: str
    after: str
    bed: str


@dataclass(frozen=True, slots=True)
class _Stay:
    name: str
    family: str
    from_um: int
    to_um: int
    enter_on: date
    leave_on: date


def repeats_of(garden: Garden, sowings: tuple[Sowing, ...]) -> tuple[Repeat, ...]:
    """Every sowing that comes too soon after its own family, once, in order of entering."""
    found: dict[str, Repeat] = {}
    for bed, stays in _stays(garden, sowings).items():
        for before, after in combinations(sorted(stays, key=lambda one: one.enter_on), 2):
            if _too_soon(before, after):
                found.setdefault(after.name, Repeat(after.name, before.name, bed))
    order = {one.id: place for place, one in enumerate(sowings)}
    return tuple(sorted(found.values(), key=lambda one: order.get(one.sowing, -1)))


def _stays(garden: Garden, sowings: tuple[Sowing, ...]) -> dict[str, list[_Stay]]:
    stays: dict[str, list[_Stay]] = defaultdict(list)
    for kept in garden.kept:
        stay = _Stay(kept.what, kept.family, kept.from_um, kept.to_um, kept.first, kept.last)
        stays[kept.bed].append(stay)
    for bed, stay in _planted(sowings):
        stays[bed].append(stay)
    return stays


def _planted(sowings: tuple[Sowing, ...]) -> Iterator[tuple[str, _Stay]]:
    for sowing in sowings:
        for block in sowing.blocks:
            yield block.bed, _stay(sowing, block)


def _stay(sowing: Sowing, block: Block) -> _Stay:
    return _Stay(
        sowing.id,
        sowing.crop.family.text,
        block.from_um,
        block.to_um,
        block.enter_on,
        block.leave_on,
    )


def _too_soon(before: _Stay, after: _Stay) -> bool:
    return (
        before.family == after.family != ""
        and before.name != after.name
        and before.from_um < after.to_um
        and after.from_um < before.to_um
        and before.leave_on <= after.enter_on < before.leave_on + _REST
    )
