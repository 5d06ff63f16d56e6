"""Targets: an amount of a crop wanted each week, or once by a day."""

from dataclasses import dataclass
from datetime import date

from planner.garden.crop import Crop
from planner.terms import Place, Week, week_of


@dataclass(frozen=True, slots=True)
class WeeklyTarget:
    """So much of a crop each week from `first` to `last`, in the crop's unit."""

    crop: Crop
    each_week: float
    first: date
    last: date
    place: Place

    def wants(self) -> dict[Week, float]:
        """The amount wanted in each week.

        A week belongs to the target when its Thursday does, as ISO 8601 gives a week to the
        year its Thursday lies in; a target without a Thursday has the week it begins in.
        """
        weeks = week_of(self.first).until(week_of(self.last))
        whole = [week for week in weeks if self.first <= week.days[3] <= self.last]
        return dict.fromkeys(whole or [week_of(self.first)], self.each_week)


@dataclass(frozen=True, slots=True)
class OnceTarget:
    """So much of a crop, all of it there by `by`, in the crop's unit."""

    crop: Crop
    amount: float
    by: date
    place: Place

    def wants(self) -> dict[Week, float]:
        """The whole amount in the week of its day."""
        return {week_of(self.by): self.amount}


Target = WeeklyTarget | OnceTarget
