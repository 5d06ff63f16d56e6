"""A garden in which nothing freezes unless it is told, for sums that are done on paper."""

from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Candidate, CropCandidates, crop_candidates
from tests.plan_text import garden_of, own_crop

# The first day of the season, on which it is planned.
FIRST = date(2027, 3, 1)

Target = tuple[str, str, str, str]


def paper_garden(
    crops: str,
    *targets: Target,
    freezes: tuple[str, str] = ("never", "never"),
    garden_days: str = '"Mon"',
    wishes: str = "",
    beds: str = "",
) -> Garden:
    """A garden of one bed, or of certain beds, with weekly targets: crop, amount, first, last."""
    plan = f"""
plan = 1

[site]
latitude = 45.5
last_spring_freeze = "{freezes[0]}"
first_fall_freeze = "{freezes[1]}"

[season]
from = {FIRST}
to = 2027-10-31
garden_days = [{garden_days}]
share_ground = false
{wishes}
"""
    plan += beds or bed("Bed", "24 ft", "4 ft")
    for crop, amount, first, last in targets:
        plan += f'\n[[target]]\ncrop = "{crop}"\neach_week = "{amount}"\n'
        plan += f"from = {first}\nto = {last}\n"
    return garden_of(plan, crops)


def bed(name: str, length: str, width: str, depth: str = "18 in", sun: str = "full") -> str:
    """A bed as a grower writes it."""
    return f"""
[[bed]]
name = "{name}"
length = "{length}"
width = "{width}"
soil_depth = "{depth}"
sun = "{sun}"
"""


def paper_crop(**figures: str) -> str:
    """A crop ripe 28 days from sowing, or as told, of which a plant gives one head."""
    return own_crop("paper crop", **{"days_from_sowing": "28 days", **figures})


def wanted(first: str = "2027-05-03", last: str = "2027-08-29", amount: str = "4 heads") -> Target:
    """The target for it."""
    return ("paper crop", amount, first, last)


def found_of(garden: Garden, as_of: date = FIRST) -> CropCandidates:
    """What the garden's first crop could have."""
    return crop_candidates(garden, Climate(garden.site), as_of)[0]


def started(found: CropCandidates, start_on: date) -> Candidate:
    """The candidate begun on a day."""
    (one,) = [one for one in found.candidates if one.course.start_on == start_on]
    return one
