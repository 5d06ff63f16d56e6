"""A fitting: a candidate with its size and its ground, and the sowing it becomes."""

import math
from dataclasses import dataclass, replace
from datetime import date, timedelta

from planner.garden import Crop, Cut, Pick, StartFrom, Store
from planner.scheduling.candidate import Candidate
from planner.scheduling.draft import ENOUGH, CropDraft
from planner.scheduling.sowing import Block, HarvestDay, Method, Sowing, SowingState
from planner.scheduling.story import Chosen, Made, why_sowing
from planner.terms import Week

# Seed allowance: eight in ten come up and nine in ten of those are kept (from memory);
# twelve plants then need seventeen seeds (TRADE propagation arithmetic).
_COMES_UP = 0.8
_IS_KEPT = 0.9
_OF_A_MEAN_WEEK = 0.9


@dataclass(frozen=True, slots=True)
class Fitting:
    """A candidate that fits: the weeks it serves, its plants and their blocks."""

    candidate: Candidate
    weeks: list[Week]
    plants: int
    blocks: tuple[Block, ...]
    chosen: Chosen

    def until(self, last_harvest: date) -> "Fitting":
        """The same, with ground given back on the day of the last harvest."""
        first = self.candidate.course.enters_on + timedelta(days=1)
        leave_on = max(last_harvest, first)
        blocks = tuple(replace(block, leave_on=leave_on) for block in self.blocks)
        return replace(self, blocks=blocks)


def sowing_of(crop: Crop, fitting: Fitting, harvest: tuple[HarvestDay, ...]) -> Sowing:
    """The sowing a fitting becomes, without a name as yet."""
    course = fitting.candidate.course
    clear_on = fitting.blocks[0].leave_on
    return Sowing(
        id="",
        crop=crop,
        method=Method.DIRECT if fitting.candidate.is_direct else Method.INDOORS,
        sow_on=course.start_on,
        emerges_on=course.emerges_on,
        set_out_on=course.set_out_on,
        ripe=course.ripe,
        counted=course.counted,
        plants=fitting.plants,
        seeds=seeds_for(crop, fitting.plants),
        blocks=fitting.blocks,
        harvest=harvest,
        clear_on=clear_on,
        state=SowingState.PLANNED,
        why=why_sowing(Made(course, fitting.plants, harvest, clear_on, fitting.chosen)),
    )


def counted_flow(crop: Crop, candidate: Candidate, week: Week) -> float:
    """What a plant is counted on for a week of its flow.

    Of cuts the smallest whole one counts, of picking a little less than its mean week: else a
    second sowing would be made for the last few leaves or pods. A week in which picking only
    begins counts at half at least, so that it does not make the sowing too large.
    """
    flow = candidate.flow
    full = max(flow.values())
    if isinstance(crop.habit, Cut):
        return min(amount for amount in flow.values() if amount >= 0.5 * full)
    mean = crop.gives.middle * 7 / int(_picking_days(crop))
    return max(min(flow[week], _OF_A_MEAN_WEEK * mean), 0.5 * _OF_A_MEAN_WEEK * mean)


def _picking_days(crop: Crop) -> float:
    return crop.habit.picking_days.middle if isinstance(crop.habit, Pick) else 7.0


def leaves_on(crop: Crop, candidate: Candidate, weeks: list[Week]) -> date:
    """The day of the last harvest, on which it is cleared."""
    if candidate.flow:
        return max(candidate.days.values())
    if isinstance(crop.habit, Store):
        return candidate.days[weeks[0]]
    return candidate.days[weeks[-1]]


def seeds_for(crop: Crop, plants: int) -> int:
    """Seeds to sow so that about so many plants remain; cloves, sets and slips one each."""
    if crop.start_from is not StartFrom.SEED:
        return plants
    return math.ceil(plants / (_COMES_UP * _IS_KEPT) - ENOUGH)


def shares_of(draft: CropDraft, fitting: Fitting) -> dict[Week, float]:
    """What a sowing brings to each week: its flow, or its harvest shared out as wanted."""
    if fitting.candidate.flow:
        flow = fitting.candidate.flow
        return {week: each * fitting.plants for week, each in flow.items()}
    left = fitting.plants * draft.crop.gives.middle
    shares: dict[Week, float] = {}
    for week in fitting.weeks:
        shares[week] = min(left, draft.lacks(week))
        left -= shares[week]
    shares[fitting.weeks[-1]] += left
    return {week: amount for week, amount in shares.items() if amount > 0}


def harvest_of(draft: CropDraft, fitting: Fitting) -> tuple[HarvestDay, ...]:
    """What is taken on which day; a crop for the store is lifted on one."""
    days = fitting.candidate.days
    if isinstance(draft.crop.habit, Store):
        whole = fitting.plants * draft.crop.gives.middle
        return (HarvestDay(days[fitting.weeks[0]], whole),)
    return tuple(
        HarvestDay(days[week], amount) for week, amount in shares_of(draft, fitting).items()
    )
