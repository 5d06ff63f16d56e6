"""Tightening: a sowing gives its ground back on the day its last harvest is taken."""

from planner.scheduling.arranging.working_plan import Placed, WorkingPlan
from planner.scheduling.offers import CropOffers

_TINY = 1e-9
_PASSES = 2


def tighten(plan: WorkingPlan) -> None:
    """Let sowings harvested at once stand no longer than some week eats of them.

    A host stays as long as its guests were promised.
    """
    for _ in range(_PASSES):
        for crop, offers in enumerate(plan.offers):
            if not offers.flows:
                _tighten_crop(plan, crop, offers)


def _tighten_crop(plan: WorkingPlan, crop: int, offers: CropOffers) -> None:
    harvests = plan.harvest(crop)
    for one in list(plan.placed[crop].values()):
        weeks = [week for week, amount in harvests[one.number].items() if amount > _TINY]
        offer = _ending_in(offers, one.offer, max(weeks)) if weeks else one.offer
        if offer != one.offer and not plan.has_guests(one):
            _shorten(plan, one, offer)


def _ending_in(offers: CropOffers, offer: int, week: int) -> int:
    """The offer that begins as another does and is the first to leave after a week's harvest."""
    alike = [
        number
        for number in range(len(offers))
        if offers.starts[number] == offers.starts[offer] and offers.last_week[number] >= week
    ]
    return min(alike, key=lambda number: int(offers.leaves[number]))


def _shorten(plan: WorkingPlan, one: Placed, offer: int) -> None:
    before = plan.cost_of(one.crop)
    plan.take_out(one)
    shorter = plan.place(one.crop, offer, one.pieces, one.yields)
    if plan.cost_of(one.crop) > before + _TINY:
        plan.take_out(shorter)
        plan.put_back(one)
