"""A sowing written down by hand."""

from datetime import date, timedelta

from planner.garden import Crop
from planner.growth import Ripening
from planner.scheduling import Block, HarvestDay, Method, Sowing, SowingState

_SOWN = date(2027, 4, 5)


def sowing_of(
    crop: Crop,
    name: str = "",
    sow_on: date = _SOWN,
    *,
    set_out_on: date | None = None,
    ripe: Ripening | None = None,
    plants: int = 6,
    harvest: tuple[HarvestDay, ...] = (),
    clear_on: date | None = None,
    blocks: tuple[Block, ...] = (),
    mark: str = "",
) -> Sowing:
    """A planned sowing; what is not told is counted from the day it is sown, ripe in 28 days."""
    likely = (set_out_on or sow_on) + timedelta(days=28)
    ripe = ripe or Ripening(likely, likely, likely)
    return Sowing(
        id=name,
        mark=mark,
        crop=crop,
        method=Method.INDOORS if set_out_on else Method.DIRECT,
        sow_on=sow_on,
        emerges_on=sow_on + timedelta(days=5),
        set_out_on=set_out_on,
        ripe=ripe,
        counted="by the calendar",
        plants=plants,
        seeds=plants,
        blocks=blocks,
        harvest=harvest,
        clear_on=clear_on or max((one.day for one in harvest), default=ripe.likely),
        state=SowingState.PLANNED,
        why=(),
    )
