"""Times away: what somebody else is to water, look at and pick (§50)."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from planner.bedwork.drip import Runs, watering_days
from planner.bedwork.seedbed import is_seedbed
from planner.bedwork.too_early import longest_wait
from planner.bedwork.water import BedWater, Water, WeekWater
from planner.garden import AwayTime, Cut, NoDrip, Once, Pick
from planner.scheduling import Sowing, SowingState
from planner.terms import week_of


@dataclass(frozen=True, slots=True)
class AwayBed:
    """A bed's watering while nobody is there: the most that any of those weeks asks for.

    `each_l` is what it takes each time by hand.
    """

    water: BedWater
    runs: Runs | NoDrip
    each_l: float


@dataclass(frozen=True, slots=True)
class AwayWork:
    """A time away: days on which to water, beds, what to pick, and what to keep moist by hand.

    `picks` are sowings that give while nobody is there, `stands` those that are ready and can
    wait, `waits` those that would be ready and that raw manure forbids. `trays` are indoors,
    `seedbeds` in place and not up yet.
    """

    away: AwayTime
    days: tuple[date, ...]
    beds: tuple[AwayBed, ...]
    picks: tuple[Sowing, ...]
    stands: tuple[Sowing, ...]
    waits: tuple[Sowing, ...]
    trays: tuple[Sowing, ...]
    seedbeds: tuple[Sowing, ...]


def away_work_of(water: Water, sowings: Sequence[Sowing], as_of: date) -> tuple[AwayWork, ...]:
    """The work of each time away that is not over yet, in order of its first day."""
    times = [one for one in water.garden.wish.away if one.last >= as_of]
    alive = [one for one in sowings if one.state in {SowingState.PLANNED, SowingState.BEGUN}]
    return tuple(
        _away(one, water, alive) for one in sorted(times, key=lambda one: (one.first, one.last))
    )


def _away(away: AwayTime, water: Water, sowings: Sequence[Sowing]) -> AwayWork:
    weeks = set(week_of(away.first).until(week_of(away.last)))
    times = int(water.garden.water.runs_each_week.middle)
    beds = tuple(_beds([one for one in water.weeks if one.week in weeks], times))
    ready = [one for one in sowings if _gives(one, away)]
    waits = tuple(one for one in ready if _waits_for_manure(one, water, away))
    giving = [one for one in ready if one not in waits]
    return AwayWork(
        away=away,
        days=watering_days(times, away.first, away.last),
        beds=beds,
        picks=tuple(one for one in giving if isinstance(one.crop.habit, Pick | Cut)),
        stands=tuple(one for one in giving if isinstance(one.crop.habit, Once)),
        waits=waits,
        trays=tuple(one for one in sowings if _in_trays(one, away)),
        seedbeds=tuple(one for one in sowings if is_seedbed(one, away.first, away.last)),
    )


def _beds(weeks: Sequence[WeekWater], times: int) -> Iterator[AwayBed]:
    """Each bed's thirstiest of some weeks; beds on one timer run together."""
    most: dict[str, BedWater] = {}
    for one in (bed for week in weeks for bed in week.beds):
        before = most.get(one.bed.name)
        if before is None or one.volume_l > before.volume_l:
            most[one.bed.name] = one
    shared: dict[str, Runs] = {}
    for run in (run for week in weeks for run in week.shared):
        if run.timer not in shared or run.runs.minutes > shared[run.timer].minutes:
            shared[run.timer] = run.runs
    for one in most.values():
        runs = one.runs if isinstance(one.runs, NoDrip) else shared.get(one.bed.timer, one.runs)
        if one.volume_l > 0:
            yield AwayBed(one, runs, one.volume_l / times)


def _gives(one: Sowing, away: AwayTime) -> bool:
    """Whether something is likely ready while nobody is there, whenever it was to be picked."""
    return bool(one.harvest) and one.ripe.likely <= away.last and one.clear_on >= away.first


def _waits_for_manure(one: Sowing, water: Water, away: AwayTime) -> bool:
    """Whether raw manure forbids picking on any of the days; nobody is there to mind which."""
    wait = longest_wait(water.garden, one, away.last)
    return wait is not None and wait.from_on > away.first


def _in_trays(one: Sowing, away: AwayTime) -> bool:
    return one.set_out_on is not None and one.sow_on <= away.last and one.set_out_on > away.first
