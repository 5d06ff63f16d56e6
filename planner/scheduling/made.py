"""Made sowings: what a working plan holds becomes sowings with dates, harvests and reasons."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta

from planner.garden import Bed, SeedWish, SharedGround, Store
from planner.ground import NOBODY
from planner.growth import Course
from planner.scheduling.arranging import Placed, WorkingPlan
from planner.scheduling.offers import CropOffers
from planner.scheduling.seed_count import seeds_for
from planner.scheduling.sowing import HARVEST_PLACES, Block, HarvestDay, Method, Sowing, SowingState
from planner.scheduling.starts import Candidate
from planner.scheduling.story import Chosen, Made, why_sowing
from planner.terms import Week

_TINY = 1e-9


def made_sowings(
    plan: WorkingPlan,
    beds: Sequence[Bed],
    turnover_days: int,
    hosts: Mapping[int, str],
    pairs: Sequence[SharedGround],
    seed: SeedWish,
) -> tuple[Sowing, ...]:
    """Every sowing of a plan, without a name as yet; `hosts` names the sowings begun before.

    A guest knows its host by the host's mark until names are given.
    """
    maker = _Maker(plan, beds, turnover_days, hosts, pairs, seed)
    return tuple(maker.sowing(together) for together in maker.together)


class _Maker:
    def __init__(
        self,
        plan: WorkingPlan,
        beds: Sequence[Bed],
        turnover_days: int,
        hosts: Mapping[int, str],
        pairs: Sequence[SharedGround],
        seed: SeedWish,
    ) -> None:
        self.plan, self.beds, self.hosts, self.pairs, self.seed = plan, beds, hosts, pairs, seed
        self.turnover = timedelta(days=turnover_days)
        self.harvests = [plan.harvest(crop) for crop in range(len(plan.offers))]
        self.shared = {
            piece.host for one in plan.all_placed() for piece in one.pieces if piece.host != NOBODY
        }
        self.together = list(self._together())
        self.first = {
            one.number: together[0].number for together in self.together for one in together
        }

    def _together(self) -> Iterator[list[Placed]]:
        """Sowings parted by crop and by what was begun on one day and is cleared on one day.

        A guest is a sowing of its own.
        """
        for sowings in self.plan.placed:
            groups: dict[tuple[int, date, int], list[Placed]] = {}
            for one in sowings.values():
                guest = NOBODY if one.pieces[0].host == NOBODY else one.number
                start = int(self.plan.offers[one.crop].starts[one.offer])
                groups.setdefault((start, self._clear_on(one), guest), []).append(one)
            yield from groups.values()

    def _clear_on(self, one: Placed) -> date:
        """The day of its last harvest; a host stays as long as its guests were promised."""
        until = self._until(one)
        if one.number in self.shared:
            return until
        harvest = self._harvest_of([one])
        return max(harvest[-1].day, self._course(one).enters_on + timedelta(days=1))

    def _until(self, one: Placed) -> date:
        leaves = int(self.plan.offers[one.crop].leaves[one.offer])
        return date.fromordinal(leaves) - self.turnover

    def _kept_until(self, together: list[Placed]) -> date:
        """Until when some ground of sowings made together is their own."""
        return max(self._until(one) for one in together)

    def _candidate(self, one: Placed) -> Candidate:
        offers = self.plan.offers[one.crop]
        return offers.candidates[int(offers.starts[one.offer])]

    def _course(self, one: Placed) -> Course:
        return self._candidate(one).course

    def _harvest_of(self, together: list[Placed]) -> tuple[HarvestDay, ...]:
        """What sowings made together give on which day."""
        first = together[0]
        by_week: dict[int, float] = {}
        for one in together:
            for week, amount in self.harvests[one.crop][one.number].items():
                by_week[week] = by_week.get(week, 0.0) + amount
        plants = sum(one.plants for one in together) * first.yields
        until = self._kept_until(together)
        offers = self.plan.offers[first.crop]
        return _harvest(offers, self._candidate(first), plants, by_week, until)

    def sowing(self, together: list[Placed]) -> Sowing:
        """The sowing that these are."""
        placed = together[0]
        plants = sum(one.plants for one in together)
        offers = self.plan.offers[placed.crop]
        candidate = self._candidate(placed)
        course, crop = candidate.course, offers.crop
        harvest = self._harvest_of(together)
        clear_on = self._clear_on(placed)
        chosen = _chosen(offers, placed, candidate)
        until = self._kept_until(together)
        made = Made(course, plants, harvest, clear_on, chosen, until, self._pair(placed))
        return Sowing(
            id="",
            mark=f"#{placed.number}",
            crop=crop,
            method=Method.DIRECT if candidate.is_direct else Method.INDOORS,
            sow_on=course.start_on,
            emerges_on=course.emerges_on,
            set_out_on=course.set_out_on,
            ripe=course.ripe,
            counted=course.counted,
            plants=plants,
            seeds=seeds_for(crop, plants, course.start_on.year, self.seed),
            blocks=tuple(
                Block(
                    bed=self.beds[piece.bed].name,
                    from_um=piece.from_um,
                    to_um=piece.to_um,
                    enter_on=course.enters_on,
                    leave_on=clear_on,
                    under=self._host(piece.host),
                )
                for one in together
                for piece in one.pieces
            ),
            harvest=harvest,
            clear_on=clear_on,
            state=SowingState.PLANNED,
            why=why_sowing(made),
        )

    def _host(self, number: int) -> str:
        if number == NOBODY:
            return ""
        return self.hosts.get(number, f"#{self.first.get(number, number)}")

    def _pair(self, placed: Placed) -> SharedGround | None:
        """The pair a guest stands by, or None for a sowing on ground of its own."""
        host = placed.pieces[0].host
        if host == NOBODY:
            return None
        name = self._crop_of(host)
        guest = self.plan.offers[placed.crop].crop.name
        return next(
            pair
            for pair in self.pairs
            if (pair.host, pair.guest, pair.yield_share) == (name, guest, placed.yields)
        )

    def _crop_of(self, host: int) -> str:
        if host in self.hosts:
            return self.hosts[host].rpartition(" ")[0]
        return next(
            offers.crop.name
            for offers, sowings in zip(self.plan.offers, self.plan.placed, strict=True)
            if host in sowings
        )


def _harvest(
    offers: CropOffers,
    candidate: Candidate,
    plants: float,
    by_week: Mapping[int, float],
    until: date,
) -> tuple[HarvestDay, ...]:
    """What so many plants give on which day; a crop for the store is lifted on one."""
    if isinstance(offers.crop.habit, Store):
        lifted = min(candidate.days.values())
        return (HarvestDay(lifted, round(plants * offers.crop.gives.middle, HARVEST_PLACES)),)
    weeks: dict[Week, float] = {}
    if candidate.flow:
        weeks = {
            week: plants * each
            for week, each in candidate.flow.items()
            if candidate.days[week] <= until and each > 0
        }
    else:
        weeks = {offers.weeks[place]: amount for place, amount in sorted(by_week.items())}
    return tuple(
        HarvestDay(candidate.days[week], round(amount, HARVEST_PLACES))
        for week, amount in sorted(weeks.items())
        if amount > _TINY
    )


def _chosen(offers: CropOffers, placed: Placed, candidate: Candidate) -> Chosen:
    """Whether a start is the latest of its way that has its first week ready, or another."""
    week = offers.weeks[offers.first_week[placed.offer]]
    alike = [
        one
        for one in offers.candidates
        if week in one.days and one.is_direct == candidate.is_direct
    ]
    latest = max(one.course.start_on for one in alike)
    return Chosen.BEST if candidate.course.start_on == latest else Chosen.FOR_GROUND
