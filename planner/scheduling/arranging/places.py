"""Places: where on the ground a proposed sowing fits best (rules §33)."""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from planner.garden import Bed, Crop, SharedGround, SharingPattern, SunnyEnd
from planner.ground import BedClass, Gap, Holding, shared_gaps
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.offers import CropOffers

# A stretch left over beside a block is hard to use when it is narrower than this.
_NARROW_UM = 60_000
_NO_STRETCH_UM = 2_000
_LEFT_NARROW, _LEFT_WIDE, _PER_METRE_LEFT = 0.5, 0.3, 0.1
# Neighbours that leave together leave one wide gap; a month apart counts as much as this.
_LEAVE_APART = 1.0 / 30
# Ground pays rent to a crop of its own family for so long.
REST_DAYS = 365
_FAMILY = 0.15
_SHADE = 0.3
# Sun and depth that the crop does not need are left to others where nothing else decides.
_SUN_SPARED, _DEPTH_SPARED_PER_M = 2.0, 5.0


@dataclass(frozen=True, slots=True)
class Fit:
    """Pieces that hold so many of the plants asked for."""

    plants: int
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class BedFit:
    """How a crop fits a bed: plants side by side, and the line a row takes.

    Where rows are not shared a row is one plant. `rents`: what a metre costs each offer.
    `spared`: how ill it is to use up sun and depth that the crop does not need.
    """

    bed: int
    line_um: int
    in_row: int
    row_um: float
    spared: float
    rents: Sequence[float]

    def stretch_um(self, plants: int) -> int:
        """The line that so many plants take up."""
        return math.ceil(math.ceil(plants / self.in_row) * self.row_um - 1e-6)

    def plants_in(self, stretch_um: int) -> int:
        """How many plants a stretch holds."""
        return math.floor(stretch_um / self.row_um + 1e-6) * self.in_row


@dataclass(frozen=True)
class CropPlaces:
    """Where one crop may stand: the beds that suit it, and the pairs it is guest of.

    `standing`: stretches, each with its bed, of sowings begun already that may be hosts, by crop.
    """

    offers: CropOffers
    beds: tuple[BedFit, ...]
    pairs: tuple[SharedGround, ...]
    standing: Mapping[str, Sequence[tuple[int, Holding]]]

    @cached_property
    def by_bed(self) -> dict[int, BedFit]:
        """How the crop fits each bed that suits it."""
        return {fit.bed: fit for fit in self.beds}

    @cached_property
    def most_in_a_bed(self) -> int:
        """The most plants that any bed holds."""
        return max(fit.plants_in(fit.line_um) for fit in self.beds)

    @property
    def crop(self) -> Crop:
        """The crop."""
        return self.offers.crop

    def find(
        self,
        plan: WorkingPlan,
        offer: int,
        plants: int,
        most_pieces: int = 1,
        only: frozenset[int] | None = None,
    ) -> Fit | None:
        """The best single stretch for the plants; else the largest ones, at most so many.

        A crop too large for any bed may have as many pieces as beds of the largest size take.
        `only` these beds are looked at, where told.
        """
        span = self.span(offer)
        best: tuple[float, Piece] | None = None
        parts: list[_Part] = []
        for fit in self.beds:
            if only is not None and fit.bed not in only:
                continue
            need = fit.stretch_um(plants)
            rent = fit.spared + fit.rents[offer] * need / 1e6
            for gap in plan.ground.gaps(fit.bed, *span):
                length = gap.to_um - gap.from_um
                if length >= need:
                    score, from_um = self._score(plan, gap, need, span)
                    if best is None or score + rent < best[0]:
                        piece = Piece(fit.bed, from_um, from_um + need, plants)
                        best = score + rent, piece
                elif best is None and length >= fit.row_um - 1e-6:
                    parts.append((-fit.plants_in(length), gap, fit))
        if best is not None:
            return Fit(plants, (best[1],))
        return _in_parts(parts, plants, most_pieces - 1 - (-plants // self.most_in_a_bed))

    def span(self, offer: int) -> tuple[int, int]:
        """From which day to which an offer holds ground, the turnover in it."""
        return int(self.offers.enters[offer]), int(self.offers.leaves[offer])

    def _score(
        self, plan: WorkingPlan, gap: Gap, need: int, span: tuple[int, int]
    ) -> tuple[float, int]:
        """How ill a block would stand in a gap, and where in it.

        It stands at the end whose neighbour leaves at about the same time.
        """
        left = gap.to_um - gap.from_um - need
        leaves = span[1]
        below = abs(leaves - (gap.below_leaves or leaves))
        above = abs(leaves - (gap.above_leaves or leaves))
        from_um = gap.from_um if below <= above else gap.to_um - need
        score = min(below, above) * _LEAVE_APART + _PER_METRE_LEFT * left / 1e6
        if left >= _NO_STRETCH_UM:
            narrow = _NARROW_UM + 0.6 * self.crop.ground.spacing_um
            score += _LEFT_NARROW if left < narrow else _LEFT_WIDE
        stretch = (from_um, from_um + need)
        families = plan.ground.families_before_and_after(gap.bed, stretch, span, REST_DAYS)
        if self.crop.family.text in families:
            score += _FAMILY
        return score + self._shades(plan.ground.beds[gap.bed], stretch), from_um

    def _shades(self, bed: Bed, stretch: tuple[int, int]) -> float:
        """How much a crop here would shade others: its height, the nearer to the sunny end."""
        if bed.sunny_end is SunnyEnd.UNKNOWN:
            return 0.0
        along = (stretch[0] + stretch[1]) / 2 / bed.line_um
        near = 1 - along if bed.sunny_end is SunnyEnd.MARKED else along
        return _SHADE * self.crop.height_m * near

    def find_under(
        self, plan: WorkingPlan, offer: int, plants: int, pattern: SharingPattern
    ) -> Fit | None:
        """The tightest stretch under a host for the plants as guests, or the largest there is."""
        best: tuple[int, Piece] | None = None
        most: tuple[int, Piece] | None = None
        for pair, gap, fit in self.shared(plan, offer, pattern):
            share = pair.ground_share
            need = fit.stretch_um(math.ceil(plants / share))
            if gap.length_um >= need:
                piece = Piece(gap.bed, gap.from_um, gap.from_um + need, plants, gap.host)
                if best is None or gap.length_um < best[0]:
                    best = gap.length_um, piece
                continue
            held = int(fit.plants_in(gap.length_um) * share)
            if held and (most is None or held > most[0]):
                piece = Piece(gap.bed, gap.from_um, gap.to_um, held, gap.host)
                most = held, piece
        found = best or most
        return Fit(found[1].plants, (found[1],)) if found else None

    def shared(
        self, plan: WorkingPlan, offer: int, pattern: SharingPattern
    ) -> Iterator[tuple[SharedGround, Gap, BedFit]]:
        """Every stretch under a host that is free for an offer as a guest."""
        span = self.span(offer)
        fits = self.by_bed
        for pair in self.pairs:
            if pair.pattern is not pattern:
                continue
            for bed, host in (*plan.hosts(pair.host), *self.standing.get(pair.host, ())):
                if bed in fits:
                    for gap in shared_gaps(plan.ground, bed, host, pair, span):
                        yield pair, gap, fits[bed]


_Part = tuple[int, Gap, BedFit]


def _in_parts(parts: list[_Part], plants: int, most_pieces: int) -> Fit | None:
    """The largest stretches that together hold the plants, or as many of them as can be."""
    pieces: list[Piece] = []
    left = plants
    for held, gap, fit in sorted(parts, key=lambda one: (one[0], one[1].bed, one[1].from_um)):
        if not left or len(pieces) >= most_pieces:
            break
        many = min(left, -held)
        to_um = min(gap.from_um + fit.stretch_um(many), gap.to_um)
        pieces.append(Piece(fit.bed, gap.from_um, to_um, many))
        left -= many
    return Fit(plants - left, tuple(pieces)) if pieces else None


def _spared(crop: Crop, bed: Bed) -> float:
    sun = bed.sun - crop.ground.sun
    depth_m = bed.soil_depth_m - crop.ground.least_soil_m
    return _SUN_SPARED * sun + _DEPTH_SPARED_PER_M * max(0.0, depth_m)


def fits_of(
    beds: Sequence[Bed], crop: Crop, classes: Iterable[tuple[BedClass, Sequence[float]]]
) -> tuple[BedFit, ...]:
    """How a crop fits the beds of its classes, in the order of the garden."""
    spacing_um = crop.ground.spacing_um
    found = [
        BedFit(
            bed,
            beds[bed].line_um,
            max(1, beds[bed].across(spacing_um)),
            one.row_m(crop) * 1e6,
            _spared(crop, beds[bed]),
            rents,
        )
        for one, rents in classes
        for bed in one.beds
    ]
    return tuple(sorted(found, key=lambda fit: fit.bed))


def yields_of(pairs: Sequence[SharedGround], pattern: SharingPattern | None) -> float:
    """What a plant gives in a pattern, against one on ground of its own."""
    return next((pair.yield_share for pair in pairs if pair.pattern is pattern), 1.0)
