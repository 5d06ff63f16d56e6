"""Eaten: the harvest of one crop by week in one year, from what its sowings give."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from planner.garden import Store
from planner.terms import Week
from planner.trial.replay import Replay

_NOTHING = 1e-9


def harvest_by_week(replays: Iterable[Replay], wants: Mapping[Week, float]) -> dict[Week, float]:
    """What each week has of a crop, in order of week.

    What flows falls where it falls. What waits in the ground or the store is eaten as it is
    wanted, what ends first before what ends later; the rest falls into its last week, or into that
    in which it was lifted.
    """
    had: dict[Week, float] = defaultdict(float)
    waiting = []
    for one in replays:
        for by_week in (one.had, one.flow):
            for week, amount in by_week.items():
                had[week] += amount
        if one.lump > _NOTHING:
            waiting.append(_Waiting(one.days, one.lump, _rest_week(one)))
    waiting.sort(key=lambda one: one.last)
    for week, wanted in sorted(wants.items()):
        had[week] += _eaten(waiting, week, wanted - had[week])
    for one_left in waiting:
        had[one_left.rest_week] += one_left.left
    return {week: amount for week, amount in sorted(had.items()) if amount > _NOTHING}


@dataclass(slots=True)
class _Waiting:
    """What waits to be eaten in any of its weeks, how much is left of it, and where that falls."""

    weeks: Mapping[Week, date]
    left: float
    rest_week: Week

    @property
    def last(self) -> Week:
        return max(self.weeks)


def _rest_week(one: Replay) -> Week:
    """The week in which what nobody eats is counted, as in the plan."""
    return min(one.days) if isinstance(one.sowing.crop.habit, Store) else max(one.days)


def _eaten(waiting: list[_Waiting], week: Week, wanted: float) -> float:
    """What a week eats of what waits, up to what it wants."""
    lacks = max(0.0, wanted)
    for one in waiting:
        if week in one.weeks:
            eaten = min(lacks, one.left)
            one.left -= eaten
            lacks -= eaten
    return max(0.0, wanted) - lacks
