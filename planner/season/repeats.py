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
class _Stand:
    name: str
    family: str
    from_um: int
    to_um: int
    enter_on: date
    leave_on: date


def repeats_of(garden: Garden, sowings: tuple[Sowing, ...]) -> tuple[Repeat, ...]:
    """Every sowing that comes too soon after its own family, in order of the sowings.

    Each is told once, with the last of its family that stood there.
    """
    found: dict[str, Repeat] = {}
    for bed, stands in _stands(garden, sowings).items():
        for before, after in combinations(sorted(stands, key=lambda one: one.enter_on), 2):
            if _too_soon(before, after):
                found[after.name] = Repeat(after.name, before.name, bed)
    order = {one.id: place for place, one in enumerate(sowings)}
    return tuple(sorted(found.values(), key=lambda one: order.get(one.sowing, -1)))


def _stands(garden: Garden, sowings: tuple[Sowing, ...]) -> dict[str, list[_Stand]]:
    stands: dict[str, list[_Stand]] = defaultdict(list)
    for kept in garden.kept:
        stand = _Stand(kept.what, kept.family, kept.from_um, kept.to_um, kept.first, kept.last)
        stands[kept.bed].append(stand)
    for bed, stand in _planted(sowings):
        stands[bed].append(stand)
    return stands


def _planted(sowings: tuple[Sowing, ...]) -> Iterator[tuple[str, _Stand]]:
    for sowing in sowings:
        for block in sowing.blocks:
            yield block.bed, _stand(sowing, block)


def _stand(sowing: Sowing, block: Block) -> _Stand:
    return _Stand(
        sowing.id,
        sowing.crop.family.text,
        block.from_um,
        block.to_um,
        block.enter_on,
        block.leave_on,
    )


def _too_soon(before: _Stand, after: _Stand) -> bool:
    return (
        before.family == after.family != ""
        and before.name != after.name
        and before.from_um < after.to_um
        and after.from_um < before.to_um
        and before.leave_on <= after.enter_on < before.leave_on + _REST
    )
