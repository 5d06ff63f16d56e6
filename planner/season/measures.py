"""How well a season does: shares of what is wanted, by their textbook definitions.

Fill is the share of the amount wanted that is met, weeks met the share of weeks met in full,
surplus the amount beyond. A crop counts by its priority, whatever its unit. Only weeks of the
season, and any others that are wanted, count.
"""

import math
from dataclasses import dataclass
from statistics import fmean

from planner.garden import Garden
from planner.season.crop_outlook import CropOutlook


@dataclass(frozen=True, slots=True)
class Measures:
    """The season in five shares.

    Fill, bound and gap count each crop by its priority; weeks met and surplus are means over
    crops. `bound` is the fill no plan for these beds can pass.
    """

    fill: float
    weeks_met: float
    surplus: float
    bound: float

    @property
    def gap(self) -> float:
        """Bound less fill."""
        return max(0.0, self.bound - self.fill)


def fill_of(garden: Garden, outlooks: tuple[CropOutlook, ...]) -> float:
    """The share of the amount wanted that is met, each crop by its priority."""
    weights = garden.weights()
    return math.fsum(
        share * one.met(week) for one in outlooks for week, share in weights[one.crop.name].items()
    )


def measures_of(garden: Garden, outlooks: tuple[CropOutlook, ...], bound: float) -> Measures:
    """The measures of all crops together."""
    fill = fill_of(garden, outlooks)
    return Measures(
        fill=fill,
        weeks_met=fmean(one.weeks_met for one in outlooks),
        surplus=fmean(one.surplus for one in outlooks),
        bound=max(fill, bound),
    )
