"""How well a season does: shares of what is wanted, by their textbook definitions.

Fill is the share of the amount wanted that is met, weeks met the share of weeks met in full,
surplus the amount beyond. Each crop counts alike, whatever its unit. Only weeks of the season,
and any others that are wanted, count.
"""

from dataclasses import dataclass
from statistics import fmean

from planner.garden import Crop
from planner.scheduling import Supply, Unmet, UnmetKind
from planner.terms import Week

_SHORT_OF_FULL = 1e-6
# Weeks that no plan for this season could feed, whatever its ground.
_OUT_OF_REACH = {
    UnmetKind.TOO_EARLY,
    UnmetKind.TOO_LATE,
    UnmetKind.BETWEEN,
    UnmetKind.AWAY,
    UnmetKind.SOIL,
    UnmetKind.PAST,
    UnmetKind.FROST,
    UnmetKind.HEAT,
}


@dataclass(frozen=True, slots=True)
class CropOutlook:
    """A crop's weeks: wanted, expected, low and high, in the crop's unit."""

    crop: Crop
    wants: dict[Week, float]
    supply: Supply
    unmet: tuple[Unmet, ...]

    def met(self, week: Week) -> float:
        """The share of a wanted week that is met, 0 to 1."""
        return min(1.0, self.supply.expected.get(week, 0.0) / self.wants[week])

    @property
    def wanted(self) -> float:
        """All that is wanted."""
        return sum(self.wants.values())

    @property
    def fill(self) -> float:
        """Share of the amount wanted that is met."""
        return sum(self.met(week) * amount for week, amount in self.wants.items()) / self.wanted

    @property
    def reachable(self) -> float:
        """Share of the amount wanted in weeks that some sowing could feed."""
        lost = sum(one.amount for one in self.unmet if one.reason.kind in _OUT_OF_REACH)
        return 1.0 - lost / self.wanted

    @property
    def weeks_met(self) -> float:
        """Share of wanted weeks met in full."""
        return fmean(self.met(week) >= 1 - _SHORT_OF_FULL for week in self.wants)

    @property
    def surplus(self) -> float:
        """Amount beyond what is wanted, as a share of what is wanted."""
        expected = self.supply.expected
        over = sum(max(0.0, expected[week] - self.wants.get(week, 0.0)) for week in expected)
        return over / self.wanted


@dataclass(frozen=True, slots=True)
class Measures:
    """The season in five shares, means over crops.

    `bound` is the fill no plan can pass, because no sowing at all can feed the other weeks;
    ground is not yet counted in it. `gap` is what lies between.
    """

    fill: float
    weeks_met: float
    surplus: float
    bound: float

    @property
    def gap(self) -> float:
        """Bound less fill."""
        return max(0.0, self.bound - self.fill)


def measures_of(outlooks: tuple[CropOutlook, ...]) -> Measures:
    """The measures of all crops together."""
    return Measures(
        fill=fmean(one.fill for one in outlooks),
        weeks_met=fmean(one.weeks_met for one in outlooks),
        surplus=fmean(one.surplus for one in outlooks),
        bound=fmean(one.reachable for one in outlooks),
    )
