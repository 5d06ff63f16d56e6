"""The choice of sowings: which, when, how large and where (rules §12, §31 to §33).

The ideal season says what weeks and ground are worth, and which sowings it would have; these
are put on real ground, what still lacks is filled in, and parts of the plan are regrown again
and again. The ideal season without weights gives the bound that no plan can pass.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

import numpy as np

from planner.climate import Climate
from planner.garden import Garden
from planner.ground import NOBODY, BedClass, Ground, Holding, classes_of
from planner.scheduling.bound import bound_of
from planner.scheduling.candidate import CropCandidates
from planner.scheduling.chosen import Choice
from planner.scheduling.effort import EFFORTS
from planner.scheduling.filling import CropMarket, fill
from planner.scheduling.ideal import IdealSeason
from planner.scheduling.intents import arrange, intents_of
from planner.scheduling.lacking import unmet_of
from planner.scheduling.made import made_sowings
from planner.scheduling.offers import CropOffers, Floats, offers_of
from planner.scheduling.places import CropPlaces, fits_of
from planner.scheduling.pricing import GroundThereIs
from planner.scheduling.proposals import CropProposals, Mood
from planner.scheduling.regrowing import Regrowing
from planner.scheduling.sowing import Sowing
from planner.scheduling.starts import crop_candidates
from planner.scheduling.supply import supply_of
from planner.scheduling.topping_up import top_up
from planner.scheduling.working_plan import WorkingPlan
from planner.scheduling.worth import EVERYTHING, Worth, worth_of
from planner.terms import Week

# The ideal season that is followed fills so much of the ground: rows and blocks need some room.
_FILLED = 0.9
# Beds beyond which one order of arranging must do.
_MANY_BEDS = 60
# A stage of regrowing visits so many beds and crops, a crop counting as two beds; twice as many
# where there are 300 beds. The more beds and crops, the fewer rounds.
_VISITS, _CROP_VISITS, _MORE_VISITS_BEDS = 8_000, 2, 300


def choose_sowings(
    garden: Garden,
    climate: Climate,
    as_of: date,
    standing: tuple[Sowing, ...],
    effort: int,
) -> Choice:
    """The sowings that feed the garden's targets from `as_of` on, around those standing.

    The work is counted, not timed: the same garden gives the same sowings on any machine.
    """
    question = Question(garden, climate, as_of, standing)
    plan = _plan_of(question, effort)
    new = made_sowings(plan, garden.beds, garden.wish.turnover_days, question.hosts, garden.shared)
    sowings = (*standing, *new)
    unmet = unmet_of(garden, question.found, sowings)
    return Choice(sowings, tuple(unmet), bound_of(question))


@dataclass(frozen=True)
class Question:
    """Everything a choice rests on, worked out once."""

    garden: Garden
    climate: Climate
    as_of: date
    standing: tuple[Sowing, ...]

    @cached_property
    def found(self) -> dict[str, CropCandidates]:
        """Every start of every crop."""
        found = crop_candidates(self.garden, self.climate, self.as_of)
        return {one.about.crop.name: one for one in found}

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
        return [
            offers_of(found, self.lacks[name], self.worth_by_week[name])
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
        return worth_of(weeks, line_m, (wish.last - wish.first).days)

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


def _plan_of(question: Question, effort: int) -> WorkingPlan:
    """The plan that costs least after a first stage of regrowing, regrown further."""
    if not any(len(one) for one in question.offers):
        return WorkingPlan(question.offers, question.beds, question.worth)
    much = EFFORTS[effort]
    ground = question.ground
    with_room = replace(ground, free_m=_FILLED * ground.free_m)
    ideal = IdealSeason(question.offers, with_room, question.worth)
    markets = markets_of(question, ideal.ground_prices)
    beds = len(question.garden.beds)
    visits = much.share * _VISITS * (1 + beds / _MORE_VISITS_BEDS)
    rounds = int(visits / (beds + _CROP_VISITS * len(question.offers)))
    begun = []
    for intents in intents_of(ideal, much.drawn):
        plan = WorkingPlan(question.offers, question.beds, question.worth)
        arrange(plan, markets, intents, 1 if beds > _MANY_BEDS else much.orders)
        fill(plan, markets, Mood())
        regrowing = Regrowing(plan, markets)
        regrowing.run(rounds)
        begun.append(regrowing)
    best = min(begun, key=lambda one: one.plan.cost)
    for _ in range(much.stages - 1):
        best.run(rounds)
    top_up(best.plan, markets)
    return best.plan


def markets_of(question: Question, prices: Floats) -> list[CropMarket]:
    """What every crop may propose and where it may stand, at these prices of ground."""
    garden, ground = question.garden, question.ground
    standing = _standing_hosts(question)
    markets = []
    for offers in question.offers:
        crop = offers.crop
        pairs = tuple(pair for pair in garden.shared if pair.guest == crop.name)
        classes = tuple(
            (place, one) for place, one in enumerate(ground.classes) if crop.name in one.crops
        )
        proposals = CropProposals(offers, classes, ground.days, prices, question.worth, pairs)
        rents = [
            (one, rent.tolist()) for (_, one), rent in zip(classes, proposals.rents, strict=True)
        ]
        places = CropPlaces(offers, fits_of(garden.beds, crop, rents), pairs, standing)
        markets.append(CropMarket(proposals, places))
    return markets


def _standing_hosts(question: Question) -> dict[str, list[tuple[int, Holding]]]:
    """Stretches of sowings begun already on ground of their own, by crop."""
    crops = {
        number: one.crop.name for number, one in zip(question.hosts, question.standing, strict=True)
    }
    hosts: dict[str, list[tuple[int, Holding]]] = {}
    for bed, held in enumerate(question.beds.held):
        for one in held:
            if one.holder in crops and one.host == NOBODY:
                hosts.setdefault(crops[one.holder], []).append((bed, one))
    return hosts
