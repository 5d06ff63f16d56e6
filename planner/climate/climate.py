"""Freeze dates at any risk, year by year.

Freeze dates follow a normal law around their half-of-years date (rules §6). Years are told
apart by spring: a freeze year begins with one spring's last freeze and ends with the first
freeze after it, which in the south falls in the next calendar year.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from statistics import NormalDist

from planner.climate.day_length import day_length_h
from planner.garden import FreezeDates, FreezeDay, FreezesAllYear, NeverFreezes, Site


@dataclass(frozen=True, slots=True)
class FreezeYear:
    """One spring's last freeze and the first freeze after it, each at half of all years."""

    spring_half: date
    fall_half: date
    spring_spread_days: float
    fall_spread_days: float

    def spring_at_risk(self, risk: float) -> date:
        """The day after which a share `risk` of years still freezes."""
        shift = NormalDist().inv_cdf(1 - risk) * self.spring_spread_days
        return self.spring_half + timedelta(days=round(shift))

    def fall_at_risk(self, risk: float) -> date:
        """The day before which a share `risk` of years has frozen already."""
        shift = NormalDist().inv_cdf(risk) * self.fall_spread_days
        return self.fall_half + timedelta(days=round(shift))

    def share_freezing_after(self, day: date) -> float:
        """The share of years that still freeze after `day` in spring."""
        return 1 - NormalDist(0, self.spring_spread_days or 1e-9).cdf((day - self.spring_half).days)

    def share_frozen_by(self, day: date) -> float:
        """The share of years that have frozen by `day` in fall."""
        return NormalDist(0, self.fall_spread_days or 1e-9).cdf((day - self.fall_half).days)

    @property
    def frost_free_days(self) -> int:
        """Days strictly between the two half-of-years dates, as freeze tables count them."""
        return (self.fall_half - self.spring_half).days - 1


@dataclass(frozen=True, slots=True)
class Climate:
    """The climate of a site."""

    site: Site

    def day_length_h(self, day: date) -> float:
        """Hours of daylight."""
        return day_length_h(self.site.latitude_deg, day)

    @property
    def never_freezes(self) -> bool:
        """Whether frost sets no limits here."""
        return isinstance(self.site.freezes, NeverFreezes)

    @property
    def freezes_all_year(self) -> bool:
        """Whether any night of the year may freeze."""
        return isinstance(self.site.freezes, FreezesAllYear)

    def freeze_years(self, first: date, last: date) -> tuple[FreezeYear, ...]:
        """Every freeze year that touches the days from `first` to `last`, in order.

        Empty where it never freezes or freezes all year: such a site has no freeze dates.
        """
        freezes = self.site.freezes
        if not isinstance(freezes, FreezeDates):
            return ()
        years = range(first.year - 2, last.year + 2)
        return tuple(_freeze_year(freezes.last_spring, freezes.first_fall, y) for y in years)


def _freeze_year(spring: FreezeDay, fall: FreezeDay, year: int) -> FreezeYear:
    spring_half = spring.half.in_year(year)
    fall_half = fall.half.in_year(year)
    if fall_half <= spring_half:
        fall_half = fall.half.in_year(year + 1)
    return FreezeYear(spring_half, fall_half, spring.spread_days, fall.spread_days)
