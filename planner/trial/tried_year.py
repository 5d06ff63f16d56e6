"""Tried years: what each crop meets in every past year on record, worked out once."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from planner.climate import BEYOND, LEAD, Climate
from planner.garden import Garden
from planner.growth import Paces
from planner.scheduling import CropYears, Workdays, crop_times, crop_years


class Basis(Enum):
    """What the years tried are."""

    PAST_YEARS = "past years on record"
    STATED_SPREAD = "early, likely and late dates as stated, no past years"


@dataclass(frozen=True, slots=True)
class TriedYears:
    """Every year a garden's sowings can be tried in, the earliest first."""

    garden: Garden
    basis: Basis
    count: int
    crops: Mapping[str, CropYears]


# Without a record there are three: all early, all likely, all late.
CASES = ("early", "likely", "late")


def tried_years(garden: Garden, climate: Climate) -> TriedYears:
    """The past years of a site's record; without one, its three stated cases."""
    wish = garden.wish
    paces = Paces(climate, wish.first - LEAD, wish.last + BEYOND)
    known = paces.temperatures
    past = len(known.past) if known is not None else 0
    workdays = Workdays(wish)
    crops = {
        name: crop_years(
            crop_times(crop, garden, paces, workdays, wish.first, paces.of(crop)),
            paces,
            range(past),
        )
        for name, crop in garden.crops.items()
    }
    if past:
        return TriedYears(garden, Basis.PAST_YEARS, past, crops)
    return TriedYears(garden, Basis.STATED_SPREAD, len(CASES), crops)
