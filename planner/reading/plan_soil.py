"""What soil work asks of the crops wanted: hunger, and where what is eaten grows."""

from collections.abc import Sequence

from planner.almanac import crop_pages
from planner.garden import CropSoil, EatenPart, Feeding, Target
from planner.reading.crops_file import CropShelf
from planner.terms import Fact, Source

_UNKNOWN = Fact("unknown", Source("plan"))


def crop_soils(targets: Sequence[Target], shelf: CropShelf) -> dict[str, CropSoil]:
    """Every crop wanted, under the plan's name for it."""
    names = dict.fromkeys(one.crop.name for one in targets)
    return {name: _crop_soil(name, shelf) for name in names}


def _crop_soil(name: str, shelf: CropShelf) -> CropSoil:
    feeding = shelf.fact(name, "feeding") or _UNKNOWN
    eaten = shelf.fact(name, "eaten_part") or _UNKNOWN
    again = shelf.fact(name, "side_dressing")
    return CropSoil(
        feeding=Feeding(feeding.text),
        feeding_source=feeding.source,
        disputed="" if feeding.source.place else _disputed(shelf.model(name)),
        side_dressing=again.text if again else "",
        eaten_part=EatenPart(eaten.text),
        eaten_source=eaten.source,
    )


def _disputed(model: str) -> str:
    """What other sources hold of a crop's hunger."""
    if not model:
        return ""
    others = [
        f"{row.low} [{row.source}]"
        for row in crop_pages()[model].rows
        if row.figure == "feeding" and not row.used
    ]
    return ", ".join(others)
