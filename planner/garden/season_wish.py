"""Season wishes: the days to plan for, the days for garden work, the risk taken."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class AwayTime:
    """Days on which nobody is there, both ends included."""

    first: date
    last: date


@dataclass(frozen=True, slots=True)
class SeasonWish:
    """What the grower wishes for this season.

    `freeze_risk`: tender plants go out when at most this share of years still freezes.
    `garden_weekdays`: Monday is 0. `turnover_days`: ground rests this long between blocks.
    `cover_weeks`: under a cover tender plants go out this much earlier; 0 without one.
    `shares_ground`: a guest may stand between or beneath another crop (§30).
    """

    first: date
    last: date
    freeze_risk: float
    garden_weekdays: frozenset[int]
    away: tuple[AwayTime, ...]
    turnover_days: int
    cover_weeks: float
    shares_ground: bool = True

    def is_away(self, day: date) -> bool:
        """Whether nobody is there on that day."""
        return any(time.first <= day <= time.last for time in self.away)

    def is_garden_day(self, day: date) -> bool:
        """Whether garden work may fall on that day."""
        return day.weekday() in self.garden_weekdays and not self.is_away(day)
