"""Ground: which stretch of which bed is free from one day to another."""

from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.garden import Bed, Crop
from planner.scheduling.sowing import Block

# A sowing is split over at most this many blocks; more are hard to find and to tend.
MOST_BLOCKS = 4


@dataclass(frozen=True, slots=True)
class Gap:
    """A free stretch of a bed."""

    bed: Bed
    from_um: int
    to_um: int

    @property
    def length_um(self) -> int:
        """Length along the bed's line."""
        return self.to_um - self.from_um


@dataclass(slots=True)
class Ground:
    """All beds and the blocks that hold them; grows as sowings are placed."""

    beds: tuple[Bed, ...]
    turnover_days: int
    _blocks: dict[str, list[Block]] = field(default_factory=dict)
    _fitting: dict[str, tuple[Bed, ...]] = field(default_factory=dict)

    def hold(self, blocks: tuple[Block, ...]) -> None:
        """Mark stretches as held."""
        for block in blocks:
            self._blocks.setdefault(block.bed, []).append(block)

    def gaps(self, crop: Crop, enter_on: date, leave_on: date) -> list[Gap]:
        """Every stretch free for a crop over the whole time, in order of bed and position."""
        if crop.name not in self._fitting:
            self._fitting[crop.name] = tuple(bed for bed in self.beds if crop.fits(bed))
        return [
            gap
            for bed in self._fitting[crop.name]
            for gap in self._gaps_of(bed, enter_on, leave_on)
        ]

    def _gaps_of(self, bed: Bed, enter_on: date, leave_on: date) -> list[Gap]:
        rest = timedelta(days=self.turnover_days)
        held = sorted(
            (block.from_um, block.to_um)
            for block in self._blocks.get(bed.name, ())
            if block.enter_on < leave_on + rest and enter_on < block.leave_on + rest
        )
        gaps = []
        reached = 0
        for from_um, to_um in [*held, (bed.line_um, bed.line_um)]:
            if from_um > reached:
                gaps.append(Gap(bed, reached, from_um))
            reached = max(reached, to_um)
        return gaps


def fit_plants(
    crop: Crop, plants: int, gaps: list[Gap], days: tuple[date, date]
) -> tuple[tuple[Block, ...], int]:
    """Blocks for as many of the plants as the gaps hold, and how many that is.

    One block where it can be, in the bed the crop needs least to spare: sun and depth no
    better than it must be, and the tightest gap. Else the largest gaps, few of them.
    """
    whole = [gap for gap in gaps if _stretch(crop, plants, gap) <= gap.length_um]
    if whole:
        best = min(whole, key=lambda gap: (*_spared(crop, gap.bed), gap.length_um, gap.from_um))
        return (_block(crop, plants, best, days),), plants
    blocks: list[Block] = []
    left = plants
    by_size = sorted(gaps, key=lambda gap: (-gap.length_um * gap.bed.width_um, gap.bed.name))
    for gap in by_size[:MOST_BLOCKS]:
        held = min(left, gap.bed.plants_in(gap.length_um, crop.ground.spacing_um))
        if held:
            blocks.append(_block(crop, held, gap, days))
            left -= held
    return tuple(blocks), plants - left


def _spared(crop: Crop, bed: Bed) -> tuple[int, float]:
    """Sun and depth a bed offers beyond what the crop needs."""
    return bed.sun - crop.ground.sun, round(bed.soil_depth_m - crop.ground.least_soil_m, 3)


def _stretch(crop: Crop, plants: int, gap: Gap) -> int:
    return gap.bed.stretch_for(plants, crop.ground.spacing_um)


def _block(crop: Crop, plants: int, gap: Gap, days: tuple[date, date]) -> Block:
    to_um = gap.from_um + min(_stretch(crop, plants, gap), gap.length_um)
    return Block(gap.bed.name, gap.from_um, to_um, *days)
