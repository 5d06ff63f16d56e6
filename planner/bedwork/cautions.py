"""Cautions where they matter: in the part of bed work they belong to, and once (§47)."""

from collections.abc import Iterable

from planner.garden import Caution, CautionTime, Garden


def cautions_of(garden: Garden, parts: Iterable[str]) -> dict[str, tuple[Caution, ...]]:
    """The cautions to tell with each part of bed work, in the order of the almanac.

    A hazard that belongs to several of the parts is told with the first of them.
    """
    matters = {
        CautionTime.ALWAYS: True,
        CautionTime.NEW_BED: any(bed.is_new for bed in garden.beds),
        CautionTime.MANURE: bool(garden.soil.manure),
        CautionTime.CROP: True,
    }
    told: dict[str, str] = {}
    cautions: dict[str, tuple[Caution, ...]] = {}
    for part in parts:
        here = [one for one in garden.cautions if one.part == part and matters[one.time]]
        cautions[part] = tuple(one for one in here if told.setdefault(one.hazard, part) == part)
    return cautions
