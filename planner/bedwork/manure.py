"""Raw manure: whether it lay long enough before each harvest (§46)."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import EatenPart, Garden, Manure
from planner.scheduling import Sowing


@dataclass(frozen=True, slots=True)
class PickAfterManure:
    """The first harvest of a sowing after manure, and how long that must have lain."""

    sowing: str
    eaten_part: EatenPart
    on: date
    days: int
    needed_days: int
    from_on: date

    @property
    def is_too_early(self) -> bool:
        """Whether the manure has lain too few days by then."""
        return self.days < self.needed_days


@dataclass(frozen=True, slots=True)
class ManureCheck:
    """Manure in a bed against the first harvest of each sowing after it.

    From `touching_from` on may be picked what touches the soil, from `clear_from` on what does not.
    `unchecked` names what stands there on kept ground, whose harvests nobody plans.
    """

    manure: Manure
    touching_from: date
    clear_from: date
    picks: tuple[PickAfterManure, ...]
    unchecked: tuple[str, ...]

    @property
    def too_early(self) -> tuple[PickAfterManure, ...]:
        """The harvests for which it has not lain long enough."""
        return tuple(one for one in self.picks if one.is_too_early)


def manure_checks(garden: Garden, sowings: Sequence[Sowing]) -> tuple[ManureCheck, ...]:
    """A check for each time manure was or will be spread, in the order of the plan."""
    return tuple(_check(garden, manure, sowings) for manure in garden.soil.manure)


def needed_days(garden: Garden, eaten: EatenPart) -> int:
    """Days from working manure in to harvest; where nothing is known, those that are safe for all.

    7 CFR 205.203(c)(1): 120 where the part eaten touches soil or soil particles, else 90.
    """
    clear = eaten is EatenPart.CLEAR_OF_SOIL
    return round(garden.soil.middle("raw_manure_clear" if clear else "raw_manure_touching"))


def _check(garden: Garden, manure: Manure, sowings: Sequence[Sowing]) -> ManureCheck:
    picked = [
        (one, min(days))
        for one in sowings
        if any(block.bed == manure.bed for block in one.blocks)
        and (days := [taken.day for taken in one.harvest if taken.day >= manure.on])
    ]
    return ManureCheck(
        manure=manure,
        touching_from=may_be_picked_from(garden, manure, EatenPart.ON_SOIL),
        clear_from=may_be_picked_from(garden, manure, EatenPart.CLEAR_OF_SOIL),
        picks=tuple(_pick(garden, manure, sowing, on) for sowing, on in picked),
        unchecked=tuple(
            kept.what for kept in garden.kept if kept.bed == manure.bed and kept.last > manure.on
        ),
    )


def may_be_picked_from(garden: Garden, manure: Manure, eaten: EatenPart) -> date:
    """The first day on which manure has lain long enough for what is eaten there."""
    return manure.on + timedelta(days=needed_days(garden, eaten))


def _pick(garden: Garden, manure: Manure, sowing: Sowing, on: date) -> PickAfterManure:
    eaten = garden.soil.crops[sowing.crop.name].eaten_part
    return PickAfterManure(
        sowing=sowing.id,
        eaten_part=eaten,
        on=on,
        days=(on - manure.on).days,
        needed_days=needed_days(garden, eaten),
        from_on=may_be_picked_from(garden, manure, eaten),
    )
