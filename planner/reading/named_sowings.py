"""The names of sowings a journal may speak of, and what the season says of them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType
from typing import Any

from planner.almanac import crop_page
from planner.garden import Crop
from planner.reading.near_miss import folded, nearest_word
from planner.terms import UNITS, Unit

_MOST_NAMES_OFFERED = 999


@dataclass(frozen=True, slots=True)
class PlannedSowing:
    """What is known of a sowing: its first day, and the unit its harvest is counted in."""

    sow_on: date
    unit: Unit
    is_raised_indoors: bool


@dataclass(frozen=True, slots=True)
class NamedSowings:
    """Every name that was ever given, and the sowings the season still has.

    `names_given`: the highest number of each crop. A sowing that is not in `planned` was let go;
    its name stays known, and nothing can be said against what is told of it.
    """

    names_given: Mapping[str, int]
    planned: Mapping[str, PlannedSowing]

    def named(self, written: str) -> str | None:
        """The name meant by what is written; capitals and a crop's other names do not matter."""
        crop, _, number = folded(written).rpartition(" ")
        crop = self._crop(crop)
        if not number.isascii() or not number.isdecimal() or number != number.lstrip("0"):
            return None
        known = len(number) < 10 and int(number) <= self.names_given.get(crop, 0)
        return f"{crop} {number}" if known else None

    def _crop(self, written: str) -> str:
        for name in self.names_given:
            if name.casefold() == written:
                return name
        page = crop_page(written)
        return page.name if page else written

    def nearest(self, written: str) -> str | None:
        """The name most like what is written; of a known crop its last one."""
        crop, _, number = folded(written).rpartition(" ")
        last = self.names_given.get(self._crop(crop))
        if last and number.isdecimal():
            return f"{self._crop(crop)} {last}"
        names = (
            f"{name} {one}"
            for name, last in self.names_given.items()
            for one in range(1, min(last, _MOST_NAMES_OFFERED) + 1)
        )
        return nearest_word(written, names)

    @property
    def first_sowing(self) -> date:
        """The first day on which anything of the season is sown."""
        return min((one.sow_on for one in self.planned.values()), default=date.min)


def named_sowings(
    record: Mapping[str, Any], crops: Mapping[str, Crop] = MappingProxyType({})
) -> NamedSowings:
    """The names in the record of a season, a KeyError, TypeError or ValueError when it has none.

    Sowings of `crops`, those of the plan, are counted in the unit the plan has for them.
    """
    given = {str(crop): int(number) for crop, number in dict(record["names_given"]).items()}
    planned = {}
    for one in record["sowings"]:
        crop, _, number = one["id"].rpartition(" ")
        given[crop] = max(given.get(crop, 0), int(number))
        planned[str(one["id"])] = PlannedSowing(
            date.fromisoformat(one["sow_on"]),
            crops[crop].unit if crop in crops else UNITS[one["unit"]],
            is_raised_indoors=one["set_out_on"] is not None,
        )
    return NamedSowings(given, planned)
