"""Revised: the season tried in past years with a revision each fortnight (rules §38).

A past year is laid over the season: at each revision its days so far are known, and what its nights
have killed is told as lost. That year stays among the past years the planning knows.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from planner.climate import Climate, SeasonTemperatures
from planner.garden import DailyWeather, Garden
from planner.growth import NEVER, begun_course, killed_on
from planner.journal import Entry, Event, Journal
from planner.scheduling import (
    Changing,
    CropYears,
    Earlier,
    Sowing,
    SowingState,
    choose_sowings,
    evenly,
    name_sowings,
)
from planner.season.season import EarlierSeason
from planner.terms import Place
from planner.trial import Basis, TriedYears, trial_of

_FORTNIGHT = timedelta(days=14)
_DRAFT = 0
_TOLD = Place("a past year")


@dataclass(frozen=True, slots=True)
class Revised:
    """Shares of what is wanted in a few past years, from the poorest on.

    `kept`: as it was planned; `revised`: revised each fortnight.
    """

    kept: tuple[float, ...]
    revised: tuple[float, ...]


NOT_REVISED = Revised((), ())
Begins = Callable[[int], None]


def revised_trial(
    season: EarlierSeason,
    as_of: date,
    tried: TriedYears,
    fills: Sequence[float],
    years: int,
    begins: Begins,
) -> Revised:
    """A season, as known on a day, revised each fortnight in so many of the years it was tried in.

    `fills` is what it gives in each when it is kept. The years are taken evenly from the poorest to
    the best; `begins` is told the number of each. Without a daily record there is none to take.
    """
    weather = tried.garden.site.weather
    if not years or not isinstance(weather, DailyWeather) or tried.basis is not Basis.PAST_YEARS:
        return NOT_REVISED
    ranked = sorted(range(len(fills)), key=lambda place: (fills[place], place))
    places = [ranked[place] for place in evenly(years, len(fills))]
    revised = []
    for number, place in enumerate(places, 1):
        begins(number)
        revised.append(_Year(tried.garden, weather, _only(tried, place)).fill(season, as_of))
    return Revised(tuple(fills[place] for place in places), tuple(revised))


def _only(tried: TriedYears, place: int) -> TriedYears:
    """One of the years tried."""
    crops = {
        name: replace(one, years=one.years[place : place + 1]) for name, one in tried.crops.items()
    }
    return replace(tried, count=1, crops=crops)


@dataclass(frozen=True, slots=True)
class _Year:
    """A past year as if it were this one, and the crops' times in it."""

    garden: Garden
    weather: DailyWeather
    tried: TriedYears

    def fill(self, season: EarlierSeason, as_of: date) -> float:
        """What the season gives of all that is wanted when it is revised in this year."""
        sowings, names = season.sowings, season.names_given
        lost: dict[str, Entry] = {}
        for day in _fortnights(as_of, self.garden.wish.last):
            lost |= {one.sowing: one for one in self._lost(sowings, lost, day)}
            told = Journal(tuple(sorted(lost.values(), key=lambda one: one.day)))
            garden = self._known_on(day)
            earlier = Earlier(sowings, told, Changing.LITTLE)
            choice = choose_sowings(garden, Climate(garden.site), day, earlier, _DRAFT)
            sowings, names = name_sowings(choice.sowings, choice.movable, names)
        grown = tuple(self._as_planned(one) for one in sowings)
        return trial_of(grown, self.tried, self.garden.wish.first).fill

    @property
    def _temperatures(self) -> SeasonTemperatures:
        """The same for every crop."""
        return next(iter(self.tried.crops.values())).years[0].temperatures

    def _lost(
        self, sowings: Sequence[Sowing], known: dict[str, Entry], day: date
    ) -> Iterator[Entry]:
        """What the nights up to a day have killed and is not known to be lost."""
        for one in sowings:
            crop = self.tried.crops.get(one.crop.name)
            if crop is not None and one.id not in known and one.enters_on < day:
                killed = _killed(one, crop, day)
                if killed is not NEVER:
                    yield Entry(killed, Event.LOST, one.id, None, "", _TOLD)

    def _known_on(self, day: date) -> Garden:
        """The garden with this year's days up to one in its record."""
        weather, year = self.weather, self._temperatures
        lows, highs = [*weather.low_degc], [*weather.high_degc]
        for number in range(len(lows), (day - weather.first).days):
            index = (weather.first + timedelta(days=number) - year.first).days
            inside = 0 <= index < len(year.low_degc)
            lows.append(year.low_degc[index] if inside else math.nan)
            highs.append(year.high_degc[index] if inside else math.nan)
        grown = replace(weather, low_degc=tuple(lows), high_degc=tuple(highs))
        return replace(self.garden, site=replace(self.garden.site, weather=grown))

    def _as_planned(self, one: Sowing) -> Sowing:
        """A sowing with its real dates, to be tried like one only planned."""
        crop = self.tried.crops.get(one.crop.name)
        if crop is None:
            return one
        usual = crop.usual.conditions
        course = begun_course(one.crop, one.way, one.sow_on, one.set_out_on, usual)
        return replace(one, state=SowingState.PLANNED, ripe=course.ripe)


def _fortnights(first: date, last: date) -> Iterator[date]:
    day = first + _FORTNIGHT
    while day <= last:
        yield day
        day += _FORTNIGHT


def _killed(one: Sowing, crop: CropYears, day: date) -> date:
    """The night up to a day that killed a sowing in open ground; NEVER if none did."""
    stands = crop.stands_from(one.enters_on, one.set_out_on or one.emerges_on)
    return killed_on(crop.years[0].deadly, (stands, min(day, one.clear_on)))
