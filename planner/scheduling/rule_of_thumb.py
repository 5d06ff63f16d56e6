"""The rule of thumb: what a careful grower does on paper, to compare the planner with.

Each crop is sown in the same amount at a fixed interval. What is sown then grows as everything
does here: it ripens when the site's climate has it ripe and stands for its hold; each week takes
what it wants of what stands, and the rest is surplus when its hold ends.
"""

from dataclasses import dataclass
from datetime import date
from statistics import fmean

from planner.climate import BEYOND, LEAD, Climate
from planner.garden import Garden
from planner.growth import Conditions, Paces, limits_of, outdoor_times
from planner.scheduling.candidate import CropCandidates, CropTimes, candidates_of
from planner.scheduling.paper_plan import Thumb, paper_plan
from planner.scheduling.paper_year import PaperYear, Room
from planner.scheduling.workdays import Workdays

__all__ = ["Room", "Thumb", "ThumbResult", "crop_candidates", "rule_of_thumb"]


@dataclass(frozen=True, slots=True)
class ThumbResult:
    """What comes of a rule of thumb.

    `fill` is the share of all that is wanted that is met, by priority; `surplus` the share beyond
    what is wanted, a mean over crops; `shares` the fill of each crop. `sowings` counts those that
    found ground, lost ones among them.
    """

    sowings: int
    fill: float
    surplus: float
    shares: dict[str, float]


def rule_of_thumb(
    garden: Garden, climate: Climate, as_of: date, thumb: Thumb, room: Room
) -> ThumbResult:
    """What a grower has who sows every crop of the garden at a fixed interval from `as_of` on."""
    wants = garden.wants()
    year = PaperYear(garden, room)
    for found in crop_candidates(garden, climate, as_of):
        year.write_down(paper_plan(found, wants[found.about.crop.name], thumb))
    year.pass_by()
    wanted = {name: sum(weeks.values()) for name, weeks in wants.items()}
    shares = {
        name: 1.0 - sum(year.lacking[name].values()) / amount for name, amount in wanted.items()
    }
    unmet = sum(
        share * year.lacking[name][week] / wants[name][week]
        for name, weeks in garden.weights().items()
        for week, share in weeks.items()
    )
    return ThumbResult(
        sowings=year.made,
        fill=1.0 - unmet,
        surplus=fmean(year.surplus[name] / amount for name, amount in wanted.items()),
        shares=shares,
    )


def crop_candidates(garden: Garden, climate: Climate, as_of: date) -> list[CropCandidates]:
    """Every start each crop could have, from `as_of` on, in the order of the plan."""
    wish = garden.wish
    paces = Paces(climate, wish.first - LEAD, wish.last + BEYOND)
    workdays = Workdays(wish)
    found = []
    for name, crop in garden.crops.items():
        times = outdoor_times(
            crop, climate, wish.freeze_risk, (wish.first, wish.last), wish.cover_weeks
        )
        limits = limits_of(crop, climate, paces.temperatures)
        about = CropTimes(
            crop=crop,
            conditions=Conditions(times, paces.of(crop), limits),
            workdays=workdays,
            begin=max(as_of, wish.first),
            last_wanted=min(garden.last_wanted(name), wish.last),
        )
        found.append(CropCandidates(about, candidates_of(about)))
    return found
