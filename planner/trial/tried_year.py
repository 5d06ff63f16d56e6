"""Tried years: what each crop meets in every past year on record, worked out once."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from enum import Enum

from planner.climate import BEYOND, LEAD, Climate, SeasonTemperatures
from planner.garden import Crop, Garden, Pick
from planner.growth import (
    Conditions,
    CropPace,
    Limits,
    OutdoorTime,
    Paces,
    harvest_limits,
    limits_of,
    outdoor_times,
)
from planner.scheduling import CropTimes, Workdays

_NO_LIMITS = Limits(date.min)
# In a year tried real freezes end a life, not their odds: the time outdoors is open.
_OPEN = OutdoorTime(
    date.min, date.max, date.max, "a year tried has its own freezes", "nothing but its freezes"
)


class Basis(Enum):
    """What the years tried are."""

    PAST_YEARS = "past years on record"
    STATED_SPREAD = "early, likely and late dates as stated, no past years"


@dataclass(frozen=True, slots=True)
class YearOfCrop:
    """What one crop meets in one year.

    `closed` says on which days its heat or long days leave nothing worth having. Of what is
    picked the days that are closed are lost, and later ones are had again; all else ends with
    the first closed day, for what has spoiled or bolted does not come back.
    """

    about: CropTimes
    closed: Limits
    temperatures: SeasonTemperatures
    soil_degc: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class CropYears:
    """A crop by the odds, as it is planned, and in each year; years empty without a record.

    `uncovered` are its times outdoors without the cover that lets it out earlier.
    """

    usual: CropTimes
    uncovered: tuple[OutdoorTime, ...]
    years: tuple[YearOfCrop, ...]


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
    past = known.past if known is not None else ()
    soils = [year.soil_degc() for year in past]
    workdays = Workdays(wish)
    crops = {
        name: _crop_years(crop, garden, paces, workdays, list(zip(past, soils, strict=True)))
        for name, crop in garden.crops.items()
    }
    if past:
        return TriedYears(garden, Basis.PAST_YEARS, len(past), crops)
    return TriedYears(garden, Basis.STATED_SPREAD, len(CASES), crops)


def _crop_years(
    crop: Crop,
    garden: Garden,
    paces: Paces,
    workdays: Workdays,
    past: list[tuple[SeasonTemperatures, tuple[float, ...]]],
) -> CropYears:
    wish, climate = garden.wish, paces.climate
    days = (wish.first, wish.last)
    times = outdoor_times(crop, climate, wish.freeze_risk, days, wish.cover_weeks)
    pace = paces.of(crop)
    limits = limits_of(crop, climate, paces.temperatures)
    last_wanted = min(garden.last_wanted(crop.name), wish.last)
    usual = CropTimes(crop, Conditions(times, pace, limits), workdays, wish.first, last_wanted)
    years = tuple(
        _year(usual, _pace(pace, number), climate, *temperatures)
        for number, temperatures in enumerate(past)
    )
    return CropYears(usual, outdoor_times(crop, climate, wish.freeze_risk, days), years)


def _pace(pace: CropPace, number: int) -> CropPace:
    """The pace of one year; crops by the calendar keep their own."""
    return pace.past[number] if pace.past else pace


def _year(
    usual: CropTimes,
    pace: CropPace,
    climate: Climate,
    year: SeasonTemperatures,
    soil_degc: tuple[float, ...],
) -> YearOfCrop:
    closed = harvest_limits(usual.crop, climate, year)
    ending = _NO_LIMITS if isinstance(usual.crop.habit, Pick) else closed
    about = CropTimes(
        usual.crop,
        Conditions((_OPEN,), pace, ending),
        usual.workdays,
        usual.begin,
        usual.last_wanted,
    )
    return YearOfCrop(about, closed, year, soil_degc)


def covered_until(crop_years: CropYears, enters_on: date) -> date:
    """The day until which a crop that entered on a day is under its cover, if it needs one."""
    if not crop_years.usual.crop.frost.hardiness.killed_by_frost:
        return enters_on
    opens = [one.opens for one in crop_years.uncovered if enters_on <= one.ends]
    weeks = crop_years.usual.workdays.wish.cover_weeks
    covered = min(opens, default=enters_on)
    return min(max(enters_on, covered), enters_on + timedelta(weeks=weeks))
