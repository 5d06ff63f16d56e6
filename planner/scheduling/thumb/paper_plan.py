"""The paper plan: sowings of one crop at a fixed interval, as a careful grower writes them down."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from enum import Enum

from planner.garden import CountedFrom, Crop, Cut, Pick, RaisedIndoors, Way
from planner.growth import indoor_days
from planner.scheduling.starts import Candidate, CropCandidates
from planner.scheduling.thumb.intervals import interval_of
from planner.terms import Week

_WHOLE = 1e-6


class Thumb(Enum):
    """What the grower knows of the season."""

    FIXED_DAYS = "the packet's days to maturity, at any time of the year"
    KNOWS_SEASON = "which starts this season allows, and when the first and the last ripen"


@dataclass(frozen=True, slots=True)
class Lost:
    """What became of a sowing that frost, soil, heat or the season's end left nothing of.

    Its ground is dug over when the next sowing is due.
    """

    clear_on: date


@dataclass(frozen=True, slots=True)
class PaperSowing:
    """A sowing as written down, and what really becomes of it."""

    crop: Crop
    enters_on: date
    plants: int
    fate: Candidate | Lost

    @property
    def clear_by(self) -> date:
        """The last day on which it may still stand."""
        if isinstance(self.fate, Lost):
            return self.fate.clear_on
        return max(self.fate.days.values())


def paper_plan(found: CropCandidates, wants: dict[Week, float], thumb: Thumb) -> list[PaperSowing]:
    """All sowings of one crop; each stretch of weeks without a break has its own first and last.

    Every sowing of a stretch has the same number of plants.
    """
    sowings = []
    for weeks in _stretches(wants):
        page = _Page(found, weeks, math.fsum(wants[week] for week in weeks) / len(weeks))
        match thumb:
            case Thumb.FIXED_DAYS:
                sowings += page.by_the_packet()
            case Thumb.KNOWS_SEASON:
                sowings += page.by_the_season()
    return sowings


def _stretches(weeks: Iterable[Week]) -> list[list[Week]]:
    stretches: list[list[Week]] = []
    for week in sorted(weeks):
        if stretches and stretches[-1][-1].after(1) == week:
            stretches[-1].append(week)
        else:
            stretches.append([week])
    return stretches


@dataclass(frozen=True, slots=True)
class _Page:
    """One crop, wanted so much a week in a stretch of weeks."""

    found: CropCandidates
    weeks: list[Week]
    each_week: float

    @property
    def _crop(self) -> Crop:
        return self.found.about.crop

    @property
    def _step(self) -> timedelta:
        return timedelta(days=interval_of(self._crop).days)

    def by_the_packet(self) -> list[PaperSowing]:
        """From the first wanted week less the packet's days, to the last week less these days."""
        way, about = self._way(), self.found.about
        days = timedelta(days=_packet_days(way))
        fates = {one.course.start_on: one for one in self._candidates(way)}
        starts: dict[date, None] = {}
        due = max(self.weeks[0].monday - days, about.begin)
        while due <= self.weeks[-1].sunday - days:
            start_on = about.workdays.on_or_after(due)
            if start_on is not None:
                starts[start_on] = None
            due += self._step
        return [
            self._sowing(fates.get(start_on) or self._lost(way, start_on)) for start_on in starts
        ]

    def by_the_season(self) -> list[PaperSowing]:
        """From the start that is ripe for the first week, to the last that still ripens in time.

        A start that cannot be is moved to the next day that can, or left out when the one after
        it is due by then. Where these are fewer than the weeks ask for, or do not feed the last
        week, there is one more on the last day that can be.
        """
        allowed = [
            one for one in self._candidates(self._way()) if not set(self.weeks).isdisjoint(one.days)
        ]
        if not allowed:
            return []
        chosen: list[Candidate] = []
        last = allowed[-1]
        due = self._first(allowed).course.start_on
        while due <= last.course.start_on:
            following = due + self._step
            chosen += [one for one in allowed if due <= one.course.start_on < following][:1]
            due = following
        too_few = len(chosen) * self._step < timedelta(weeks=len(self.weeks))
        if chosen[-1] is not last and (too_few or max(chosen[-1].days) < max(last.days)):
            chosen.append(last)
        return [self._sowing(one) for one in chosen]

    def _first(self, allowed: list[Candidate]) -> Candidate:
        """The latest start that is ripe by the first week's first garden day, or the earliest."""
        first = self.weeks[0]
        garden_days = self.found.about.workdays.in_week(first) or [first.sunday]
        ripe = [
            one for one in allowed if first in one.days and one.course.ripe.likely <= garden_days[0]
        ]
        return ripe[-1] if ripe else allowed[0]

    def _way(self) -> Way:
        """The way that can feed most of the weeks; the first of equals."""
        return max(self._crop.ways, key=lambda way: len(self._fed_by(way)))

    def _fed_by(self, way: Way) -> set[Week]:
        fed = {week for one in self._candidates(way) for week in one.days}
        return fed.intersection(self.weeks)

    def _candidates(self, way: Way) -> list[Candidate]:
        mine = [one for one in self.found.candidates if one.course.way == way]
        return sorted(mine, key=lambda one: one.course.start_on)

    def _sowing(self, fate: Candidate | tuple[date, Lost]) -> PaperSowing:
        if isinstance(fate, Candidate):
            return PaperSowing(self._crop, fate.course.enters_on, self._plants(), fate)
        return PaperSowing(self._crop, fate[0], self._plants(), fate[1])

    def _lost(self, way: Way, start_on: date) -> tuple[date, Lost]:
        days = indoor_days(way) if isinstance(way, RaisedIndoors) else 0
        enters_on = start_on + timedelta(days=days)
        return enters_on, Lost(enters_on + self._step)

    def _plants(self) -> int:
        """Whole plants for what the interval's weeks want; each cut or picking feeds its week."""
        crop = self._crop
        match crop.habit:
            case Cut():
                asked = self.each_week
            case Pick(picking_days=picking):
                asked = self.each_week * picking.middle / 7
            case _:
                asked = self.each_week * min(self._step.days / 7, len(self.weeks))
        return max(1, math.ceil(asked / crop.gives.middle - _WHOLE))


def _packet_days(way: Way) -> int:
    """Days from sowing to the first harvest as the packet has it, weeks indoors included."""
    indoors = 0
    if isinstance(way, RaisedIndoors) and way.counted_from is CountedFrom.SETTING_OUT:
        indoors = indoor_days(way)
    return math.ceil(way.days.middle) + indoors
