"""The pace of growth through the year, by the calendar.

Without temperatures, days to maturity are calendar days. Two published facts slow them down:
crops ripening in fall take about two weeks longer (§9), and hardly anything grows while days
are shorter than ten hours (§10).
"""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from planner.climate import Climate, shortest_day

# Virginia Cooperative Extension fall formula (VCE-FALL): "about two weeks" added in fall.
FALL_EXTRA_DAYS = 14.0
# The two weeks are reached over this time before the average first freeze. The formula counts
# back from the freeze itself and Maryland's example from a fortnight earlier; both get the
# whole fourteen days. From memory: the forty days over which they come in.
_FALL_BEGINS_DAYS = 70
_FALL_WHOLE_DAYS = 30
_WINTER_FADES_DAYS = 40
# "Little growth" under ten hours of day (OSU-10H); that it is a quarter is from memory.
SHORT_DAY_H = 10.0
SHORT_DAY_RATE = 0.25
# Days are counted so far beyond both ends: no crop of a season takes longer, or began earlier.
_LONGEST_LIFE_DAYS = 900


@dataclass(frozen=True, slots=True)
class _Fall:
    """The time in which ripening takes longer: it rises to the `whole` extra days, and fades."""

    begins: date
    whole: date
    over: date

    def extra_on(self, day: date) -> float:
        """Extra days of a crop ripe on a day of this time."""
        rising = (day - self.begins).days / (self.whole - self.begins).days
        fading = (self.over - day).days / _WINTER_FADES_DAYS
        return FALL_EXTRA_DAYS * min(1.0, rising, fading)


@dataclass(frozen=True)
class Pace:
    """Growing days between any two dates at one site about the days from `first` to `last`."""

    climate: Climate
    first: date
    last: date
    words: str = "by the calendar"
    past: tuple[()] = ()

    @cached_property
    def _from(self) -> date:
        """The day counting begins on: what has begun by `first` grew before it."""
        return self.first - timedelta(days=_LONGEST_LIFE_DAYS)

    @cached_property
    def _grown(self) -> list[float]:
        """Growing days from the first day counted to each later one."""
        sums = [0.0]
        for ordinal in range(self._from.toordinal(), self.last.toordinal() + _LONGEST_LIFE_DAYS):
            hours = self.climate.day_length_h(date.fromordinal(ordinal))
            sums.append(sums[-1] + (1.0 if hours >= SHORT_DAY_H else SHORT_DAY_RATE))
        return sums

    @cached_property
    def _extra(self) -> list[float]:
        """Extra days a crop ripening on each day needs because it is fall."""
        return [
            self._extra_on(date.fromordinal(self._from.toordinal() + n))
            for n in range(len(self._grown))
        ]

    def _extra_on(self, day: date) -> float:
        for fall in self._falls:
            if fall.begins < day < fall.over:
                return fall.extra_on(day)
        return 0.0

    @cached_property
    def _falls(self) -> tuple[_Fall, ...]:
        """The fall of every freeze year that touches the days, in order."""
        last = self.last + timedelta(days=_LONGEST_LIFE_DAYS)
        years = self.climate.freeze_years(self._from, last)
        return tuple(_fall(year.fall_half, self.climate.site.latitude_deg) for year in years)

    def _index(self, day: date) -> int:
        return max(0, (day - self._from).days)

    def day_after(self, start: date, growing_days: float) -> date:
        """The first day on which so many growing days have passed since `start`."""
        grown = self._grown
        index = self._index(start)
        goal = grown[index] + growing_days - 1e-9
        while index < len(grown) - 1 and grown[index] < goal:
            index += 1
        return self._from + timedelta(days=index)

    def ripe_on(self, start: date, days: float) -> date:
        """The day a crop of `days` to maturity, counted from `start`, is ripe."""
        grown, extra = self._grown, self._extra
        begin = self._index(start)
        index = begin + max(0, int(days))
        last = len(grown) - 1
        goal = grown[begin] + days - 1e-9
        while index < last and grown[index] < goal + extra[index]:
            index += 1
        return self._from + timedelta(days=min(index, last))

    def fall_extra_days(self, day: date) -> float:
        """Extra days counted for a crop ripe on `day`."""
        return self._extra[self._index(day)]


def _fall(fall_half: date, latitude_deg: float) -> _Fall:
    begins = fall_half - timedelta(days=_FALL_BEGINS_DAYS)
    whole = fall_half - timedelta(days=_FALL_WHOLE_DAYS)
    over = max(_midwinter_by(fall_half, latitude_deg), fall_half) + timedelta(
        days=_WINTER_FADES_DAYS
    )
    return _Fall(begins, whole, over)


def _midwinter_by(fall_half: date, latitude_deg: float) -> date:
    """The midwinter of a fall: the nearest, as the first freeze may come after it."""
    near = (shortest_day(latitude_deg, fall_half.year + n) for n in (-1, 0, 1))
    return min(near, key=lambda day: abs(day - fall_half))
