"""Supply: what each week can be expected to have, against what is wanted."""

from collections import defaultdict
from collections.abc import Container, Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Once, Store
from planner.scheduling.sowing import HarvestDay, Sowing
from planner.terms import Week, week_of


@dataclass(frozen=True, slots=True)
class Supply:
    """Expected amount of a crop by week, with a low and a high, in the crop's unit."""

    expected: dict[Week, float]
    low: dict[Week, float]
    high: dict[Week, float]

    def within(self, weeks: Container[Week]) -> "Supply":
        """The supply of these weeks only."""
        return Supply(
            expected=_only(weeks, self.expected),
            low=_only(weeks, self.low),
            high=_only(weeks, self.high),
        )


def _only(weeks: Container[Week], amounts: dict[Week, float]) -> dict[Week, float]:
    return {week: amount for week, amount in amounts.items() if week in weeks}


def supply_of(sowings: Iterable[Sowing], wants: dict[Week, float]) -> Supply:
    """The supply of one crop's sowings.

    Low and high are the least and the most a week gets when all its sowings come at their
    early, their likely or their late dates.
    """
    ordered = list(sowings)
    by_case = [
        _by_week([(one, _harvest_if(one, case)) for one in ordered], wants)
        for case in ("early", "likely", "late")
    ]
    weeks = sorted({week for case in by_case for week in case} | set(wants))
    return Supply(
        expected={week: by_case[1].get(week, 0.0) for week in weeks},
        low={week: min(case.get(week, 0.0) for case in by_case) for week in weeks},
        high={week: max(case.get(week, 0.0) for case in by_case) for week in weeks},
    )


def _by_week(
    ordered: list[tuple[Sowing, list[HarvestDay]]], wants: dict[Week, float]
) -> dict[Week, float]:
    supply: dict[Week, float] = defaultdict(float)
    for sowing, harvest in sorted(ordered, key=lambda one: one[0].ripe.likely):
        for taken in harvest:
            if isinstance(sowing.crop.habit, Store):
                keeps = int(sowing.crop.habit.store_days.middle)
                _draw(supply, taken, keeps, wants)
            else:
                supply[week_of(taken.day)] += taken.amount
    return supply


def _draw(
    supply: dict[Week, float], lifted: HarvestDay, keeps_days: int, wants: dict[Week, float]
) -> None:
    """Eat a stored harvest week by week as it is wanted; the rest counts when it is lifted."""
    left = lifted.amount
    last = week_of(lifted.day + timedelta(days=keeps_days))
    for week in week_of(lifted.day).until(last):
        eaten = min(left, max(0.0, wants.get(week, 0.0) - supply[week]))
        supply[week] += eaten
        left -= eaten
    supply[week_of(lifted.day)] += left


def _harvest_if(sowing: Sowing, case: str) -> list[HarvestDay]:
    if case == "likely":
        return list(sowing.harvest)
    ripe: date = getattr(sowing.ripe, case)
    shift = ripe - sowing.ripe.likely
    if isinstance(sowing.crop.habit, Once):
        holds_until = ripe + timedelta(days=int(sowing.crop.habit.hold_days.middle))
        return [
            HarvestDay(max(ripe, min(one.day, holds_until)), one.amount) for one in sowing.harvest
        ]
    return [HarvestDay(one.day + shift, one.amount) for one in sowing.harvest]
