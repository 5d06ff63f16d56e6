"""Plans written as text, and what the program makes of them."""

from datetime import date

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.season import Season, make_season
from planner.terms import Problem


def read_plan(garden: str, crops: str = "") -> Garden | tuple[Problem, ...]:
    """What reading makes of garden.toml and crops.toml: a garden, or problems."""
    own = PlanFile("crops.toml", crops.encode()) if crops else None
    return read_garden(PlanFiles(PlanFile("garden.toml", garden.encode()), own))


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
