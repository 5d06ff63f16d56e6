"""The cautions that concern a plan: those of its crops, and those of the work in any garden."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.almanac import all_cautions
from planner.garden import Caution, CautionTime, KeptGround, Target
from planner.reading.crops_file import CropShelf


def cautions_of_plan(
    targets: Sequence[Target], kept: Sequence[KeptGround], shelf: CropShelf
) -> tuple[Caution, ...]:
    """Every caution; one about crops only where one of them is wanted or stands on kept ground.

    A crop of one's own is taken for the crop it is like.
    """
    wanted = {one.crop.name: shelf.model(one.crop.name) for one in targets}
    wanted |= {one.what: shelf.model(one.what) or one.what.casefold() for one in kept}
    return tuple(_concerning(wanted))


def _concerning(wanted: dict[str, str]) -> Iterator[Caution]:
    for caution in all_cautions():
        if caution.time is not CautionTime.CROP:
            yield caution
            continue
        crops = tuple(name for name, model in wanted.items() if model in caution.crops)
        if crops:
            yield replace(caution, crops=crops)
