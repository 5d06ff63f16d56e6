"""Shared gaps: stretches under a host in which a guest may stand (rules §30)."""

from collections.abc import Iterator

from planner.garden import SharedGround, SharingPattern
from planner.ground.gap import Gap
from planner.ground.ground import Ground, Holding


def shared_gaps(
    ground: Ground, bed: int, host: Holding, pair: SharedGround, span: tuple[int, int]
) -> list[Gap]:
    """Every stretch under a host that is free for a guest of the pair over a span.

    Under a host about to end the ground must be free from the day it leaves, too; a guest in a
    span that begins in its turnover comes too late.
    """
    if not _allowed(host, pair, span, ground.rest_days):
        return []
    return list(_free_under(ground, bed, host, span))


def _allowed(host: Holding, pair: SharedGround, span: tuple[int, int], rest_days: int) -> bool:
    enters, leaves = span
    cleared = host.leaves - rest_days
    match pair.pattern:
        case SharingPattern.BETWEEN:
            closes = host.enters + int(pair.closes_at * (cleared - host.enters))
            return host.enters <= enters and leaves <= closes
        case SharingPattern.BENEATH:
            return host.enters <= enters and leaves <= host.leaves
        case SharingPattern.RELAY:
            begins = max(host.enters, cleared - pair.relay_days)
            return begins <= enters < cleared < leaves - rest_days


def _free_under(ground: Ground, bed: int, host: Holding, span: tuple[int, int]) -> Iterator[Gap]:
    """The parts of the host's stretch that nobody but the host holds over the span."""
    enters, leaves = span
    taken = sorted(
        (max(one.from_um, host.from_um), min(one.to_um, host.to_um))
        for one in ground.held[bed]
        if one != host
        and one.enters < leaves
        and enters < one.leaves
        and one.from_um < host.to_um
        and host.from_um < one.to_um
    )
    reached = host.from_um
    for from_um, to_um in [*taken, (host.to_um, host.to_um)]:
        if from_um > reached:
            yield Gap(bed, reached, from_um, None, None, host.holder)
        reached = max(reached, to_um)
