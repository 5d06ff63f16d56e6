"""Crop years: what a crop meets in past years, and what one start of it gives in each of them.

Sowings are chosen for a few of the years (§40), and a season is tried in all of them (§38).
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta

from planner.climate import SeasonTemperatures
from planner.garden import Pick
from planner.growth import (
    Conditions,
    CropPace,
    Limits,
    OutdoorTime,
    Paces,
    deadly_days,
    harvest_limits,
    outdoor_times,
)
from planner.scheduling.starts.candidate import Candidate, CropTimes
from planner.terms import Week, days_between

_NO_LIMITS = Limits(date.min)
# In a past year real freezes end a life, not their odds: the time outdoors is open.
_OPEN = OutdoorTime(
    date.min, date.max, date.max, "a past year has its own freezes", "nothing but its freezes"
)


@dataclass(frozen=True, slots=True)
class YearOfCrop:
    """What one crop meets in one year.

    `closed` says on which days its heat or long days leave nothing worth having. Of what is
    picked the days that are closed are lost, and later ones are had again; all else ends with
    the first closed day, for what has spoiled or bolted does not come back. `deadly` are the days
    whose night kills it.
    """

    about: CropTimes
    closed: Limits
    temperatures: SeasonTemperatures
    deadly: tuple[date, ...]
    soil_degc: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class CropYears:
    """A crop by the odds, as it is planned, and in some years; none without a record.

    `uncovered` are its times outdoors without the cover that lets it out earlier.
    """

    usual: CropTimes
    uncovered: tuple[OutdoorTime, ...]
    years: tuple[YearOfCrop, ...]

    def covered_until(self, enters_on: date) -> date:
        """Until when the crop is under its cover, if it needs one, having entered on a day."""
        if not self.usual.crop.frost.hardiness.killed_by_frost:
            return enters_on
        opens = [one.opens for one in self.uncovered if enters_on <= one.ends]
        weeks = self.usual.workdays.wish.cover_weeks
        covered = min(opens, default=enters_on)
        return min(max(enters_on, covered), enters_on + timedelta(weeks=weeks))

    def stands_from(self, enters_on: date, shows_on: date) -> date:
        """The first day whose night may kill what entered and showed, or was set out, on days."""
        return max(shows_on + timedelta(days=1), self.covered_until(enters_on))


@dataclass(frozen=True, slots=True)
class CropCandidates:
    """A crop's candidates, and what they were made under.

    `years` is what the crop meets in a few past years, for which its sowings are chosen too (§40).
    """

    about: CropTimes
    candidates: list[Candidate]
    years: CropYears

    def serving(self, week: Week) -> list[Candidate]:
        """Every candidate that could serve a week."""
        return [one for one in self.candidates if week in one.days]


def evenly(many: int, total: int) -> list[int]:
    """The places of so many, or of all where there are fewer, taken evenly from a row."""
    taken = min(many, total)
    return [(2 * number + 1) * total // (2 * taken) for number in range(taken)]


def crop_years(usual: CropTimes, paces: Paces, places: Iterable[int]) -> CropYears:
    """A crop in those past years of a record that have these places among all of them."""
    known, wish = paces.temperatures, usual.workdays.wish
    past = known.past if known is not None else ()
    days = (wish.first, wish.last)
    return CropYears(
        usual,
        outdoor_times(usual.crop, paces.climate, wish.freeze_risk, days),
        tuple(_year(usual, paces, past[place], place) for place in places),
    )


def _year(usual: CropTimes, paces: Paces, year: SeasonTemperatures, place: int) -> YearOfCrop:
    closed = harvest_limits(usual.crop, paces.climate, year)
    ending = _NO_LIMITS if isinstance(usual.crop.habit, Pick) else closed
    conditions = Conditions((_OPEN,), _pace(usual.conditions.pace, place), ending)
    return YearOfCrop(
        about=replace(usual, conditions=conditions),
        closed=closed,
        temperatures=year,
        deadly=deadly_days(usual.crop, year),
        soil_degc=paces.past_soils[place],
    )


def _pace(pace: CropPace, place: int) -> CropPace:
    """The pace of one year; crops by the calendar keep their own."""
    return pace.past[place] if pace.past else pace


def open_days_only(candidate: Candidate, year: YearOfCrop, until: date) -> Candidate:
    """What is picked of a crop up to a day, without what would ripen on closed days."""
    flow = {}
    for week, amount in candidate.flow.items():
        first = max(week.monday, candidate.course.ripe.likely)
        days = list(days_between(first, max(first, min(week.sunday, until))))
        open_days = sum(not year.closed.why_not_harvested(day) for day in days)
        if open_days:
            flow[week] = amount * open_days / len(days)
    days_of = {week: candidate.days[week] for week in flow}
    return Candidate(candidate.course, days_of, flow)
