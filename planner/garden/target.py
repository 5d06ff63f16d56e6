"""Targets: an amount of a crop wanted each week, or once by a day."""

from dataclasses import dataclass, field
from datetime import date

from planner.garden.crop import Crop
from planner.terms import Place, Week, week_of

USUAL_PRIORITY = 1.0


@dataclass(frozen=True, slots=True)
class WeeklyTarget:
    """So much of a crop each week from `first` to `last`, in the crop's unit.

    Where ground is short, what has a `priority` of 2 is worth twice as much as what has 1.
    """

    crop: Crop
    each_week: float
    first: date
    last: date
    place: Place = field(repr=False)
    priority: float = USUAL_PRIORITY

    def wants(self) -> dict[Week, float]:
        """The amount wanted in each week.

        A week belongs to the target when its Thursday does, as ISO 8601 gives a week to the
        year its Thursday lies in; a target without a Thursday has the week it begins in.
        """
        weeks = week_of(self.first).until(week_of(self.last))
        whole = [week for week in weeks if self.first <= week.thursday <= self.last]
        return dict.fromkeys(whole or [week_of(self.first)], self.each_week)

    @property
    def last_day(self) -> date:
        """The last day on which it helps: the Sunday of its last week."""
        return max(self.wants()).sunday


@dataclass(frozen=True, slots=True)
class OnceTarget:
    """So much of a crop, all of it there by `by`, in the crop's unit; `priority` as above."""

    crop: Crop
    amount: float
    by: date
    place: Place = field(repr=False)
    priority: float = USUAL_PRIORITY

    def wants(self) -> dict[Week, float]:
        """The whole amount in one week: the last whose Thursday is not past its day."""
        thursday_gone = self.by.weekday() >= 3
        return {week_of(self.by).after(0 if thursday_gone else -1): self.amount}

    @property
    def last_day(self) -> date:
        """The last day on which it helps."""
        return self.by


Target = WeeklyTarget | OnceTarget
