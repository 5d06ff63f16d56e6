"""Plans written as text, and what the program makes of them."""

from datetime import date

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.season import Season, make_season
from planner.terms import Problem
from tests.reference.schemas import plan_faults


def read_plan(garden: str, crops: str = "") -> Garden | tuple[Problem, ...]:
    """What reading makes of garden.toml and crops.toml: a garden, or problems.

    The schemas of docs/schemas find nothing wrong in a plan that can stand.
    """
    own = PlanFile("crops.toml", crops.encode()) if crops else None
    read = read_garden(PlanFiles(PlanFile("garden.toml", garden.encode()), own))
    assert isinstance(read, tuple) or plan_faults(garden, crops) == []
    return read


def garden_of(garden: str, crops: str = "") -> Garden:
    """The garden of a plan in which nothing is wrong."""
    read = read_plan(garden, crops)
    assert isinstance(read, Garden), "\n".join(map(str, read))
    return read


def problem_kinds_of(garden: str, crops: str = "") -> list[str]:
    """The kinds of problem in a plan, in the order of its lines."""
    read = read_plan(garden, crops)
    return [] if isinstance(read, Garden) else [problem.kind for problem in read]


def season_of(garden: str, crops: str = "", as_of: date | None = None) -> Season:
    """The first season of a plan, as seen on its first day unless another is told."""
    read = garden_of(garden, crops)
    return make_season(read, as_of or read.wish.first, None)


MILD = """\
latitude = 47.6
last_spring_freeze = "03-28"
first_fall_freeze = "11-09"
"""
EIGHT_BY_FOUR = 'length = "8 ft"\nwidth = "4 ft"'


def plan_head(site: str = MILD, season: str = "") -> str:
    """What stands in a plan before its beds: the site, a season of 2027, and more of it."""
    days = "from = 2027-02-01\nto = 2027-12-31"
    return f"plan = 1\n\n[site]\n{site}\n[season]\n{days}\n{season}\n"


def bed(*more: str, name: str = "North 1", size: str = EIGHT_BY_FOUR, depth: str = "15 in") -> str:
    """A bed in full sun as a grower writes it, with more lines of its own."""
    lines = [f'name = "{name}"', size, f'soil_depth = "{depth}"', 'sun = "full"', *more]
    return "\n".join(["[[bed]]", *lines, "\n"])


def target(crop: str, each_week: str, *more: str) -> str:
    """A weekly target as a grower writes it, with more lines of its own."""
    lines = [f'crop = "{crop}"', f'each_week = "{each_week}"', *more]
    return "\n".join(["[[target]]", *lines, ""])


_ANY_CROP = {
    "family": "Brassicaceae",
    "habit": "once",
    "method": "direct",
    "start_from": "seed",
    "days_to_emerge": "5 days",
    "hardiness": "hardy",
    "autumn_tolerance": "light frost",
    "spacing": "6 in",
    "sowing_depth": "0.5 in",
    "soil_depth": "6-10 in",
    "sun": "part",
    "yield": "1 heads",
    "hold_days": "7 days",
}


def own_crop(name: str, **figures: str) -> str:
    """A crop of one's own in crops.toml: the figures told, and any others where none is told.

    What is told last the test is about; the rest is made up and of no matter to it.
    """
    stated = {**_ANY_CROP, **figures}
    lines = [f'{figure} = "{value}"' for figure, value in stated.items()]
    return "\n".join([f'[crop."{name}"]', *lines, ""])
