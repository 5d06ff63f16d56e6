"""One schedule in the making: steps placed on the ground in one order of asking."""

import heapq
import math
from dataclasses import dataclass
from datetime import timedelta
from enum import Enum

from planner.garden import Crop, Garden, Store
from planner.scheduling.candidate import Candidate, CropCandidates
from planner.scheduling.diagnosis import why_unfed
from planner.scheduling.draft import ENOUGH, CropDraft, Step
from planner.scheduling.fitting import (
    Fitting,
    counted_flow,
    harvest_of,
    leaves_on,
    shares_of,
    sowing_of,
)
from planner.scheduling.ground import Ground, fit_plants
from planner.scheduling.reasons import (
    no_ground_reason,
    partial_reason,
    too_little_reason,
)
from planner.scheduling.sowing import Block, Sowing
from planner.scheduling.story import Chosen
from planner.scheduling.supply import supply_of
from planner.scheduling.unmet import Reason, Unmet
from planner.terms import Week

# A week that lacks less than this share of its want gets no sowing of its own.
_WORTH_SOWING = 0.1


class Asking(Enum):
    """The order in which crops ask for ground."""

    FIRST_IN_GROUND = "the sowing that takes up ground first asks first"
    LONGEST_IN_GROUND = "the sowing that stands longest asks first"
    AS_WRITTEN = "the targets ask in the order of the plan"


@dataclass(frozen=True, slots=True)
class Prepared:
    """What holds for every order of asking: candidates by crop, worked out once."""

    garden: Garden
    standing: tuple[Sowing, ...]
    candidates: dict[str, CropCandidates]


@dataclass(frozen=True, slots=True)
class Turns:
    """Who asks first: an order of asking, or a list of crops that overrides the plan's order."""

    asking: Asking
    crops: tuple[str, ...] = ()

    def of(self, step: Step, order: int) -> int:
        """When a step's turn comes; smaller is sooner."""
        if self.crops:
            return self.crops.index(step.crop.name)
        candidate = step.ranked[0]
        enters_on = candidate.course.enters_on
        match self.asking:
            case Asking.FIRST_IN_GROUND:
                return enters_on.toordinal()
            case Asking.LONGEST_IN_GROUND:
                return -(max(candidate.days.values()) - enters_on).days
            case Asking.AS_WRITTEN:
                return order


class ScheduleMaker:
    """The schedule while it grows, in one order of asking."""

    def __init__(self, about: Prepared, turns: Turns) -> None:
        self.turns = turns
        garden = about.garden
        self.ground = Ground(garden.beds, garden.wish.turnover_days)
        self.standing = about.standing
        self.sowings: list[Sowing] = []
        for sowing in about.standing:
            self.ground.hold(sowing.blocks)
        wants = garden.wants()
        self.drafts = []
        for name, crop in garden.crops.items():
            mine = [one for one in about.standing if one.crop.name == name]
            supply = dict(supply_of(mine, wants[name]).expected)
            found = about.candidates[name]
            self.drafts.append(CropDraft(crop, wants[name], found.about, found.candidates, supply))

    @property
    def all_sowings(self) -> list[Sowing]:
        """Those standing already and those made here."""
        return [*self.standing, *self.sowings]

    def shortfall(self) -> float:
        """What is lacking, each crop as a share of what is wanted of it."""
        return sum(
            sum(draft.lacks(week) for week in draft.wants) / sum(draft.wants.values())
            for draft in self.drafts
        )

    def least_fed(self) -> tuple[str, ...]:
        """The crops in order of the share of their wants that is met, the least first."""
        shares = {
            draft.crop.name: sum(draft.lacks(week) for week in draft.wants)
            / sum(draft.wants.values())
            for draft in self.drafts
        }
        return tuple(sorted(shares, key=lambda name: (-shares[name], name)))

    def make(self) -> None:
        """Place sowing after sowing until every week is fed or given up."""
        queue: list[tuple[int, int, Week]] = []
        steps: dict[int, Step] = {}
        for order in range(len(self.drafts)):
            self._ask(order, queue, steps)
        while queue:
            _, order, _ = heapq.heappop(queue)
            self._place(self.drafts[order], steps[order])
            self._ask(order, queue, steps)

    def _ask(self, order: int, queue: list[tuple[int, int, Week]], steps: dict[int, Step]) -> None:
        """Queue a crop's next step, giving up on the way the weeks nothing can feed."""
        draft = self.drafts[order]
        for week in list(draft.open_weeks()):
            if draft.lacks(week) < _WORTH_SOWING * draft.wants[week]:
                draft.closed[week] = too_little_reason(draft.crop, week)
                continue
            step = draft.step(week)
            if step is not None:
                steps[order] = step
                heapq.heappush(queue, (self.turns.of(step, order), order, week))
                return
            draft.closed[week] = why_unfed(draft, week)

    def _place(self, draft: CropDraft, step: Step) -> None:
        """Place the step's best candidate; a week only partly served asks again for the rest."""
        best: Fitting | None = None
        whole = False
        for candidate in step.ranked:
            weeks = draft.weeks_served(candidate, step.week)
            wanted = self._plants_for(draft, candidate, weeks)
            blocks, placed = self._fit(draft.crop, candidate, wanted, weeks)
            worth = placed >= _WORTH_SOWING * wanted
            if placed and worth and (best is None or placed > best.plants):
                chosen = Chosen.BEST if candidate is step.ranked[0] else Chosen.FOR_GROUND
                best = Fitting(candidate, weeks, placed, blocks, chosen)
            whole = placed == wanted
            if whole:
                break
        if best is not None:
            self._grow(draft, best)
        lacking = draft.lacks(step.week)
        if lacking > ENOUGH and whole:
            draft.closed[step.week] = partial_reason(draft, step.week)
        elif lacking > ENOUGH and best is None:
            draft.closed[step.week] = no_ground_reason(draft, step.week, lacking)

    def _plants_for(self, draft: CropDraft, candidate: Candidate, weeks: list[Week]) -> int:
        lacking = sum(draft.lacks(week) for week in weeks)
        gives = draft.crop.gives.middle
        if candidate.flow:
            gives = counted_flow(draft.crop, candidate, weeks[0])
        return max(1, math.ceil(lacking / gives - ENOUGH))

    def _fit(
        self, crop: Crop, candidate: Candidate, plants: int, weeks: list[Week]
    ) -> tuple[tuple[Block, ...], int]:
        leave_on = leaves_on(crop, candidate, weeks)
        enter_on = candidate.course.enters_on
        leave_on = max(leave_on, enter_on + timedelta(days=1))
        gaps = self.ground.gaps(crop, enter_on, leave_on)
        return fit_plants(crop, plants, gaps, (enter_on, leave_on))

    def _grow(self, draft: CropDraft, fitting: Fitting) -> None:
        harvest = harvest_of(draft, fitting)
        fitting = fitting.until(harvest[-1].day)
        self.ground.hold(fitting.blocks)
        self.sowings.append(sowing_of(draft.crop, fitting, harvest))
        if isinstance(draft.crop.habit, Store):
            mine = [one for one in self.all_sowings if one.crop.name == draft.crop.name]
            draft.supply = dict(supply_of(mine, draft.wants).expected)
            return
        for week, amount in shares_of(draft, fitting).items():
            draft.supply[week] = draft.supply.get(week, 0.0) + amount

    def unmet(self) -> list[Unmet]:
        """What every week still lacks, and why."""
        return [
            Unmet(draft.crop.name, week, draft.lacks(week), self._reason(draft, week))
            for draft in self.drafts
            for week in draft.wants
            if draft.lacks(week) > ENOUGH
        ]

    @staticmethod
    def _reason(draft: CropDraft, week: Week) -> Reason:
        """Why a week lacks something; one emptied out of the store lacks it for a nearby reason."""
        if week in draft.closed:
            return draft.closed[week]
        if not draft.closed:
            return partial_reason(draft, week)
        near = min(draft.closed, key=lambda one: abs((one.monday - week.monday).days))
        return draft.closed[near]
