"""The question: what a choice of sowings rests on, worked out once."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from planner.garden import Garden
from planner.ground import NOBODY, BedClass, Ground, Holding, classes_of
from planner.scheduling.arranging import offers_taken
from planner.scheduling.ideal import GroundThereIs, IdealSeason
from planner.scheduling.offers import EVERYTHING, ONLY_WANTS, CropOffers, Worth, offers_of, worth_of
from planner.scheduling.sowing import Sowing
from planner.scheduling.starts import CropCandidates
from planner.scheduling.supply import supply_of
from planner.terms import Week


@dataclass(frozen=True)
class Question:
    """Everything a choice rests on, worked out once.

    `found`: every start of every crop. `standing`: sowings begun already. `movable`: sowings of
    an earlier season from which changes are counted; none where nothing is to be kept.
    """

    garden: Garden
    found: Mapping[str, CropCandidates]
    standing: tuple[Sowing, ...] = ()
    movable: tuple[Sowing, ...] = ()

    @cached_property
    def lacks(self) -> dict[str, dict[Week, float]]:
        """What each crop's weeks lack beyond what stands already."""
        lacks = {}
        for name, wants in self.garden.wants().items():
            mine = [one for one in self.standing if one.crop.name == name]
            had = supply_of(mine, wants).expected
            lacks[name] = {
                week: max(0.0, want - had.get(week, 0.0)) for week, want in wants.items()
            }
        return lacks

    @cached_property
    def worth_by_week(self) -> dict[str, dict[Week, float]]:
        """What one unit of a crop is worth in a week, in thousandths of everything wanted."""
        wants = self.garden.wants()
        return {
            name: {week: EVERYTHING * share / wants[name][week] for week, share in weeks.items()}
            for name, weeks in self.garden.weights().items()
        }

    @cached_property
    def offers(self) -> list[CropOffers]:
        """Every offer of every crop."""
        taken = offers_taken(self.movable, self.garden.wish.turnover_days)
        return [
            offers_of(found, self.lacks[name], self.worth_by_week[name], taken.get(name, ()))
            for name, found in self.found.items()
        ]

    @cached_property
    def ground(self) -> GroundThereIs:
        """The classes of beds, and what is free of each on the days anything enters."""
        enters = [one.enters for one in self.offers]
        days = np.unique(np.concatenate(enters)) if enters else np.zeros(0, np.int64)
        classes = classes_of(self.garden.beds, self.garden.crops.values())
        beds = self.beds
        free = np.array([[_free_m(beds, one, int(day)) for day in days] for one in classes])
        return GroundThereIs(classes, days, free.reshape(len(classes), len(days)))

    @cached_property
    def worth(self) -> Worth:
        """What the chooser weighs."""
        weeks = sum(len(weeks) for weeks in self.garden.wants().values())
        line_m = sum(bed.line_um for bed in self.garden.beds) / 1e6
        wish = self.garden.wish
        days = (wish.last - wish.first).days
        return worth_of(weeks, line_m, days, changes_count=bool(self.movable))

    @cached_property
    def loosest(self) -> IdealSeason:
        """The ideal season in which only what goes without is weighed."""
        return IdealSeason(self.offers, self.ground, ONLY_WANTS, self.garden.shared)

    @property
    def hosts(self) -> dict[int, str]:
        """The names of sowings begun already, by the numbers under which they hold ground."""
        return {NOBODY - 1 - place: one.id for place, one in enumerate(self.standing)}

    @property
    def beds(self) -> Ground:
        """The beds, with what is kept and what stands; a new one each time."""
        garden = self.garden
        ground = Ground(garden.beds, garden.wish.turnover_days)
        number = {bed.name: place for place, bed in enumerate(garden.beds)}
        for bed, holding in (*self._kept(), *self._standing()):
            ground.hold(number[bed], holding)
        return ground

    def _kept(self) -> Iterator[tuple[str, Holding]]:
        rest = self.garden.wish.turnover_days
        for kept in self.garden.kept:
            days = kept.first.toordinal(), kept.last.toordinal() + rest
            yield (
                kept.bed,
                Holding(kept.from_um, kept.to_um, *days, NOBODY, kept.family),
            )

    def _standing(self) -> Iterator[tuple[str, Holding]]:
        rest = self.garden.wish.turnover_days
        numbers = {name: number for number, name in self.hosts.items()}
        for one in self.standing:
            for block in one.blocks:
                days = block.enter_on.toordinal(), block.leave_on.toordinal() + rest
                host = numbers.get(block.under, NOBODY)
                holder = numbers[one.id]
                family = one.crop.family.text
                held = Holding(block.from_um, block.to_um, *days, holder, family, host)
                yield block.bed, held


def _free_m(ground: Ground, beds: BedClass, day: int) -> float:
    """Metres of the line of a class that nobody holds on a day."""
    return sum(gap.length_um for bed in beds.beds for gap in ground.gaps(bed, day, day + 1)) / 1e6
