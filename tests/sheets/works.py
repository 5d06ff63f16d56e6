"""Sowings and tasks to print: drafts of the sample plans, and plans under other names."""

from dataclasses import replace
from datetime import date
from functools import cache

from planner.cli.plan_folder import need_garden
from planner.garden import Paper
from planner.season import make_season
from planner.sheets import Work, work_of
from planner.tasks import tasks_of
from tests.season_runs import SAMPLE_PLANS

AS_OF = date(2027, 1, 15)
PLANS = {plan.name: plan for plan in SAMPLE_PLANS}


@cache
def draft(name: str) -> Work:
    """A sample plan's season, made with the least effort."""
    return work_of(make_season(need_garden(PLANS[name]), AS_OF, None, 0))


def on_paper(work: Work, paper: Paper) -> Work:
    """The same work, printed on another paper."""
    return replace(work, garden=replace(work.garden, site=replace(work.garden.site, paper=paper)))


def renamed(work: Work, name: str) -> Work:
    """The same work in a garden of that name, in beds whose names begin with it."""
    garden = work.garden
    names = {bed.name: f"{name} {number}" for number, bed in enumerate(garden.beds)}
    garden = replace(
        garden,
        site=replace(garden.site, name=name),
        beds=tuple(replace(bed, name=names[bed.name]) for bed in garden.beds),
    )
    sowings = tuple(
        replace(
            sowing,
            blocks=tuple(replace(block, bed=names[block.bed]) for block in sowing.blocks),
        )
        for sowing in work.sowings
    )
    return Work(garden, work.as_of, sowings, tasks_of(garden, sowings))
