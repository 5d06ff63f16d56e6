"""Sites: where the garden lies and what its grower knows of its frosts.

A site is freezing at times, never, or all year round; the three are different answers, and
none of them is an error.
"""

from dataclasses import dataclass, field
from statistics import NormalDist

from planner.garden.paper import Paper, PaperByUnits
from planner.garden.weather import DailyWeather
from planner.terms import MonthDay, Source


@dataclass(frozen=True, slots=True)
class FreezeDay:
    """A freeze date: half of all years fall before it, with a spread (standard deviation).

    The spread is in days. `spread_source` says whether it was stated or assumed.
    """

    half: MonthDay
    spread_days: float
    source: Source
    spread_source: Source


@dataclass(frozen=True, slots=True)
class FreezeDates:
    """The last freeze of spring and the first freeze of fall."""

    last_spring: FreezeDay
    first_fall: FreezeDay


@dataclass(frozen=True, slots=True)
class NeverFreezes:
    """A site without freezes."""

    source: Source


@dataclass(frozen=True, slots=True)
class FreezesAllYear:
    """A site where any night of the year may freeze."""

    source: Source


@dataclass(frozen=True, slots=True)
class FreezesOnRecord:
    """A site whose freezes are to be read off its daily record."""

    source: Source


Freezes = FreezeDates | NeverFreezes | FreezesAllYear | FreezesOnRecord


@dataclass(frozen=True, slots=True)
class MonthlyTemperatures:
    """Twelve mean daily highs and lows, January first, degrees C."""

    high_degc: tuple[float, ...]
    low_degc: tuple[float, ...]
    source: Source


@dataclass(frozen=True, slots=True)
class NoTemperatures:
    """The plan states no monthly means."""


@dataclass(frozen=True, slots=True)
class NoWeather:
    """The plan names no daily record."""


@dataclass(frozen=True, slots=True)
class Site:
    """Where the garden lies. `latitude_deg` is negative in the south.

    `paper` bears on no date: a season does not rest on it, and repr leaves it out.
    """

    name: str
    latitude_deg: float
    freezes: Freezes
    temperatures: MonthlyTemperatures | NoTemperatures
    weather: DailyWeather | NoWeather
    paper: Paper | PaperByUnits = field(default=PaperByUnits(), repr=False)


_NORMAL_Z_OF_NINE_IN_TEN = NormalDist().inv_cdf(0.9)


def spread_between(half: MonthDay, nine_in_ten: MonthDay) -> float:
    """Spread in days of a normal law through the half-of-years date and a nine-in-ten date.

    The two may lie on either side of New Year. That freeze dates follow a normal law is an
    assumption (§6); published tables agree with it to about a day.
    """
    return abs(half.days_until(nine_in_ten)) / _NORMAL_Z_OF_NINE_IN_TEN
