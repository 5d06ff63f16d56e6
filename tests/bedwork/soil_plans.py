"""A plan of one wish, its beds, and sowings that stand where a test wants them."""

from datetime import date, timedelta

from planner.garden import Bed, Garden
from planner.growth import Ripening
from planner.scheduling import Block, HarvestDay, Method, Sowing, SowingState
from tests.plan_text import garden_of

_SITE = """
plan = 1

[site]
name = "Willow Corner"
latitude = 45.0
last_spring_freeze = "04-20"
first_fall_freeze = "10-15"

[season]
from = 2027-03-01
to = 2028-11-30
"""
BED = """
[[bed]]
name = "Gate bed"
length = "8 ft"
width = "4 ft"
soil_depth = "12 in"
sun = "full"
"""
UM_PER_FT = 304_800
FULL_NAMES = {"radish": "12 roots", "tomato": "2 lb", "leaf lettuce": "8 oz", "potato": "2 lb"}


def soil_plan(*parts: str, beds: str = BED, crops: tuple[str, ...] = ("radish",)) -> str:
    """A plan with these beds and further parts, that wants these crops."""
    wants = [
        f'\n[[target]]\ncrop = "{crop}"\neach_week = "{FULL_NAMES[crop]}"\n'
        "from = 2027-08-02\nto = 2027-09-05\n"
        for crop in crops
    ]
    return "\n".join([_SITE, beds, *parts, *wants])


def soil_garden(
    *parts: str, beds: str = BED, crops: tuple[str, ...] = ("radish",), own: str = ""
) -> Garden:
    """The garden of such a plan."""
    return garden_of(soil_plan(*parts, beds=beds, crops=crops), own)


def new_bed(size: str, soil_depth: str, name: str = "New bed") -> str:
    """A new bed as a grower writes it; `size` is its lines of length and width, or diameter."""
    return "\n".join(
        [
            "",
            "[[bed]]",
            f'name = "{name}"',
            size,
            f'soil_depth = "{soil_depth}"',
            'sun = "full"',
            "new = true",
            "",
        ]
    )


def rectangle(length: str, width: str) -> str:
    """The lines of a rectangular bed's size."""
    return f'length = "{length}"\nwidth = "{width}"'


def standing(
    garden: Garden,
    name: str,
    days: tuple[date, date],
    place_ft: tuple[float, float] = (0, 8),
    *,
    under: str = "",
    bed: Bed | None = None,
    picked: tuple[date, ...] = (),
) -> Sowing:
    """A sowing named by crop and number, on a stretch of a bed (the first) between two days."""
    crop = garden.crops[name.rsplit(" ", maxsplit=1)[0]]
    enter, leave = days
    block = Block(
        (bed or garden.beds[0]).name,
        round(place_ft[0] * UM_PER_FT),
        round(place_ft[1] * UM_PER_FT),
        enter,
        leave,
        under,
    )
    return Sowing(
        id=name,
        crop=crop,
        method=Method.DIRECT,
        sow_on=enter,
        emerges_on=enter + timedelta(days=5),
        set_out_on=None,
        ripe=Ripening(leave, leave, leave),
        counted="by hand",
        plants=4,
        seeds=6,
        blocks=(block,),
        harvest=tuple(HarvestDay(day, 1.0) for day in picked or (leave,)),
        clear_on=leave,
        state=SowingState.PLANNED,
        why=(),
    )
