"""The choice of sowings: which, when, how large and where (rules §12, §31 to §33, §36).

The ideal season says what weeks and ground are worth, and which sowings it would have; these
are put on real ground, what still lacks is filled in, and parts of the plan are regrown again
and again. Where an earlier season is to be kept, its sowings are put back instead, and regrown
only where a change is worth it.
"""

from dataclasses import replace
from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.ground import NOBODY, Holding
from planner.growth import own_paces
from planner.scheduling.arranging import (
    CropMarket,
    CropPlaces,
    CropProposals,
    Mood,
    Regrowing,
    WorkingPlan,
    arrange,
    fill,
    fits_of,
    intents_of,
    put_back,
    tighten,
    top_up,
)
from planner.scheduling.bound import bound_of
from planner.scheduling.changing import Changing
from planner.scheduling.chosen import Choice
from planner.scheduling.earlier import Earlier
from planner.scheduling.effort import EFFORTS, Effort
from planner.scheduling.ideal import IdealSeason
from planner.scheduling.made import made_sowings
from planner.scheduling.offers import Floats
from planner.scheduling.question import Question
from planner.scheduling.sowing import Sowing
from planner.scheduling.standing import begun_of, seen_harvests
from planner.scheduling.starts import CropCandidates, crop_candidates
from planner.scheduling.unfed import unmet_of

# The ideal season that is followed fills so much of the ground: rows and blocks need some room.
_FILLED = 0.9
# Beds beyond which one order of arranging must do.
_MANY_BEDS = 60
# A stage of regrowing visits so many beds and crops, a crop counting as two beds; twice as many
# where there are 300 beds. The more beds and crops, the fewer rounds.
_VISITS, _CROP_VISITS, _MORE_VISITS_BEDS = 8_000, 2, 300
# A round in which so many years are weighed takes twice as long as one of the middle year alone.
_YEARS_A_ROUND = 4
# An earlier season is regrown for a part of a stage.
_REVISED = 0.5


def choose_sowings(
    garden: Garden,
    climate: Climate,
    as_of: date,
    earlier: Earlier,
    effort: int,
) -> Choice:
    """The sowings that feed the garden's targets from `as_of` on, around those standing.

    The work is counted, not timed: the same garden gives the same sowings on any machine.
    """
    found = _found(garden, climate, as_of, earlier)
    begun = begun_of(garden, found, as_of, earlier.sowings, earlier.journal)
    kept = begun.movable if earlier.changing is Changing.LITTLE else ()
    question = Question(garden, found, begun.standing, kept)
    bound = bound_of(question)
    settled = earlier.changing is Changing.NOTHING
    coming = begun.movable if settled else _new(question, EFFORTS[effort])
    sowings = (*begun.standing, *coming)
    unmet = tuple(unmet_of(garden, found, sowings))
    return Choice(sowings, unmet, bound, begun.movable, begun.missed)


def _found(
    garden: Garden, climate: Climate, as_of: date, earlier: Earlier
) -> dict[str, CropCandidates]:
    """Every start of every crop, at the garden's own pace where enough harvests tell it."""
    found = {one.about.crop.name: one for one in crop_candidates(garden, climate, as_of)}
    seen = seen_harvests(found, earlier.sowings, earlier.journal.as_of(as_of))
    own = {crop: pace for crop, pace in own_paces(seen).items() if pace.words}
    if not own:
        return found
    at_own = crop_candidates(garden, climate, as_of, own)
    return {one.about.crop.name: one for one in at_own}


def question_for(garden: Garden, as_of: date) -> Question:
    """What the first season of a garden rests on."""
    found = crop_candidates(garden, Climate(garden.site), as_of)
    return Question(garden, {one.about.crop.name: one for one in found})


def _new(question: Question, much: Effort) -> tuple[Sowing, ...]:
    plan = plan_of(question, much)
    garden = question.garden
    return made_sowings(
        plan,
        garden.beds,
        garden.wish.turnover_days,
        question.hosts,
        garden.shared,
        garden.seed,
    )


def plan_of(question: Question, much: Effort) -> WorkingPlan:
    """The plan for a question: an earlier one where it is to be kept, changed where worth it."""
    if not any(len(one) for one in question.offers):
        return WorkingPlan(question.offers, question.beds, question.worth)
    beds, crops = len(question.garden.beds), len(question.offers)
    visits = much.share * _VISITS * (1 + beds / _MORE_VISITS_BEDS)
    years = max(len(one.years.years) for one in question.found.values())
    rounds = int(visits / (beds + _CROP_VISITS * crops) / (1 + years / _YEARS_A_ROUND))
    return _revised(question, much, rounds) if question.movable else _begun(question, much, rounds)


def _begun(question: Question, much: Effort, rounds: int) -> WorkingPlan:
    """The plan that costs least after a first stage of regrowing, regrown further."""
    ground, beds = question.ground, len(question.garden.beds)
    with_room = replace(ground, free_m=_FILLED * ground.free_m)
    ideal = IdealSeason(question.offers, with_room, question.worth)
    markets = markets_of(question, ideal.ground_prices)
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
    tighten(best.plan)
    return best.plan


def _revised(question: Question, much: Effort, rounds: int) -> WorkingPlan:
    """The earlier plan, what lacks filled in, regrown where a change is worth it."""
    markets = markets_of(question, question.loosest.ground_prices)
    plan = WorkingPlan(question.offers, question.beds, question.worth)
    put_back(plan, markets, question.movable, question.hosts)
    fill(plan, markets, Mood())
    Regrowing(plan, markets).run(int(_REVISED * much.stages * rounds))
    top_up(plan, markets)
    tighten(plan)
    return plan


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
