"""The garden: everything the grower has and asks for, complete."""

import math
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date

from planner.garden.bed import Bed
from planner.garden.caution import Caution
from planner.garden.crop import Crop
from planner.garden.kept_ground import KeptGround
from planner.garden.paper import Paper, usual_paper
from planner.garden.season_wish import SeasonWish
from planner.garden.seed_wish import SeedWish
from planner.garden.shared_ground import SharedGround
from planner.garden.site import Site
from planner.garden.soil_wish import SoilWish
from planner.garden.target import Target
from planner.garden.water_wish import WaterWish
from planner.terms import Unit, Week


@dataclass(frozen=True, slots=True)
class Garden:
    """A complete plan as the grower wrote it, with the almanac's figures filled in.

    `kept` is ground that is not the planner's. `shared` holds the pairs of wanted crops that may
    share ground, and none where the grower does not wish it. `soil`, `water`, `seed` and
    `cautions` bear on no date: a season does not rest on them, and repr leaves them out.
    """

    site: Site
    wish: SeasonWish
    beds: tuple[Bed, ...]
    targets: tuple[Target, ...]
    soil: SoilWish = field(repr=False)
    water: WaterWish = field(repr=False)
    seed: SeedWish = field(repr=False)
    cautions: tuple[Caution, ...] = field(repr=False)
    kept: tuple[KeptGround, ...] = ()
    shared: tuple[SharedGround, ...] = ()

    @property
    def crops(self) -> dict[str, Crop]:
        """The crops wanted, in the order of the plan."""
        return {target.crop.name: target.crop for target in self.targets}

    @property
    def paper(self) -> Paper:
        """The paper its sheets are printed on."""
        stated = self.site.paper
        return stated if isinstance(stated, Paper) else usual_paper(self.unit)

    @property
    def unit(self) -> Unit:
        """The grower's unit of length: the one the first bed is written in."""
        return self.beds[0].note.unit

    def bed(self, name: str) -> Bed:
        """The bed of a name; a StopIteration where there is none, which is our own mistake."""
        return next(bed for bed in self.beds if bed.name == name)

    def last_wanted(self, crop: str) -> date:
        """The last day on which a harvest of a crop is of use."""
        return max(target.last_day for target in self.targets if target.crop.name == crop)

    def wants(self) -> dict[str, dict[Week, float]]:
        """What is wanted of each crop in each week, weeks in order."""
        return self._summed(lambda _, amount: amount)

    def weights(self) -> dict[str, dict[Week, float]]:
        """The share of everything wanted that each crop and week is; all shares sum to 1.

        A crop's share goes by its mean priority over what is wanted of it, a week's share of
        its crop by amount times priority. Where all priorities are equal every crop has the same
        share, and the weighted fill is the mean over crops of each crop's fill.
        """
        worth = self._summed(lambda target, amount: amount * target.priority)
        wanted = {name: math.fsum(weeks.values()) for name, weeks in self.wants().items()}
        priority = {name: math.fsum(weeks.values()) / wanted[name] for name, weeks in worth.items()}
        everything = math.fsum(priority.values())
        return {
            name: {week: one / wanted[name] / everything for week, one in weeks.items()}
            for name, weeks in worth.items()
        }

    def _summed(self, of: Callable[[Target, float], float]) -> dict[str, dict[Week, float]]:
        """Something of each target's amount in a week, by crop and week, weeks in order."""
        sums: dict[str, dict[Week, float]] = {name: defaultdict(float) for name in self.crops}
        for target in self.targets:
            for week, amount in target.wants().items():
                sums[target.crop.name][week] += of(target, amount)
        return {name: dict(sorted(weeks.items())) for name, weeks in sums.items()}
