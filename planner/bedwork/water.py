"""Water: how long each bed's drip line runs in each week (§48, §49)."""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from statistics import fmean

from planner.bedwork.bed_thirst import Stand, stands_of, thirst_on
from planner.bedwork.drip import Runs, depth_mm, in_parts, runs_for
from planner.bedwork.evaporation import Evaporation, Known, evaporation_of, in_month, rain_of
from planner.bedwork.seedbed import is_seedbed
from planner.climate import Climate
from planner.garden import Bed, Garden, MonthlyDepth, NoDrip, NotTold
from planner.scheduling import Sowing, SowingState
from planner.terms import Week, week_of

_GONE = {SowingState.CLEARED, SowingState.LOST}


@dataclass(frozen=True, slots=True)
class BedWater:
    """What a bed takes in a week: a depth on its ground, a volume from the tap, and runs for it.

    `coefficient`: mean of the days on which something stands there. `planted`: the same for the
    share of its ground that is planted. The depth is what is wanted beyond rain. A drip line
    waters the whole bed, bare ground and all; by hand only what is planted is watered.
    """

    bed: Bed
    coefficient: float
    planted: float
    depth_mm: float
    volume_l: float
    runs: Runs | NoDrip


@dataclass(frozen=True, slots=True)
class Given:
    """What a run on a shared timer gives a bed in a week, beside what it wants; millimetres."""

    bed: str
    given_mm: float
    wanted_mm: float


@dataclass(frozen=True, slots=True)
class SharedRun:
    """Beds on one timer: a run as long as the thirstiest needs, and what it gives each of them."""

    timer: str
    runs: Runs
    gives: tuple[Given, ...]


@dataclass(frozen=True, slots=True)
class WeekWater:
    """A week's watering. `seedbeds`: sowings in place that are not up yet, kept moist by hand."""

    week: Week
    evaporation_mm: float
    rain_mm: float
    beds: tuple[BedWater, ...]
    shared: tuple[SharedRun, ...]
    seedbeds: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Water:
    """A season's watering, and what it rests on."""

    garden: Garden
    evaporation: Evaporation
    rain: MonthlyDepth | NotTold
    weeks: tuple[WeekWater, ...]

    @property
    def thirstiest(self) -> WeekWater | None:
        """The week that takes the most water; None when nothing is to be watered."""
        volumes = [(math.fsum(bed.volume_l for bed in one.beds), one) for one in self.weeks]
        if not any(volume for volume, _ in volumes):
            return None
        return max(volumes, key=lambda pair: pair[0])[1]


def water_of(garden: Garden, climate: Climate, sowings: Sequence[Sowing]) -> Water:
    """The watering of every week in which something stands in a bed within the season."""
    days = (garden.wish.first, max([garden.wish.last, *(one.clear_on for one in sowings)]))
    whole = (week_of(days[0]).monday, week_of(days[1]).sunday)
    evaporation = evaporation_of(garden, climate, whole)
    rain = rain_of(garden)
    asked = _Asked(garden, evaporation, rain, stands_of(garden, sowings), sowings)
    weeks = (asked.week(week) for week in week_of(days[0]).until(week_of(days[1])))
    return Water(garden, evaporation, rain, tuple(one for one in weeks if one.beds or one.seedbeds))


@dataclass(frozen=True, slots=True)
class _Asked:
    """What the weeks are worked out from."""

    garden: Garden
    evaporation: Evaporation
    rain: MonthlyDepth | NotTold
    stands: dict[str, list[Stand]]
    sowings: Sequence[Sowing]

    def week(self, week: Week) -> WeekWater:
        beds = tuple(
            water for bed in self.garden.beds if (water := self._bed(bed, week)) is not None
        )
        by_day = self.evaporation.by_day
        return WeekWater(
            week=week,
            evaporation_mm=math.fsum(by_day.get(day, 0.0) for day in week.days),
            rain_mm=math.fsum(self._rain(day) for day in week.days),
            beds=beds,
            shared=tuple(_shared_runs(beds, self.garden)),
            seedbeds=tuple(
                one.id
                for one in self.sowings
                if one.state not in _GONE and is_seedbed(one, week.monday, week.sunday)
            ),
        )

    def _bed(self, bed: Bed, week: Week) -> BedWater | None:
        """What a bed takes in a week; None when nothing stands there or nothing is known."""
        known = [day for day in week.days if day in self.evaporation.by_day]
        thirsts = [(day, thirst_on(day, self.stands[bed.name], bed.line_um)) for day in known]
        planted = [(day, thirst) for day, thirst in thirsts if thirst.planted]
        if not planted:
            return None
        wanted = math.fsum(self._factor(one.coefficient) * self._each(day) for day, one in planted)
        used = self.garden.water.rain_used.middle
        rain = math.fsum(self._rain(day) * used for day, _ in planted)
        depth = max(0.0, wanted - rain)
        share = fmean(one.planted for _, one in planted)
        watered = share if isinstance(bed.drip, NoDrip) else 1.0
        volume = depth * bed.area_m2 * watered / self.garden.water.efficiency.middle
        return BedWater(
            bed=bed,
            coefficient=fmean(one.coefficient for _, one in planted),
            planted=share,
            depth_mm=depth,
            volume_l=volume,
            runs=self._runs(bed, volume),
        )

    def _factor(self, coefficient: float) -> float:
        """The rule of so much a week is the same for every crop."""
        return 1.0 if self.evaporation.known is Known.RULE else coefficient

    def _each(self, day: date) -> float:
        return self.evaporation.by_day[day]

    def _rain(self, day: date) -> float:
        return in_month(self.rain, day) if isinstance(self.rain, MonthlyDepth) else 0.0

    def _runs(self, bed: Bed, volume_l: float) -> Runs | NoDrip:
        if isinstance(bed.drip, NoDrip):
            return bed.drip
        return runs_for(volume_l, bed.drip.flow.l_per_h, self.garden.water)


def _shared_runs(beds: Sequence[BedWater], garden: Garden) -> Iterator[SharedRun]:
    """One run for each timer with several beds, as long as the thirstiest of them needs."""
    by_timer: dict[str, list[BedWater]] = defaultdict(list)
    for one in beds:
        if one.bed.timer and isinstance(one.runs, Runs):
            by_timer[one.bed.timer].append(one)
    times = int(garden.water.runs_each_week.middle)
    for timer, group in by_timer.items():
        minutes = max(one.runs.minutes for one in group if isinstance(one.runs, Runs))
        if len(group) > 1 and minutes > 0:
            runs = in_parts(minutes, garden.water)
            efficiency = garden.water.efficiency.middle
            gives = tuple(
                Given(one.bed.name, depth_mm(one.bed, times * minutes, efficiency), one.depth_mm)
                for one in group
            )
            yield SharedRun(timer, runs, gives)
