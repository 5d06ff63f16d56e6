"""The pace of growth by heat: days to maturity as degree-days at the temperature they are for.

A crop's published days are meant for the mean temperature it grows best at. Their heat is
gathered day by day at this site's temperatures, by the single sine with a level cut-off (§21);
days shorter than ten hours count half (§10).
"""

from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from planner.climate import SeasonTemperatures
from planner.garden import HeatNeeds
from planner.growth.heat import heat_sums, single_sine
from planner.terms import days_between

# The swing of a day around its mean at which published days are taken to be meant, degrees C
# either way (a range of 20 F); from memory.
REFERENCE_SWING_DEGC = 5.5
# However warm a day, it brings a crop on by this many published days at most; from memory.
MOST_OF_A_PUBLISHED_DAY = 1.25
# What the laid out days never bring is told as ripe so long after its start: beyond any season.
_NEVER_DAYS = 1000

# The heat of each of the days up to a year's first, worked out when it is asked for.
Before = Callable[[], Sequence[float]]


def reference_heat(needs: HeatNeeds) -> float:
    """Degree-days of one day at the crop's best mean temperature: what a published day holds."""
    best = needs.best.middle
    low, high = best - REFERENCE_SWING_DEGC, best + REFERENCE_SWING_DEGC
    return single_sine(low, high, needs.base.middle, needs.upper.middle)


def season_heat(
    temperatures: SeasonTemperatures, needs: HeatNeeds, day_shares: Sequence[float]
) -> list[float]:
    """Heat gathered before each day of a season, each day counted by its share.

    A day counts at most a quarter more than a published one: no heat makes a crop of fifty days
    one of twenty-five.
    """
    sums = heat_sums(
        temperatures.low_degc, temperatures.high_degc, needs.base.middle, needs.upper.middle
    )
    most = MOST_OF_A_PUBLISHED_DAY * reference_heat(needs)
    total = 0.0
    counted = [total]
    for day, share in enumerate(day_shares):
        total += min(sums[day + 1] - sums[day], most) * share
        counted.append(total)
    return counted


@dataclass(frozen=True, slots=True)
class HeatPace:
    """One year's pace for one crop; `past` holds the pace of each past year on record.

    `heat` is gathered before each day from `first` on, as the year has it. `before` gives the heat
    of each of the days up to `first`, the latest last: what has begun by then grew in them.
    """

    first: date
    heat: list[float]
    reference: float
    words: str
    before: Before
    past: "tuple[HeatPace, ...]" = ()

    def day_after(self, start: date, growing_days: float) -> date:
        """The first day by which so many published days of heat have been gathered."""
        if start < self.first:
            return self._begun_before(start, growing_days)
        index = (start - self.first).days
        goal = self.heat[index] + growing_days * self.reference - 1e-9
        reached = bisect_left(self.heat, goal, lo=index)
        if reached >= len(self.heat):
            return start + timedelta(days=_NEVER_DAYS)
        return self.first + timedelta(days=reached)

    def _begun_before(self, start: date, growing_days: float) -> date:
        """The same from a day before `first`; a day before all that `before` has counts in full."""
        before = self.before()
        known_from = self.first - timedelta(days=len(before))
        asked = growing_days * self.reference
        for day in days_between(start, self.first - timedelta(days=1)):
            if asked <= 1e-9:
                return day
            asked -= before[(day - known_from).days] if day >= known_from else self.reference
        return self.day_after(self.first, asked / self.reference)

    def ripe_on(self, start: date, days: float) -> date:
        """The day a crop of `days` to maturity, counted from `start`, is ripe."""
        return self.day_after(start, days)

    def fall_extra_days(self, day: date) -> float:
        """None: heat itself slows a crop down in fall."""
        del day
        return 0.0
