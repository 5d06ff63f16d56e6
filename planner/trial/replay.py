"""Replays: what one sowing, kept as it was planned, gives in one year."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.garden import Cut, Pick, Store
from planner.growth import NEVER, Course, begun_course, comes_up_on, killed_on
from planner.scheduling import (
    Candidate,
    CropYears,
    Sowing,
    SowingState,
    YearOfCrop,
    candidate_of,
    open_days_only,
)
from planner.terms import Week, days_between, week_of
from planner.trial.tried_year import CASES

_FIXED = frozenset({SowingState.CLEARED, SowingState.LOST})
_NOTHING = 1e-9


@dataclass(frozen=True, slots=True)
class Replay:
    """A sowing in one year.

    `days` says on which day each week could be served. `flow` is what comes whether wanted or not,
    by week; `lump` what waits to be eaten in any of the days' weeks; `had` what was harvested
    before the days that are tried; all in the crop's unit. `killed_on` and `spoilt_on` are NEVER
    where frost or heat did nothing to it.
    """

    sowing: Sowing
    ripe_on: date
    days: Mapping[Week, date]
    flow: Mapping[Week, float]
    lump: float = 0.0
    killed_on: date = NEVER
    spoilt_on: date = NEVER
    had: Mapping[Week, float] = field(default_factory=dict)

    @property
    def first_picks(self) -> list[date]:
        """The day of its first harvest; none where it gives nothing."""
        return [min(self.days.values())] if self.days else []


@dataclass(frozen=True)
class Replayer:
    """One sowing with all that is the same of it in every year.

    `stay` is when its ground is needed at the latest, `as_of` the day up to which what has begun
    is known and not tried.
    """

    sowing: Sowing
    crop_years: CropYears
    stay: date
    as_of: date

    def replays(self, count: int) -> list[Replay]:
        """The sowing in each year, or in each of the three stated cases."""
        if self._is_fixed:
            return [self._as_it_is()] * count
        planned = self._course(0)
        late = (self.sowing.ripe.likely - planned.ripe.likely).days
        share = self._share(late)
        years = self.crop_years.years
        if years:
            return [self._in_year(year, late, share) for year in years]
        return [self._in_case(case, planned, share) for case in CASES]

    @property
    def _is_fixed(self) -> bool:
        """Whether it is over, or stood before the days whose temperatures are laid out."""
        one = self.sowing
        return (
            one.state in _FIXED
            or one.enters_on < self.crop_years.usual.workdays.wish.first
            or self._is_lifted
        )

    @property
    def _is_lifted(self) -> bool:
        """Whether it lies in the store already."""
        known = any(taken.day < self._tried_from for taken in self.sowing.harvest)
        return known and isinstance(self.sowing.crop.habit, Store)

    @property
    def _tried_from(self) -> date:
        """The first day that is tried: what was begun is known until then."""
        return self.as_of if self.sowing.state is SowingState.BEGUN else date.min

    def _as_it_is(self) -> Replay:
        """What it gives is known, or nothing more can be told of it than was planned."""
        one = self.sowing
        if isinstance(one.crop.habit, Store) and one.harvest:
            lifted = one.harvest[0].day
            keeps = timedelta(days=int(one.crop.habit.store_days.middle))
            last = max(lifted, min(lifted + keeps, self.crop_years.usual.last_wanted))
            days = dict.fromkeys(week_of(lifted).until(week_of(last)), lifted)
            return Replay(one, one.ripe.likely, days, {}, math.fsum(t.amount for t in one.harvest))
        days = {week_of(taken.day): taken.day for taken in reversed(one.harvest)}
        return Replay(one, one.ripe.likely, days, _by_week(one, date.max))

    def _course(self, late_days: int, year: YearOfCrop | None = None) -> Course:
        """By the odds, or in a year; what it is behind what was expected it is in every year."""
        one = self.sowing
        about = year.about if year else self.crop_years.usual
        return begun_course(
            one.crop, one.way, one.sow_on, one.set_out_on, about.conditions, late_days
        )

    def _share(self, late_days: int) -> float:
        """What its plants give against all plants on ground of their own: guests give less."""
        one = self.sowing
        if one.state is SowingState.PLANNED and not any(block.under for block in one.blocks):
            return 1.0
        candidate = candidate_of(self.crop_years.usual, self._course(late_days))
        days = (self._tried_from, one.clear_on)
        whole = one.plants * math.fsum(
            amount
            for week, amount in candidate.flow.items()
            if days[0] <= candidate.days[week] <= days[1]
        )
        planned = math.fsum(taken.amount for taken in one.harvest if taken.day >= days[0])
        return min(1.0, planned / whole) if whole > _NOTHING else 1.0

    def _in_year(self, year: YearOfCrop, late_days: int, share: float) -> Replay:
        one = self.sowing
        course = self._course(late_days, year)
        candidate = candidate_of(year.about, course)
        until = self._until(candidate)
        killed = killed_on(year.deadly, (self._stands_from(course, year), until))
        if isinstance(one.crop.habit, Pick):
            candidate = open_days_only(candidate, year, until)
            spoilt = _first_closed(year, course.ripe.likely, until)
        else:
            ends = year.about.conditions.limits.harvest_closes(course.ripe.likely)
            spoilt = ends[0] + timedelta(days=1) if ends else NEVER
        return self._replay(candidate, share, min(until, killed), (killed, spoilt))

    def _in_case(self, case: str, planned: Course, share: float) -> Replay:
        ripe: date = getattr(self.sowing.ripe, case)
        course = self._course((ripe - planned.ripe.likely).days)
        candidate = candidate_of(self.crop_years.usual, course)
        return self._replay(candidate, share, self._until(candidate), (NEVER, NEVER))

    def _until(self, candidate: Candidate) -> date:
        """It stands until its planned clearing or, if late, until its ground is needed.

        What is cut again is late, too, while it has had fewer cuts than were planned.
        """
        one = self.sowing
        late = candidate.course.ripe.likely > one.ripe.likely
        if isinstance(one.crop.habit, Cut):
            cuts = sum(day <= one.clear_on for day in candidate.days.values())
            late = late or cuts < len({taken.day for taken in one.harvest})
        return self.stay if late else one.clear_on

    def _stands_from(self, course: Course, year: YearOfCrop) -> date:
        """The first night it may freeze in: after coming up or setting out, beyond its cover."""
        one = self.sowing
        stands = one.set_out_on
        if stands is None:
            up = comes_up_on(one.crop, year.soil_degc, year.temperatures.first, one.sow_on)
            stands = up or course.emerges_on
        return max(self.crop_years.stands_from(one.enters_on, stands), self._tried_from)

    def _replay(
        self, candidate: Candidate, share: float, until: date, ends: tuple[date, date]
    ) -> Replay:
        one = self.sowing
        known = self._tried_from
        days = {week: day for week, day in candidate.days.items() if known <= day <= until}
        lump, flow = 0.0, {}
        if candidate.flow:
            plants = one.plants * share
            flow = {week: plants * candidate.flow[week] for week in days}
        elif days:
            lump = math.fsum(taken.amount for taken in one.harvest if taken.day >= known)
        had = _by_week(one, known)
        return Replay(one, candidate.course.ripe.likely, days, flow, lump, *ends, had)


def _by_week(sowing: Sowing, before: date) -> dict[Week, float]:
    """What was harvested before a day."""
    had: dict[Week, float] = {}
    for taken in sowing.harvest:
        if taken.day < before:
            had[week_of(taken.day)] = had.get(week_of(taken.day), 0.0) + taken.amount
    return had


def _first_closed(year: YearOfCrop, ripe_on: date, until: date) -> date:
    closed = (day for day in days_between(ripe_on, until) if year.closed.why_not_harvested(day))
    return next(closed, NEVER)
