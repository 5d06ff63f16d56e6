"""The garden: everything the grower has and asks for, complete."""

from collections import defaultdict
from dataclasses import dataclass
from datetime import date

from planner.garden.bed import Bed
from planner.garden.crop import Crop
from planner.garden.season_wish import SeasonWish
from planner.garden.site import Site
from planner.garden.target import Target
from planner.terms import Week


@dataclass(frozen=True, slots=True)
class Garden:
    """A complete plan as the grower wrote it, with the almanac's figures filled in."""

    site: Site
    wish: SeasonWish
    beds: tuple[Bed, ...]
    targets: tuple[Target, ...]

    @property
    def crops(self) -> dict[str, Crop]:
        """The crops wanted, in the order of the plan."""
        return {target.crop.name: target.crop for target in self.targets}

    def last_wanted(self, crop: str) -> date:
        """The last day on which a harvest of a crop is of use."""
        return max(target.last_day for target in self.targets if target.crop.name == crop)

    def wants(self) -> dict[str, dict[Week, float]]:
        """What is wanted of each crop in each week, weeks in order."""
        wants: dict[str, dict[Week, float]] = {name: defaultdict(float) for name in self.crops}
        for target in self.targets:
            for week, amount in target.wants().items():
                wants[target.crop.name][week] += amount
        return {name: dict(sorted(weeks.items())) for name, weeks in wants.items()}
