"""The choice of sowings, spaced by harvest date: first come to the ground, first served.

Week by week each crop asks for the sowing that would feed the first week still lacking. The
sowing that takes up ground first is placed first. So dates come from the harvest wanted and
never from a fixed interval (rules §12).
"""

from dataclasses import dataclass
from datetime import date

from planner.climate import BEYOND, LEAD, Climate
from planner.garden import Garden
from planner.growth import Conditions, Paces, limits_of, outdoor_times
from planner.scheduling.candidate import CropCandidates, CropTimes, candidates_of
from planner.scheduling.maker import Asking, Prepared, ScheduleMaker, Turns
from planner.scheduling.sowing import Sowing
from planner.scheduling.unmet import Unmet
from planner.scheduling.workdays import Workdays


@dataclass(frozen=True, slots=True)
class Choice:
    """Sowings without names as yet, those standing with theirs, and what stays unmet."""

    sowings: tuple[Sowing, ...]
    unmet: tuple[Unmet, ...]


def choose_sowings(
    garden: Garden, climate: Climate, as_of: date, standing: tuple[Sowing, ...]
) -> Choice:
    """The sowings that feed the garden's targets from `as_of` on, around those standing.

    The schedule is made once in each order of asking, and once more with the crops the best of
    them fed least asking first; the one that lacks least is kept, the first of equals.
    """
    about = prepare(garden, climate, as_of, standing)
    makers = [ScheduleMaker(about, Turns(asking)) for asking in Asking]
    for maker in makers:
        maker.make()
    best = min(makers, key=_lacks)
    again = ScheduleMaker(about, Turns(Asking.AS_WRITTEN, best.least_fed()))
    again.make()
    best = min((best, again), key=_lacks)
    return Choice((*standing, *best.sowings), tuple(best.unmet()))


def _lacks(maker: ScheduleMaker) -> tuple[float, int]:
    return round(maker.shortfall(), 6), len(maker.sowings)


def prepare(
    garden: Garden, climate: Climate, as_of: date, standing: tuple[Sowing, ...]
) -> Prepared:
    """All candidates of all crops wanted."""
    wish = garden.wish
    workdays = Workdays(wish)
    paces = Paces(climate, wish.first - LEAD, wish.last + BEYOND)
    candidates = {}
    for name, crop in garden.crops.items():
        times = outdoor_times(
            crop, climate, wish.freeze_risk, (wish.first, wish.last), wish.cover_weeks
        )
        limits = limits_of(crop, climate, paces.temperatures)
        last_wanted = min(garden.last_wanted(name), wish.last)
        conditions = Conditions(times, paces.of(crop), limits)
        about = CropTimes(crop, conditions, workdays, max(as_of, wish.first), last_wanted)
        candidates[name] = CropCandidates(about, candidates_of(about))
    return Prepared(garden, standing, candidates)
