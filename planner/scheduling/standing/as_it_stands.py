"""As it stands: a sowing that has begun, by its real dates, and what is still to come of it (§35).

Where nothing is told and no real temperature is known, it stays as it was planned.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from planner.garden import DailyWeather, Garden, SharedGround
from planner.growth import begun_course
from planner.journal import Event, History
from planner.scheduling.sowing import HARVEST_PLACES, HarvestDay, Sowing, SowingState
from planner.scheduling.starts import Candidate, CropCandidates, CropTimes, candidate_of
from planner.terms import Quantity, Unit, week_of

_NOTHING = 1e-9
_TOLD = "By what happened"


def as_it_stands(
    sowing: Sowing,
    history: History,
    garden: Garden,
    found: Mapping[str, CropCandidates],
    as_of: date,
    free_on: date = date.min,
) -> Sowing:
    """The sowing as it stands on a day; it is not set out before its ground is free."""
    about = found[sowing.crop.name].about if sowing.crop.name in found else None
    ended = _ended(sowing, history)
    if ended is not None:
        return ended
    waits = sowing.set_out_on is not None and sowing.set_out_on < free_on
    if about is None or not (waits or _is_news(sowing, history, garden, as_of)):
        return sowing
    return _Standing(sowing, history, about, garden.shared, as_of, free_on).sowing()


def _ended(sowing: Sowing, history: History) -> Sowing | None:
    """A sowing cleared or lost whole: what was had of it until then."""
    lost, cleared = history.lost_whole_on, history.day_of(Event.CLEARED)
    day = min((one for one in (lost, cleared) if one is not None), default=None)
    if day is None:
        return None
    state = SowingState.LOST if day == lost else SowingState.CLEARED
    clear_on = max(day, sowing.sow_on)
    before = tuple(one for one in sowing.harvest if one.day <= clear_on)
    picked = _picked(history, sowing.crop.unit)
    blocks = tuple(
        replace(block, enter_on=min(block.enter_on, clear_on), leave_on=clear_on)
        for block in sowing.blocks
        if block.enter_on <= clear_on
    )
    return replace(sowing, state=state, clear_on=clear_on, blocks=blocks, harvest=picked or before)


def _is_news(sowing: Sowing, history: History, garden: Garden, as_of: date) -> bool:
    """Whether anything is known of it that was not when it was planned."""
    if history.entries:
        return True
    weather = garden.site.weather
    if sowing.enters_on < garden.wish.first or not isinstance(weather, DailyWeather):
        return False
    grows = not sowing.harvest or sowing.harvest[0].day >= as_of
    return grows and weather.last >= sowing.sow_on


def _picked(history: History, unit: Unit) -> tuple[HarvestDay, ...]:
    """What was really picked, day by day, in the crop's unit."""
    by_day: dict[date, float] = {}
    for day, amount in history.picks:
        by_day[day] = by_day.get(day, 0.0) + _in_unit(amount, unit)
    return tuple(HarvestDay(day, amount) for day, amount in sorted(by_day.items()))


def _in_unit(amount: Quantity, unit: Unit) -> float:
    return amount.value * amount.unit.factor / unit.factor


@dataclass(frozen=True)
class _Standing:
    """A sowing, what is told of it, and when its crop may grow and be harvested."""

    was: Sowing
    history: History
    about: CropTimes
    pairs: tuple[SharedGround, ...]
    as_of: date
    free_on: date

    def sowing(self) -> Sowing:
        candidate = self._candidate()
        course = candidate.course
        harvest = self._harvest(candidate)
        clear_on = self._clear_on(candidate, harvest)
        return replace(
            self.was,
            sow_on=course.start_on,
            emerges_on=self.history.day_of(Event.EMERGED) or course.emerges_on,
            set_out_on=course.set_out_on,
            ripe=course.ripe,
            counted=course.counted,
            harvest=tuple(one for one in harvest if one.day <= clear_on),
            clear_on=clear_on,
            blocks=tuple(
                replace(block, enter_on=course.enters_on, leave_on=clear_on)
                for block in self.was.blocks
            ),
            why=self._why(candidate),
        )

    def _candidate(self) -> Candidate:
        """The course by the real dates, and what a plant of it gives from then on."""
        crop, way = self.was.crop, self.was.way
        sow_on = self.history.day_of(Event.SOWN) or self.was.sow_on
        set_out_on = self._set_out_on(sow_on)
        conditions = self.about.conditions
        course = begun_course(crop, way, sow_on, set_out_on, conditions)
        late = self._late_days(course.emerges_on)
        first_pick = self.history.first_pick_on
        if first_pick is not None and first_pick < course.ripe.likely + timedelta(days=late):
            late = (first_pick - course.ripe.likely).days
        course = begun_course(crop, way, sow_on, set_out_on, conditions, late)
        return candidate_of(self.about, course)

    def _set_out_on(self, sow_on: date) -> date | None:
        """The day it was set out, or is to be: later by as much as it was sown later."""
        planned, told = self.was.set_out_on, self.history.day_of(Event.SET_OUT)
        if planned is None or told is not None:
            return told
        day = planned + max(timedelta(0), sow_on - self.was.sow_on)
        missed = self.history.day_of(Event.MISSED)
        if missed is not None and day <= missed:
            day = self.as_of
        day = max(day, self.free_on)
        if day == planned:
            return planned
        return self.about.workdays.on_or_after(day) or day

    def _late_days(self, emerges_on: date) -> int:
        """How far it is behind: as told, or as it came up."""
        late, emerged = self.history.last_late, self.history.day_of(Event.EMERGED)
        if late is not None and late.amount is not None:
            return round(late.amount.si)
        return (emerged - emerges_on).days if emerged is not None else 0

    def _harvest(self, candidate: Candidate) -> list[HarvestDay]:
        """What was picked, or was to be by now, and what is still to come."""
        coming = self._coming(candidate)
        had = list(_picked(self.history, self.was.crop.unit))
        if had:
            rest = [one for one in coming if one.day > had[-1].day]
        else:
            had = [one for one in coming if one.day < self.as_of]
            rest = [one for one in coming if one.day >= self.as_of]
        share = max(0, self.was.plants - self.history.plants_lost) / self.was.plants
        if not candidate.flow:
            left = self._gives * share - math.fsum(one.amount for one in had)
            expected = math.fsum(one.amount for one in rest)
            share = max(0.0, left) / expected if expected > _NOTHING else 0.0
        still = [replace(one, amount=round(one.amount * share, HARVEST_PLACES)) for one in rest]
        had = [replace(one, amount=round(one.amount, HARVEST_PLACES)) for one in had]
        return [*had, *(one for one in still if one.amount > _NOTHING)]

    @cached_property
    def _gives(self) -> float:
        """What all its plants give in all."""
        return self.was.plants * self.was.crop.gives.middle * self._yields

    def _coming(self, candidate: Candidate) -> list[HarvestDay]:
        """The harvest of all plants as now expected, day by day."""
        if candidate.flow:
            plants = self.was.plants * self._yields
            return [
                HarvestDay(candidate.days[week], plants * amount)
                for week, amount in sorted(candidate.flow.items())
                if amount > _NOTHING
            ]
        by_day: dict[date, float] = {}
        for one in self.was.harvest:
            day = self._moved(one.day, candidate)
            by_day[day] = by_day.get(day, 0.0) + one.amount
        return [HarvestDay(day, amount) for day, amount in sorted(by_day.items())]

    def _moved(self, planned: date, candidate: Candidate) -> date:
        """When what was to be harvested on a day is: in that week still, or in the nearest."""
        days, week = candidate.days, week_of(planned)
        if not days:
            shift = candidate.course.ripe.likely - self.was.ripe.likely
            return max(planned + shift, candidate.course.ripe.likely)
        return days.get(week) or min(days.values(), key=lambda day: (abs(day - planned), day))

    @cached_property
    def _yields(self) -> float:
        """What a plant gives against one on ground of its own: that of the nearest pair."""
        hosts = {block.under.rpartition(" ")[0] for block in self.was.blocks if block.under}
        name = self.was.crop.name
        yields = [one.yield_share for one in self.pairs if one.guest == name and one.host in hosts]
        planned = math.fsum(one.amount for one in self.was.harvest)
        share = planned / (self.was.plants * self.was.crop.gives.middle)
        return min(yields, key=lambda one: abs(one - share), default=1.0)

    def _clear_on(self, candidate: Candidate, harvest: list[HarvestDay]) -> date:
        """After its last harvest, by when its ground is to be free or its time outdoors ends."""
        course, was = candidate.course, self.was
        shift = course.ripe.likely - was.ripe.likely
        first = course.enters_on + timedelta(days=1)
        if not shift and not self.history.picks:
            return max(was.clear_on, first)
        until = self._until(candidate, shift) if shift > timedelta(0) else was.clear_on
        until = min(until, max(course.time.ends, was.clear_on))
        last = max((one.day for one in harvest if one.day <= until), default=until)
        if last < self.as_of:
            last = self.about.workdays.on_or_after(self.as_of) or self.as_of
        return max(last, first)

    def _until(self, candidate: Candidate, late: timedelta) -> date:
        """Late, its ground is its own for as much longer, to the next garden day.

        When it has had as many harvests as were planned it goes.
        """
        longer = self.was.clear_on + late
        until = self.about.workdays.on_or_after(longer) or longer
        coming = self._coming(candidate)[: len(self.was.harvest)]
        return min(until, coming[-1].day) if coming else until

    def _why(self, candidate: Candidate) -> tuple[str, ...]:
        why = tuple(one for one in self.was.why if not one.startswith(_TOLD))
        events = [f"{one.event.value} on {one.day}" for one in self.history.entries]
        if self.was.set_out_on is not None and self.was.set_out_on < self.free_on:
            events.append(f"ground free on {self.free_on}")
        told = ", ".join(events)
        ripe = candidate.course.ripe.likely
        if not told and ripe == self.was.ripe.likely:
            return self.was.why
        return (*why, f"{_TOLD} ({told or 'the temperatures so far'}), ripe about {ripe} (§35).")
