"""Names of sowings: crop and running number, given once and never used again (rules §17)."""

from collections.abc import Container, Mapping
from dataclasses import replace
from datetime import date

from planner.scheduling.sowing import Sowing

NamesGiven = Mapping[str, int]
_SAME_DAYS = 21


def name_sowings(
    sowings: tuple[Sowing, ...], earlier: tuple[Sowing, ...], given: NamesGiven
) -> tuple[tuple[Sowing, ...], dict[str, int]]:
    """Give every sowing its name; the same sowing of an earlier season keeps the one it had.

    `earlier` are those that could still move, and `given` is the highest number ever given to
    each crop. Returns the sowings in order of starting day, and the numbers given now.
    """
    numbers = dict(given)
    for sowing in (*earlier, *sowings):
        if sowing.id:
            crop, number = _parts(sowing.id)
            numbers[crop] = max(numbers.get(crop, 0), number)
    kept = {sowing.id for sowing in sowings if sowing.id}
    free = [sowing for sowing in earlier if sowing.id not in kept]
    in_order = sorted(sowings, key=lambda one: (one.sow_on, one.enters_on, one.crop.name))
    in_order = [_kept_name(sowing, free, 0, {sowing.clear_on}) for sowing in in_order]
    for days in (0, _SAME_DAYS):
        in_order = [_kept_name(sowing, free, days) for sowing in in_order]
    named = []
    for sowing in in_order:
        name = sowing.id
        if not name:
            numbers[sowing.crop.name] = numbers.get(sowing.crop.name, 0) + 1
            name = f"{sowing.crop.name} {numbers[sowing.crop.name]}"
        named.append(replace(sowing, id=name, mark=""))
    by_mark = {old.mark: new.id for old, new in zip(in_order, named, strict=True) if old.mark}
    return tuple(_with_hosts(one, by_mark) for one in named), numbers


def _with_hosts(sowing: Sowing, by_mark: Mapping[str, str]) -> Sowing:
    """A guest, under its host's name rather than its mark."""
    if not any(block.under in by_mark for block in sowing.blocks):
        return sowing
    blocks = tuple(
        replace(block, under=by_mark.get(block.under, block.under)) for block in sowing.blocks
    )
    return replace(sowing, blocks=blocks)


def _kept_name(
    sowing: Sowing, free: list[Sowing], days: int, cleared: Container[date] | None = None
) -> Sowing:
    """The sowing under the name of the earlier one it continues, if there is such a one.

    It continues an earlier one of the same crop and method started at most `days` apart, cleared
    on one of certain days where these are told.
    """
    if sowing.id:
        return sowing
    alike = [
        one
        for one in free
        if one.crop.name == sowing.crop.name
        and one.method == sowing.method
        and abs((one.sow_on - sowing.sow_on).days) <= days
        and (cleared is None or one.clear_on in cleared)
    ]
    if not alike:
        return sowing
    nearest = min(
        alike,
        key=lambda one: (
            abs((one.sow_on - sowing.sow_on).days),
            abs((one.clear_on - sowing.clear_on).days),
        ),
    )
    free.remove(nearest)
    return replace(sowing, id=nearest.id)


def _parts(name: str) -> tuple[str, int]:
    crop, _, number = name.rpartition(" ")
    return crop, int(number)
