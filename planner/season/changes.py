"""Changes: what a new season does differently from the one before it, and what that costs."""

from dataclasses import dataclass
from datetime import date

from planner.garden import Garden
from planner.scheduling import Sowing, SowingState, supply_of
from planner.terms import Week, week_of

_NOTHING = 1e-6


@dataclass(frozen=True, slots=True)
class Changed:
    """A sowing as it was and as it is now."""

    was: Sowing
    now: Sowing


@dataclass(frozen=True, slots=True)
class WeekChange:
    """How much more of a crop a week is to have than before, below 0 where it has less."""

    crop: str
    week: Week
    amount: float


@dataclass(frozen=True, slots=True)
class Changes:
    """What changed from one season to the next.

    `begun`: sowings that stand and go on other than was planned; `missed`, never begun; `lost`;
    `moved`, `resized`: not begun, at other dates or elsewhere or larger or smaller; `dropped`;
    `added`. `weeks`: what that brings or costs the weeks to come, as far as they want it.
    `compared` is whether there was a season before at all.
    """

    begun: tuple[Changed, ...] = ()
    missed: tuple[Sowing, ...] = ()
    lost: tuple[Sowing, ...] = ()
    moved: tuple[Changed, ...] = ()
    resized: tuple[Changed, ...] = ()
    dropped: tuple[Sowing, ...] = ()
    added: tuple[Sowing, ...] = ()
    weeks: tuple[WeekChange, ...] = ()
    compared: bool = False


def changes_between(
    garden: Garden,
    as_of: date,
    before: tuple[Sowing, ...],
    now: tuple[Sowing, ...],
    missed: tuple[Sowing, ...],
) -> Changes:
    """What changed between the sowings of two seasons; nothing where there was none before."""
    if not before:
        return Changes()
    old = {one.id: one for one in before}
    new = {one.id: one for one in now}
    both = [Changed(old[name], one) for name, one in new.items() if name in old]
    begun = [one for one in both if one.now.state is not SowingState.PLANNED]
    planned = [one for one in both if one.now.state is SowingState.PLANNED]
    moved = [one for one in planned if _dates(one.was) != _dates(one.now)]
    same_days = [one for one in planned if one not in moved]
    gone = {one.id for one in missed}
    return Changes(
        begun=tuple(one for one in begun if _goes_on_otherwise(one)),
        missed=missed,
        lost=tuple(
            one.now
            for one in begun
            if one.now.state is SowingState.LOST and one.was.state is not SowingState.LOST
        ),
        moved=tuple(moved),
        resized=tuple(one for one in same_days if _ground(one.was) != _ground(one.now)),
        dropped=tuple(
            one
            for name, one in old.items()
            if name not in new and name not in gone and one.sow_on >= as_of
        ),
        added=tuple(one for name, one in new.items() if name not in old),
        weeks=tuple(_weeks(garden, as_of, before, now)),
        compared=True,
    )


def _dates(one: Sowing) -> tuple[date, date | None, date]:
    return one.sow_on, one.set_out_on, one.clear_on


def _ground(one: Sowing) -> tuple[object, ...]:
    return one.plants, tuple((block.bed, block.from_um, block.to_um) for block in one.blocks)


def _goes_on_otherwise(one: Changed) -> bool:
    return one.now.state is SowingState.BEGUN and (
        _dates(one.was) != _dates(one.now) or one.was.ripe.likely != one.now.ripe.likely
    )


def _weeks(
    garden: Garden, as_of: date, before: tuple[Sowing, ...], now: tuple[Sowing, ...]
) -> list[WeekChange]:
    """What each week to come has more or less of what it wants."""
    found = []
    for name, wants in garden.wants().items():
        was, is_now = _met(name, before, wants), _met(name, now, wants)
        found += [
            WeekChange(name, week, is_now[week] - was[week])
            for week in wants
            if week >= week_of(as_of) and abs(is_now[week] - was[week]) > _NOTHING
        ]
    return found


def _met(name: str, sowings: tuple[Sowing, ...], wants: dict[Week, float]) -> dict[Week, float]:
    mine = [one for one in sowings if one.crop.name == name]
    expected = supply_of(mine, wants).expected
    return {week: min(want, expected.get(week, 0.0)) for week, want in wants.items()}
