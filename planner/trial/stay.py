"""Stays: until when a sowing that is late may still stand on its ground."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date, timedelta

from planner.garden import Garden
from planner.scheduling import Block, Sowing

_Stretch = tuple[int, int, date]


def stays_of(garden: Garden, sowings: tuple[Sowing, ...]) -> dict[str, date]:
    """By name, the day on which each sowing's ground is needed at the latest.

    That is when the next enters any of its ground (after the ground has rested), or the season
    ends. A guest gives up its host's ground when it was to.
    """
    entries = _entries(garden, sowings)
    by_name = {one.id: one for one in sowings}
    turnover = timedelta(days=garden.wish.turnover_days)
    stays = {}
    for one in sowings:
        needed = [garden.wish.last]
        for block in one.blocks:
            needed += [day - turnover for day in _following(block, entries[block.bed])]
            host = by_name.get(block.under)
            if host is not None and block.leave_on <= host.clear_on:
                needed.append(one.clear_on)
        stays[one.id] = max(one.clear_on, min(needed))
    return stays


def _entries(garden: Garden, sowings: tuple[Sowing, ...]) -> dict[str, list[_Stretch]]:
    entries: dict[str, list[_Stretch]] = defaultdict(list)
    for kept in garden.kept:
        entries[kept.bed].append((kept.from_um, kept.to_um, kept.first))
    for one in sowings:
        for block in one.blocks:
            entries[block.bed].append((block.from_um, block.to_um, block.enter_on))
    return entries


def _following(block: Block, entries: list[_Stretch]) -> Iterator[date]:
    for from_um, to_um, enter_on in entries:
        if enter_on >= block.leave_on and from_um < block.to_um and block.from_um < to_um:
            yield enter_on
