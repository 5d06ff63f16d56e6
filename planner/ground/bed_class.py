"""Bed classes: beds that are alike to the crops wanted, counted together."""

from collections.abc import Iterable
from dataclasses import dataclass

from planner.garden import Bed, Crop


@dataclass(frozen=True, slots=True)
class BedClass:
    """Beds of one width that suit the same crops; `beds` are their places in the garden's list."""

    beds: tuple[int, ...]
    alike: Bed
    crops: frozenset[str]
    line_m: float

    def plants_in_row(self, crop: Crop) -> int:
        """Plants side by side; 1 where each plant gets its own area and no row is shared."""
        return max(1, self.alike.across(crop.ground.spacing_um))

    def row_m(self, crop: Crop) -> float:
        """Metres of the line that a row takes, or a single plant where rows are not shared."""
        spacing_um = crop.ground.spacing_um
        if self.alike.across(spacing_um):
            return spacing_um / 1e6
        return spacing_um * spacing_um / self.alike.width_um / 1e6

    def least_line_m(self, crop: Crop, plants: float) -> float:
        """The least of the line that so many plants can do with, at most so many sown together.

        A row is taken whole, so that fewer plants than a row holds take no less than a row.
        """
        return plants * self.row_m(crop) / min(max(plants, 1.0), self.plants_in_row(crop))


def classes_of(beds: tuple[Bed, ...], crops: Iterable[Crop]) -> tuple[BedClass, ...]:
    """The classes of the beds that suit any of the crops, in the order of the garden."""
    wanted = tuple(crops)
    alike: dict[tuple[frozenset[str], int, bool], list[int]] = {}
    for number, bed in enumerate(beds):
        suited = frozenset(crop.name for crop in wanted if crop.fits(bed))
        if suited:
            alike.setdefault((suited, round(bed.width_um), bed.is_round), []).append(number)
    return tuple(
        BedClass(tuple(numbers), beds[numbers[0]], suited, _line_m(beds, numbers))
        for (suited, _, _), numbers in alike.items()
    )


def _line_m(beds: tuple[Bed, ...], numbers: list[int]) -> float:
    return sum(beds[number].line_um for number in numbers) / 1e6
