"""The earlier plan: sowings that may still move, put back where they were (rules §36)."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta

from planner.garden import SharedGround
from planner.ground import NOBODY
from planner.scheduling.arranging.filling import CropMarket
from planner.scheduling.arranging.places import CropPlaces
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.offers import CropOffers, Was
from planner.scheduling.sowing import Sowing

# Positions may have been rounded on the way through a record.
_TINY_UM = 2


def offers_taken(movable: Sequence[Sowing], turnover_days: int) -> dict[str, list[Was]]:
    """The offers that sowings of an earlier season took, by crop."""
    rest = timedelta(days=turnover_days)
    taken: dict[str, list[Was]] = {}
    for one in movable:
        was = Was(one.sow_on, one.enters_on, one.clear_on + rest)
        taken.setdefault(one.crop.name, []).append(was)
    return taken


def put_back(
    plan: WorkingPlan,
    markets: Sequence[CropMarket],
    movable: Sequence[Sowing],
    standing: Mapping[int, str],
) -> None:
    """Put back every sowing that could still be had and whose ground is still free.

    Hosts come before their guests. `standing` names the sowings begun already by the numbers
    under which they hold ground. Afterwards the plan counts what departs from it as changes.
    """
    crops = {one.places.crop.name: place for place, one in enumerate(markets)}
    hosts = {name: number for number, name in standing.items()}
    for one in sorted(movable, key=lambda one: any(block.under for block in one.blocks)):
        crop = crops.get(one.crop.name)
        if crop is None:
            continue
        back = _Back(plan, markets[crop].places, one, hosts)
        offer = back.offer
        if offer is None:
            continue
        pieces, yields = back.pieces(offer)
        if pieces:
            hosts[one.id] = plan.place(crop, offer, pieces, yields).number
    for crop in range(len(markets)):
        plan.begin_from(crop)


@dataclass(frozen=True, slots=True)
class _Back:
    """A sowing to be put back, and the numbers of the hosts that are there already."""

    plan: WorkingPlan
    places: CropPlaces
    sowing: Sowing
    hosts: Mapping[str, int]

    @property
    def offer(self) -> int | None:
        """The offer that begins as the sowing did and leaves no earlier, the first to leave."""
        offers = self.places.offers
        leaves = self.sowing.clear_on.toordinal() + self.plan.ground.rest_days
        alike = [
            number
            for number in range(len(offers))
            if _begins_as(offers, number, self.sowing) and offers.leaves[number] >= leaves
        ]
        return min(alike, key=lambda number: int(offers.leaves[number]), default=None)

    def pieces(self, offer: int) -> tuple[tuple[Piece, ...], float]:
        """Its stretches with their plants, and what a plant yields; none where taken."""
        found: list[Piece] = []
        yields, left = 1.0, self.sowing.plants
        beds = {bed.name: number for number, bed in enumerate(self.plan.ground.beds)}
        for block in self.sowing.blocks:
            bed = beds.get(block.bed, -1)
            host = self.hosts.get(block.under, NOBODY) if block.under else NOBODY
            piece = Piece(bed, block.from_um, block.to_um, left, host)
            if bed not in self.places.by_bed or (block.under and host == NOBODY):
                return (), yields
            held, yields = self._held(offer, piece)
            if not held:
                return (), yields
            found.append(piece._replace(plants=min(left, held)))
            left -= min(left, held)
        return (tuple(one for one in found if one.plants) if not left else ()), yields

    def _held(self, offer: int, piece: Piece) -> tuple[int, float]:
        """How many plants a stretch holds for an offer, 0 where it is taken, and their yield."""
        fit = self.places.by_bed[piece.bed]
        stretch_um = piece.to_um - piece.from_um + _TINY_UM
        if piece.host != NOBODY:
            pair = self._pair(offer, piece)
            shared = int(fit.plants_in(stretch_um) * pair.ground_share + 1e-6) if pair else 0
            return shared, pair.yield_share if pair else 1.0
        free = any(
            gap.from_um <= piece.from_um and piece.to_um <= gap.to_um
            for gap in self.plan.ground.gaps(piece.bed, *self.places.span(offer))
        )
        return (fit.plants_in(stretch_um) if free else 0), 1.0

    def _pair(self, offer: int, piece: Piece) -> SharedGround | None:
        """The pair by which a guest may stand where it stood."""
        return next(self._pairs(offer, piece), None)

    def _pairs(self, offer: int, piece: Piece) -> Iterator[SharedGround]:
        for pattern in dict.fromkeys(pair.pattern for pair in self.places.pairs):
            for pair, gap, _ in self.places.shared(self.plan, offer, pattern):
                inside = gap.from_um <= piece.from_um and piece.to_um <= gap.to_um
                if gap.bed == piece.bed and gap.host == piece.host and inside:
                    yield pair


def _begins_as(offers: CropOffers, number: int, sowing: Sowing) -> bool:
    course = offers.candidates[int(offers.starts[number])].course
    return course.start_on == sowing.sow_on and course.set_out_on == sowing.set_out_on
