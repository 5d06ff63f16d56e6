"""The year as it goes by over a paper plan: what finds ground and what is harvested.

Everything happens in the order of time, so ground goes to whoever comes first and is given back
when the last of a sowing is picked.
"""

import heapq
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from enum import Enum, IntEnum

from planner.garden import Bed, Garden, Store
from planner.scheduling.sowing import Block, HarvestDay, Method, Sowing, SowingState
from planner.scheduling.starts import Candidate
from planner.scheduling.thumb.paper_plan import Lost, PaperSowing
from planner.terms import Week

_NOTHING = 1e-9
_NO_WEEK = Week(0, 0)


class Room(Enum):
    """The ground the grower has."""

    LIMITED = "the garden's beds, first come, first served"
    UNLIMITED = "as much ground as the paper plan asks for"


class _Happening(IntEnum):
    """What happens on one day, in this order."""

    HARVEST = 0
    GROUND_FREE = 1
    ENTER = 2


@dataclass(frozen=True, slots=True)
class _Held:
    """A stretch of a bed with plants in it."""

    bed: Bed
    from_um: int
    to_um: int
    plants: int


@dataclass(slots=True)
class _Batch:
    """A sowing in the ground: the plants that found room, and what of them is yet to be had.

    `harvest` is what was taken of it, day by day; `clear_on` the day its ground was given back.
    """

    number: int
    sowing: PaperSowing
    plants: int = 0
    left: float = 0.0
    in_ground: bool = True
    held: list[_Held] = field(default_factory=list)
    harvest: list[HarvestDay] = field(default_factory=list)
    clear_on: date = date.max


class PaperYear:
    """What the paper plans of a garden's crops come to, day after day.

    `made` counts the sowings that found ground; `lacking` is what each week still lacks and
    `surplus` what nobody wanted, in the crop's unit.
    """

    def __init__(self, garden: Garden, room: Room) -> None:
        self.made = 0
        self.lacking = garden.wants()
        self.surplus = dict.fromkeys(self.lacking, 0.0)
        self._room = room
        self._turnover = timedelta(days=garden.wish.turnover_days)
        self._kept = garden.kept
        self._beds = sorted(garden.beds, key=_goodness)
        self._held: dict[str, list[_Held]] = {bed.name: [] for bed in garden.beds}
        self._batches: list[_Batch] = []
        self._to_come: list[tuple[date, _Happening, int, Week]] = []

    def write_down(self, sowings: list[PaperSowing]) -> None:
        """Put a crop's sowings into the year; on one day the crop written first comes first."""
        for sowing in sowings:
            batch = _Batch(len(self._batches), sowing)
            self._batches.append(batch)
            self._put(sowing.enters_on, _Happening.ENTER, batch)

    def pass_by(self) -> None:
        """Let all that is written down happen, with what follows from it."""
        while self._to_come:
            day, happening, number, week = heapq.heappop(self._to_come)
            batch = self._batches[number]
            match happening:
                case _Happening.ENTER:
                    self._enter(batch)
                case _Happening.HARVEST:
                    self._harvest(batch, day, week)
                case _Happening.GROUND_FREE:
                    for one in batch.held:
                        self._held[one.bed.name].remove(one)

    @property
    def sowings(self) -> tuple[Sowing, ...]:
        """What found ground and came to a harvest, once the year has passed, as sowings."""
        return tuple(
            _as_sowing(batch, batch.sowing.fate)
            for batch in self._batches
            if batch.plants and isinstance(batch.sowing.fate, Candidate)
        )

    def _put(self, day: date, happening: _Happening, batch: _Batch, week: Week = _NO_WEEK) -> None:
        heapq.heappush(self._to_come, (day, happening, batch.number, week))

    def _enter(self, batch: _Batch) -> None:
        sowing = batch.sowing
        batch.plants = sowing.plants
        if self._room is Room.LIMITED:
            batch.held = self._ground_for(sowing)
            batch.plants = sum(one.plants for one in batch.held)
        if not batch.plants:
            return
        self.made += 1
        batch.left = batch.plants * sowing.crop.gives.middle
        match sowing.fate:
            case Lost(clear_on=clear_on):
                self._clear(batch, clear_on)
            case Candidate(days=days):
                for week, day in days.items():
                    self._put(max(day, week.monday), _Happening.HARVEST, batch, week)

    def _clear(self, batch: _Batch, day: date) -> None:
        if batch.in_ground:
            batch.in_ground = False
            batch.clear_on = day
            self._put(day + self._turnover, _Happening.GROUND_FREE, batch)

    def _ground_for(self, sowing: PaperSowing) -> list[_Held]:
        """The first ground that is free, in the beds that are no better than they must be."""
        found: list[_Held] = []
        left, spacing_um = sowing.plants, sowing.crop.ground.spacing_um
        for bed, from_um, to_um in self._gaps(sowing):
            here = min(left, bed.plants_in(to_um - from_um, spacing_um))
            if here:
                stretch_um = bed.stretch_for(here, spacing_um)
                found.append(_Held(bed, from_um, min(from_um + stretch_um, to_um), here))
                left -= here
            if not left:
                break
        for one in found:
            self._held[one.bed.name].append(one)
        return found

    def _gaps(self, sowing: PaperSowing) -> Iterator[tuple[Bed, int, int]]:
        """Every free stretch a sowing could stand in: its bed, from where, to where."""
        kept = [
            one
            for one in self._kept
            if one.first < sowing.clear_by and sowing.enters_on < one.last + self._turnover
        ]
        for bed in filter(sowing.crop.fits, self._beds):
            held = [(one.from_um, one.to_um) for one in self._held[bed.name]]
            held += [(one.from_um, one.to_um) for one in kept if one.bed == bed.name]
            reached = 0
            for from_um, to_um in sorted(held):
                if from_um > reached:
                    yield bed, reached, from_um
                reached = max(reached, to_um)
            if bed.line_um > reached:
                yield bed, reached, bed.line_um

    def _harvest(self, batch: _Batch, day: date, week: Week) -> None:
        """Give a week what it wants of what is ready; what nobody wants in time is surplus."""
        name, fate = batch.sowing.crop.name, batch.sowing.fate
        if isinstance(fate, Lost):
            return
        ready = fate.flow[week] * batch.plants if fate.flow else batch.left
        lacking = self.lacking[name].get(week, 0.0)
        taken = min(ready, lacking)
        if taken:
            self.lacking[name][week] = lacking - taken
        batch.left = ready - taken
        is_last = week == max(fate.days)
        gathered = ready if fate.flow or is_last else taken
        if gathered:
            batch.harvest.append(HarvestDay(day, gathered))
        if fate.flow or is_last:
            self.surplus[name] += batch.left
        eaten = not fate.flow and batch.left <= _NOTHING
        if is_last or eaten or isinstance(batch.sowing.crop.habit, Store):
            self._clear(batch, day)


def _as_sowing(batch: _Batch, fate: Candidate) -> Sowing:
    """A batch with its ground and its harvest; it is numbered over all crops, not named."""
    course, crop = fate.course, batch.sowing.crop
    harvest = tuple(batch.harvest)
    if isinstance(crop.habit, Store):
        lifted = min(fate.days.values())
        harvest = (HarvestDay(lifted, batch.plants * crop.gives.middle),)
    return Sowing(
        id=f"{crop.name} {batch.number}",
        crop=crop,
        method=Method.DIRECT if fate.is_direct else Method.INDOORS,
        sow_on=course.start_on,
        emerges_on=course.emerges_on,
        set_out_on=course.set_out_on,
        ripe=course.ripe,
        counted=course.counted,
        plants=batch.plants,
        seeds=batch.plants,
        blocks=tuple(
            Block(one.bed.name, one.from_um, one.to_um, course.enters_on, batch.clear_on)
            for one in batch.held
        ),
        harvest=harvest,
        clear_on=batch.clear_on,
        state=SowingState.PLANNED,
        why=(),
    )


def _goodness(bed: Bed) -> tuple[int, float]:
    return bed.sun, bed.soil_depth_m
