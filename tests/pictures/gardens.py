"""Seasons to draw: the sample plans, and a plan that tries the pictures."""

from dataclasses import replace
from datetime import date, timedelta
from functools import cache

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.season import Season, make_season
from tests.season_runs import SAMPLE_PLANS, want

_DRAFT = 0
SAMPLES = {plan.name: plan for plan in SAMPLE_PLANS}
MANY_BEDS = "thirty beds with long names"
SEASONS = (*SAMPLES, MANY_BEDS)
_HEAD = """
plan = 1

[site]
name = 'The <long> garden & its thirty beds, behind the old mill by the weir and the "upper" lane'
latitude = 45.5
last_spring_freeze = "04-20"
first_fall_freeze = "10-15"

[season]
from = 2027-03-01
to = 2028-02-20
"""
_BED_NAMES = (
    "Under the old café wall, north of the <gate> & the path to the compost heaps, number {n}",
    "日当たりの良い長い畑の名前はとても長い {n}",
    "B{n}",
    "Donaudampfschifffahrtsgesellschaftskapitaensbeet{n}",
)
_KEPT = """
[[kept]]
bed = "B3"
what = "rhubarb & an old <artichoke> that nobody dares to move"
from = "0 ft"
to = "2 ft"
"""


def _bed(number: int) -> str:
    name = _BED_NAMES[(number - 1) % 4].format(n=number)
    size = (
        f'diameter = "{2 + number % 4} ft"'
        if number % 5 == 0
        else f'length = "{3 + number % 7 * 3} ft"\nwidth = "{1 + number % 4} ft"'
    )
    return f'[[bed]]\nname = \'{name}\'\n{size}\nsoil_depth = "18 in"\nsun = "full"\n'


def many_beds() -> str:
    """Thirty beds of every shape, small blocks and names that are hard to write."""
    beds = "\n".join(_bed(number) for number in range(1, 31))
    wants = [
        want("radish", "9 roots", "2027-05-03", "2027-10-03"),
        want("leaf lettuce", "5 oz", "2027-05-24", "2027-09-26"),
        want("scallion", "12 each", "2027-06-07", "2027-10-03"),
        want("tomato", "6 lb", "2027-08-09", "2027-09-26"),
        want("spinach", "8 oz", "2027-05-10", "2027-10-10"),
        want("bush bean", "3 lb", "2027-07-05", "2027-09-12"),
    ]
    return "\n".join((_HEAD, beds, _KEPT, *wants))


@cache
def season_named(name: str) -> Season:
    """One of the seasons, made on its first day and looked at in its middle."""
    garden = _garden(name)
    wish = garden.wish
    season = make_season(garden, wish.first, None, _DRAFT)
    return replace(season, as_of=wish.first + (wish.last - wish.first) / 2)


def _garden(name: str) -> Garden:
    if name == MANY_BEDS:
        files = PlanFiles(PlanFile("garden.toml", many_beds().encode()))
    else:
        own = SAMPLES[name] / "crops.toml"
        files = PlanFiles(
            PlanFile("garden.toml", (SAMPLES[name] / "garden.toml").read_bytes()),
            PlanFile("crops.toml", own.read_bytes()) if own.exists() else None,
        )
    read = read_garden(files)
    assert isinstance(read, Garden), "\n".join(map(str, read))
    return read


def days_of_change(season: Season) -> list[date]:
    """Every day on which something enters or leaves a bed, and the day before."""
    days = {
        day
        for sowing in season.sowings
        for block in sowing.blocks
        for day in (block.enter_on, block.leave_on)
    }
    return sorted(days | {day - timedelta(days=1) for day in days})
