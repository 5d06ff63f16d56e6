"""Stands: what holds ground in a bed and from when to when, as the pictures need it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Bed, Garden, KeptGround
from planner.scheduling import Block, Sowing, SowingState
from planner.season import Season
from planner.terms import MONTHS, date_words, day_words, length_words

_A_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Stand:
    """A stretch of a bed's line held by a sowing, or kept, from one day to another.

    `holder` is the sowing, or what is kept; `name` is what is written on it.
    `host` is the sowing it stands under, empty on ground of its own. From `picked_from` up to
    `picked_until` it is harvested; the two are equal where nothing is. What is harvested on the
    day it leaves is drawn as harvested the day before, the last on which it stands.
    """

    holder: str
    name: str
    said: str
    family: str
    is_kept: bool
    from_um: int
    to_um: int
    enter_on: date
    leave_on: date
    picked_from: date
    picked_until: date
    host: str = ""

    @property
    def is_picked(self) -> bool:
        """Whether anything is harvested from it."""
        return self.picked_from < self.picked_until


def bed_named(garden: Garden, name: str) -> Bed:
    """The bed of that name; KeyError where there is none."""
    return {bed.name: bed for bed in garden.beds}[name]


def stands_in(season: Season, bed: Bed) -> tuple[Stand, ...]:
    """Everything that ever stands in a bed: kept ground, hosts, then their guests."""
    kept = [_kept(one, bed) for one in season.garden.kept if one.bed == bed.name]
    planted = [
        _planted(sowing, block, bed)
        for sowing in season.sowings
        for block in sowing.blocks
        if block.bed == bed.name
    ]
    return (*kept, *sorted(planted, key=lambda one: bool(one.host)))


def guests_of(host: Stand, stands: Sequence[Stand]) -> list[Stand]:
    """Those that stand under a host, on this stretch of its ground."""
    return [
        one
        for one in stands
        if one.host == host.holder and host.from_um < one.to_um and one.from_um < host.to_um
    ]


def _kept(one: KeptGround, bed: Bed) -> Stand:
    said = f"{one.what}, kept: {bed.stretch_words(one.from_um, one.to_um)}"
    return Stand(
        holder=one.what,
        name=one.what,
        said=said,
        family=one.family,
        is_kept=True,
        from_um=one.from_um,
        to_um=one.to_um,
        enter_on=one.first,
        leave_on=one.last,
        picked_from=one.last,
        picked_until=one.last,
    )


def _planted(sowing: Sowing, block: Block, bed: Bed) -> Stand:
    first, after = _picked(sowing, block)
    lost = ", lost" if sowing.state is SowingState.LOST else ""
    under = f", under {block.under}" if block.under else ""
    said = (
        f"{sowing.id}{lost}: {bed.stretch_words(block.from_um, block.to_um)}{under}, "
        f"{span_words(block.enter_on, block.leave_on)}{_harvested(sowing)}"
    )
    return Stand(
        holder=sowing.id,
        name=f"lost: {sowing.id}" if lost else sowing.id,
        said=said,
        family=sowing.crop.family.text,
        is_kept=False,
        from_um=block.from_um,
        to_um=block.to_um,
        enter_on=block.enter_on,
        leave_on=block.leave_on,
        picked_from=first,
        picked_until=after,
        host=block.under,
    )


def _picked(sowing: Sowing, block: Block) -> tuple[date, date]:
    """The days of a block from the first harvest up to the one after the last."""
    if not sowing.harvest:
        return block.leave_on, block.leave_on
    last_stood = block.leave_on - _A_DAY
    first = max(block.enter_on, min(sowing.harvest[0].day, last_stood))
    last = max(first, min(sowing.harvest[-1].day, last_stood))
    return first, min(last + _A_DAY, block.leave_on)


def _harvested(sowing: Sowing) -> str:
    """When it is harvested, as the end of a sentence."""
    if not sowing.harvest:
        return ""
    first, last = sowing.harvest[0].day, sowing.harvest[-1].day
    return f", harvested {span_words(first, last) if first < last else date_words(first)}"


def size_words(bed: Bed) -> str:
    """A bed's size like "8 ft by 4 ft" or "4 ft across"."""
    unit = bed.note.unit
    if bed.is_round:
        return f"round, {length_words(bed.width_um * 4, unit)} across"
    return f"{length_words(bed.line_um, unit)} by {length_words(bed.width_um, unit)}"


def span_words(first: date, last: date) -> str:
    """Two days like "3 March to 14 April 2027"."""
    begin = day_words(first) if first.year == last.year else date_words(first)
    return f"{begin} to {date_words(last)}"


def month_word(month: int) -> str:
    """A month's first three letters, January 1."""
    return MONTHS[month - 1][:3]
