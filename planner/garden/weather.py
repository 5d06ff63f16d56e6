"""Daily weather: what one place's record says of the low and the high of every day."""

import math
from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.garden.water_wish import MonthlyDepth, NotTold
from planner.terms import Source


@dataclass(frozen=True, slots=True)
class DailyWeather:
    """One low and one high for each calendar day from `first` on, in degrees C, without gaps.

    `math.nan` stands where the record has no value, or none that can be believed. `left_out`
    tells, in one short sentence for each kind of value that was dropped, how many and why. `rain`
    is what an average month brings, where the record has rain; it bears on no date of a season, and
    repr leaves it out.
    """

    first: date
    low_degc: tuple[float, ...]
    high_degc: tuple[float, ...]
    source: Source
    left_out: tuple[str, ...] = ()
    rain: MonthlyDepth | NotTold = field(default=NotTold(), repr=False)

    def __post_init__(self) -> None:
        """A record without days, or with more lows than highs, is our own mistake."""
        if not self.low_degc or len(self.low_degc) != len(self.high_degc):
            message = f"{len(self.low_degc)} lows and {len(self.high_degc)} highs are no record"
            raise ValueError(message)

    @property
    def last(self) -> date:
        """The last day of the record."""
        return self.first + timedelta(days=len(self.low_degc) - 1)

    @property
    def years(self) -> range:
        """Every calendar year the record touches, even by one day."""
        return range(self.first.year, self.last.year + 1)

    @property
    def missing_days(self) -> int:
        """Days between `first` and `last` that lack their low, their high or both."""
        pairs = zip(self.low_degc, self.high_degc, strict=True)
        return sum(math.isnan(low) or math.isnan(high) for low, high in pairs)

    def low(self, day: date) -> float:
        """The day's low; missing outside the record."""
        return self._on(day, self.low_degc)

    def high(self, day: date) -> float:
        """The day's high; missing outside the record."""
        return self._on(day, self.high_degc)

    def _on(self, day: date, values: tuple[float, ...]) -> float:
        index = (day - self.first).days
        return values[index] if 0 <= index < len(values) else math.nan
