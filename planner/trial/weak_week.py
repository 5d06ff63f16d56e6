"""Weak weeks: where a season holds in the fewest years, what mostly fails, and what would help."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from planner.garden import Cut, Store
from planner.scheduling import Sowing
from planner.terms import Week, week_of
from planner.trial.crop_trial import HOLDS, CropTrial
from planner.trial.replay import Replay

_MOST = 3
# A week that holds in nine years of ten is not weak.
_STRONG = 0.9

Weights = Mapping[str, Mapping[Week, float]]


class Failing(Enum):
    """What mostly fails in a week that is not met."""

    NEVER_PLANNED = "never planned"
    FROST = "killed by frost"
    HEAT = "spoilt by heat or long days"
    LATE = "not ripe yet"
    OVER = "over by then"
    BETWEEN = "between two harvests"
    TOO_LITTLE = "too little comes"


_REMEDIES = {
    Failing.NEVER_PLANNED: (
        "No sowing is planned for it; what planner schedule says is unmet there tells why."
    ),
    Failing.FROST: "A cover for cold nights, a smaller freeze_risk or a hardier crop would help.",
    Failing.HEAT: "Shade or a variety that bears heat would help; else want another crop then.",
    Failing.LATE: (
        "A sowing one to two weeks earlier, more ground at that time or a quicker variety would "
        "help."
    ),
    Failing.OVER: "A variety that stands longer, or a smaller sowing a week later, would help.",
    Failing.BETWEEN: (
        "It comes a week earlier or later there; two smaller sowings in place of one would even "
        "it out."
    ),
    Failing.TOO_LITTLE: (
        "More plants would help; if it is short in the plan already, planner schedule tells why."
    ),
}


@dataclass(frozen=True, slots=True)
class WeakWeek:
    """A week of a crop that holds in `share` of the years, what mostly fails, and a remedy."""

    crop: str
    week: Week
    share: float
    failing: Failing

    @property
    def remedy(self) -> str:
        """What would help, in a sentence."""
        return _REMEDIES[self.failing]


def weakest_weeks(
    crops: tuple[CropTrial, ...], weights: Weights, replays: list[list[Replay]]
) -> tuple[WeakWeek, ...]:
    """The three weeks that hold in the fewest years; of equals what is worth most.

    Weeks for which the plan itself has nine tenths come first: of the others the schedule tells
    that they are unmet.
    """
    ranked = sorted(
        (not _is_promised(one, week, planned), share, -weights[one.crop.name][week], week, number)
        for number, one in enumerate(crops)
        for planned in [_planned(one, replays)]
        for week in one.wants
        if (share := one.share_holding(week)) < _STRONG
    )
    return tuple(
        WeakWeek(crops[number].crop.name, week, share, _failing(crops[number], week, replays))
        for _, share, _, week, number in ranked[:_MOST]
    )


def _planned(crop: CropTrial, replays: list[list[Replay]]) -> dict[Week, float]:
    planned: dict[Week, float] = {}
    for one in replays:
        if one[0].sowing.crop.name != crop.crop.name:
            continue
        for week, amount in _serving(one[0].sowing).items():
            planned[week] = planned.get(week, 0.0) + amount
    return planned


def _serving(sowing: Sowing) -> dict[Week, float]:
    """What a sowing was planned to bring to each week; a store may serve every week it keeps."""
    serving: dict[Week, float] = {}
    for taken in sowing.harvest:
        week = week_of(taken.day)
        serving[week] = serving.get(week, 0.0) + taken.amount
        if isinstance(sowing.crop.habit, Store):
            keeps = int(sowing.crop.habit.store_days.middle) // 7
            serving |= dict.fromkeys(week.until(week.after(keeps)), taken.amount)
    return serving


def _is_promised(crop: CropTrial, week: Week, planned: dict[Week, float]) -> bool:
    return planned.get(week, 0.0) >= HOLDS * crop.wants[week] - 1e-6


def _failing(crop: CropTrial, week: Week, replays: list[list[Replay]]) -> Failing:
    """What fails in most of the years in which a week does not hold."""
    mine = [
        (amount, one)
        for one in replays
        if one[0].sowing.crop.name == crop.crop.name
        and (amount := _serving(one[0].sowing).get(week, 0.0)) > 0
    ]
    if not mine:
        return Failing.NEVER_PLANNED
    counted: Counter[Failing] = Counter()
    for year in range(len(crop.years)):
        if not crop.holds(year, week):
            worst = _worst([(amount, _fate(one[year], week)) for amount, one in mine])
            counted[worst] += 1
    order = list(Failing)
    return max(counted, key=lambda one: (counted[one], -order.index(one)))


def _worst(fates: list[tuple[float, Failing]]) -> Failing:
    """What took most of what was planned; too little where nothing was taken."""
    lost: dict[Failing, float] = {}
    for amount, fate in fates:
        if fate is not Failing.TOO_LITTLE:
            lost[fate] = lost.get(fate, 0.0) + amount
    order = list(Failing)
    return max(lost, key=lambda one: (lost[one], -order.index(one)), default=Failing.TOO_LITTLE)


def _fate(replay: Replay, week: Week) -> Failing:
    """Why a sowing does not serve a week it was planned for."""
    if replay.killed_on <= week.sunday:
        return Failing.FROST
    if week in replay.days:
        return Failing.TOO_LITTLE
    if replay.spoilt_on <= week.sunday:
        return Failing.HEAT
    if not replay.days or min(replay.days) > week or _lags(replay, week):
        return Failing.LATE
    return Failing.BETWEEN if max(replay.days) > week else Failing.OVER


def _lags(replay: Replay, week: Week) -> bool:
    """Whether what is cut again has not had by a week the cuts that were planned by then."""
    if not isinstance(replay.sowing.crop.habit, Cut):
        return False
    planned = {week_of(taken.day) for taken in replay.sowing.harvest}
    return sum(one <= week for one in replay.days) < sum(one <= week for one in planned)
