"""The rule of thumb: what a careful grower does on paper, to compare the planner with.

Each crop is sown in the same amount at a fixed interval. What is sown then grows as everything
does here: it ripens when the site's climate has it ripe and stands for its hold; each week takes
what it wants of what stands, and the rest is surplus when its hold ends.
"""

import math
from dataclasses import dataclass, field
from datetime import date
from statistics import fmean

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling.sowing import Sowing
from planner.scheduling.starts import crop_candidates
from planner.scheduling.thumb.paper_plan import Thumb, paper_plan
from planner.scheduling.thumb.paper_year import PaperYear, Room

__all__ = ["Room", "Thumb", "ThumbResult", "rule_of_thumb"]


@dataclass(frozen=True, slots=True)
class ThumbResult:
    """What comes of a rule of thumb.

    `fill` is the share of all that is wanted that is met, by priority; `surplus` the share beyond
    what is wanted, a mean over crops; `shares` the fill of each crop. `sowings` counts those that
    found ground, lost ones among them; `grown` are those that came to a harvest.
    """

    sowings: int
    fill: float
    surplus: float
    shares: dict[str, float]
    grown: tuple[Sowing, ...] = field(default=(), compare=False, repr=False)


def rule_of_thumb(
    garden: Garden, climate: Climate, as_of: date, thumb: Thumb, room: Room
) -> ThumbResult:
    """What a grower has who sows every crop of the garden at a fixed interval from `as_of` on."""
    wants = garden.wants()
    year = PaperYear(garden, room)
    for found in crop_candidates(garden, climate, as_of):
        year.write_down(paper_plan(found, wants[found.about.crop.name], thumb))
    year.pass_by()
    wanted = {name: math.fsum(weeks.values()) for name, weeks in wants.items()}
    shares = {
        name: 1.0 - math.fsum(year.lacking[name].values()) / amount
        for name, amount in wanted.items()
    }
    unmet = math.fsum(
        share * year.lacking[name][week] / wants[name][week]
        for name, weeks in garden.weights().items()
        for week, share in weeks.items()
    )
    return ThumbResult(
        sowings=year.made,
        fill=1.0 - unmet,
        surplus=fmean(year.surplus[name] / amount for name, amount in wanted.items()),
        shares=shares,
        grown=year.sowings,
    )
