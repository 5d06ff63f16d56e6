"""A proposal: targets that would feed a household from the beds there are (§52)."""

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from statistics import median

from planner.climate import Climate
from planner.garden import Crop, Cut, Garden, Portion, WeeklyTarget
from planner.scheduling import Candidate, CropCandidates, crop_candidates
from planner.terms import UNITS, Place, Week, conversion, week_of

_UM_PER_M = 1e6
# Of the beds' ground so much is given out in any week: what is planned by hand leaves gaps, and
# the season's choice of days and beds needs room; and to one crop no more than the other share, or
# it would crowd the rest out. From memory.
_GROUND_GIVEN = 0.7
_GROUND_FOR_ONE = 0.25
# A household takes six to ten different things in a week (TRADE-S58): a crop is proposed where some
# week has fewer than six, or most of its weeks have fewer than ten.
_FEWEST_THINGS, _MOST_THINGS = 6, 10
# A stretch of weeks shorter than this is not worth a target of its own, and gaps up to the other
# are left inside one. From memory.
_LEAST_WEEKS = 3
_WEEKS_BRIDGED = 1


@dataclass(frozen=True, slots=True)
class ProposedTarget:
    """A target that would feed so many people, and the share of the beds' ground it holds."""

    portion: Portion
    first: date
    last: date
    ground_share: float


@dataclass(frozen=True, slots=True)
class Proposal:
    """Targets for a household; `left_out` fit too, but ground or appetite was short for them."""

    people: float
    targets: tuple[ProposedTarget, ...]
    left_out: tuple[str, ...]


def proposal_of(
    garden: Garden, climate: Climate, portions: Sequence[Portion], people: float, as_of: date
) -> Proposal:
    """Targets for so many people from crops that fit these beds and this season.

    Groups take turns, so that no kind of food is left out. Within a group crops the plan wants
    already come first, then those with a published portion, then what takes the least ground.
    """
    fitting = [one for one in portions if any(one.crop.fits(bed) for bed in garden.beds)]
    possible = list(_possible(garden, climate, fitting, people, as_of))
    chosen, left_out = _chosen(_in_turn(possible, set(garden.crops)), garden)
    targets = (target for one in chosen for target in _targets(one, garden))
    in_order = sorted(targets, key=lambda one: (one.portion.crop.name, one.first))
    return Proposal(people, tuple(in_order), tuple(left_out))


def _chosen(possible: Iterable["_Possible"], garden: Garden) -> tuple[list["_Possible"], list[str]]:
    """Crops taken one after the other while there is ground and appetite; names of the rest."""
    ground_m2 = math.fsum(bed.area_m2 for bed in garden.beds)
    most_m2 = _GROUND_GIVEN * ground_m2
    held: dict[Week, float] = defaultdict(float)
    things: Counter[Week] = Counter()
    chosen, left_out = [], []
    for one in possible:
        small = one.largest_m2 <= _GROUND_FOR_ONE * ground_m2
        has_ground = small and all(
            held[week] + ground <= most_m2 for week, ground in one.ground_m2.items()
        )
        if has_ground and _is_missed([things[week] for week in one.weeks]):
            for week, ground in one.ground_m2.items():
                held[week] += ground
            things.update(one.weeks)
            chosen.append(one)
        else:
            left_out.append(one.portion.crop.name)
    return chosen, left_out


def _is_missed(things: Sequence[int]) -> bool:
    """Whether a crop is wanted beside so many other things in each of its weeks."""
    full = sum(number >= _MOST_THINGS for number in things)
    return min(things) < _FEWEST_THINGS or full * 2 < len(things)


@dataclass(frozen=True, slots=True)
class _Possible:
    """A crop that could be proposed: the weeks it can feed, and the ground it holds in each."""

    portion: Portion
    stretches: tuple[tuple[Week, Week], ...]
    ground_m2: dict[Week, float]

    @property
    def weeks(self) -> list[Week]:
        """Every week of its stretches."""
        return [week for first, last in self.stretches for week in first.until(last)]

    @property
    def largest_m2(self) -> float:
        return max(self.ground_m2.values())


def _possible(
    garden: Garden, climate: Climate, portions: Sequence[Portion], people: float, as_of: date
) -> Iterator[_Possible]:
    """What each crop could do here; none for crops no start of which is ever ripe."""
    wish = garden.wish
    by_name = {one.crop.name: one for one in portions}
    wanted = tuple(
        WeeklyTarget(one.crop, 1.0, wish.first, wish.last, Place("")) for one in portions
    )
    asked = replace(garden, targets=wanted, shared=())
    for found in crop_candidates(asked, climate, as_of):
        portion = by_name[found.about.crop.name]
        weeks = sorted({week for one in found.candidates for week in one.days})
        stretches = tuple(_stretches(weeks))
        factor = conversion(UNITS[portion.each_week.unit], portion.crop.unit)
        if stretches and factor is not None:
            each_week = people * portion.each_week.middle * factor
            yield _Possible(portion, stretches, _ground(found, stretches, each_week))


def _stretches(weeks: Sequence[Week]) -> Iterator[tuple[Week, Week]]:
    """Weeks that hang together, small gaps bridged, short ones left out."""
    runs: list[list[Week]] = []
    for week in weeks:
        if runs and week <= runs[-1][-1].after(_WEEKS_BRIDGED + 1):
            runs[-1].append(week)
        else:
            runs.append([week])
    for run in runs:
        if len(run) >= _LEAST_WEEKS:
            yield run[0], run[-1]


def _ground(
    found: CropCandidates, stretches: Iterable[tuple[Week, Week]], each_week: float
) -> dict[Week, float]:
    """Ground held in each week, were every week of some stretches fed by a sowing of its own.

    By the middle of all starts: so many plants for a week's amount, each for so many weeks.
    """
    crop = found.about.crop
    days = median(_days_held(one) for one in found.candidates)
    plants = each_week / _gives(crop)
    each_m2 = plants * crop.ground.spacing_um**2 / _UM_PER_M**2
    ground: dict[Week, float] = defaultdict(float)
    for first, last in stretches:
        for week in first.until(last):
            begins = week_of(week.sunday - timedelta(days=days))
            for held in begins.until(week):
                ground[held] += each_m2
    return ground


def _days_held(one: Candidate) -> float:
    """Days from entering the ground to the last harvest; a store's are until it is lifted."""
    return float((max(one.days.values()) - one.course.enters_on).days)


def _gives(crop: Crop) -> float:
    """What one plant gives in all."""
    cuts = crop.habit.cuts.middle if isinstance(crop.habit, Cut) else 1.0
    return crop.gives.middle * cuts


def _in_turn(possible: Sequence[_Possible], wanted: set[str]) -> Iterator[_Possible]:
    """The first of each group, then the second of each, and so on."""
    by_group: dict[str, list[_Possible]] = defaultdict(list)
    for one in sorted(possible, key=lambda one: _rank(one, wanted)):
        by_group[one.portion.group].append(one)
    for turn in range(max(map(len, by_group.values()), default=0)):
        yield from (group[turn] for group in by_group.values() if turn < len(group))


def _rank(one: _Possible, wanted: set[str]) -> tuple[bool, bool, float, str]:
    crop = one.portion.crop.name
    return crop not in wanted, not one.portion.seen, one.largest_m2, crop


def _targets(one: _Possible, garden: Garden) -> Iterator[ProposedTarget]:
    ground = math.fsum(bed.area_m2 for bed in garden.beds)
    for first, last in one.stretches:
        begins = max(first.monday, garden.wish.first)
        ends = min(last.sunday, garden.wish.last)
        yield ProposedTarget(one.portion, begins, ends, one.largest_m2 / ground)
