"""The choice of sowings, spaced by harvest date: first come to the ground, first served.

Week by week each crop asks for the sowing that would feed the first week still lacking. The
sowing that takes up ground first is placed first. So dates come from the harvest wanted and
never from a fixed interval (rules §12).
"""

from dataclasses import dataclass
from datetime import date, timedelta

from planner.climate import Climate
from planner.garden import Garden
from planner.growth import Conditions, Paces, limits_of, outdoor_times
from planner.scheduling.candidate import CropTimes, candidates_of
from planner.scheduling.maker import Asking, Prepared, ScheduleMaker
from planner.scheduling.sowing import Sowing
from planner.scheduling.unmet import Unmet
from planner.scheduling.workdays import Workdays

# Temperatures are laid out from a little before the season, for the soil's warmth, to some
# time after it, for courses that end beyond.
_LEAD = timedelta(days=14)
_BEYOND = timedelta(days=150)


@dataclass(frozen=True, slots=True)
class Choice:
    """Sowings without names as yet, those standing with theirs, and what stays unmet."""

    sowings: tuple[Sowing, ...]
    unmet: tuple[Unmet, ...]


def choose_sowings(
    garden: Garden, climate: Climate, as_of: date, standing: tuple[Sowing, ...]
) -> Choice:
    """The sowings that feed the garden's targets from `as_of` on, around those standing.

    The schedule is made once in each order of asking; the one that lacks least is kept, the
    first of equals.
    """
    about = prepare(garden, climate, as_of, standing)
    makers = [ScheduleMaker(about, order) for order in Asking]
    for maker in makers:
        maker.make()
    best = min(makers, key=lambda one: (round(one.shortfall(), 6), len(one.sowings)))
    return Choice((*standing, *best.sowings), tuple(best.unmet()))


def prepare(
    garden: Garden, climate: Climate, as_of: date, standing: tuple[Sowing, ...]
) -> Prepared:
    """All candidates of all crops wanted."""
    wish = garden.wish
    workdays = Workdays(wish)
    paces = Paces(climate, wish.first - _LEAD, wish.last + _BEYOND)
    candidates = {}
    for name, crop in garden.crops.items():
        times = outdoor_times(
            crop, climate, wish.freeze_risk, (wish.first, wish.last), wish.cover_weeks
        )
        limits = limits_of(crop, climate, paces.temperatures)
        last_wanted = min(garden.last_wanted(name), wish.last)
        conditions = Conditions(times, paces.of(crop), limits)
        about = CropTimes(crop, conditions, workdays, last_wanted)
        candidates[name] = candidates_of(about, max(as_of, wish.first))
    return Prepared(garden, standing, workdays, candidates)
