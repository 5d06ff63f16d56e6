"""Sowings and tasks to print: drafts of the sample plans, and these under other names."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from functools import cache

from planner.cli.folder.plan_folder import garden_in
from planner.cli.shell import need
from planner.garden import Paper
from planner.scheduling import Sowing
from planner.season import make_season
from planner.sheets import Work, work_of
from planner.tasks import tasks_of
from planner.terms import week_of
from tests.season_runs import SAMPLE_PLANS

AS_OF = date(2027, 1, 15)
# The sample plan with raw manure, on South bed on 17 April 2027: 120 days later is 15 August
# (7 CFR 205.203(c)(1)). No crop wanted there bears clear of the soil.
MANURED, SAFE_FROM = ("stony_ridge", "South bed"), date(2027, 8, 15)
PLANS = {plan.name: plan for plan in SAMPLE_PLANS}


@cache
def draft(name: str) -> Work:
    """A sample plan's season, made with the least effort."""
    return work_of(make_season(need(garden_in(PLANS[name])), AS_OF, None, 0))


def picked_safely(plan: str, sowing: Sowing) -> list[date]:
    """The days on which a sowing is picked, less those too soon after raw manure."""
    manured = any((plan, block.bed) == MANURED for block in sowing.blocks)
    days = [taken.day for taken in sowing.harvest]
    return [day for day in days if not manured or day >= SAFE_FROM]


def on_paper(work: Work, paper: Paper) -> Work:
    """The same work, printed on another paper."""
    return replace(work, garden=replace(work.garden, site=replace(work.garden.site, paper=paper)))


def brief(work: Work) -> Work:
    """The work of the first eight weeks."""
    last = list(work.weeks)[7]
    tasks = tuple(one for one in work.tasks if week_of(one.on) <= last)
    names = {one.sowing for one in tasks}
    sowings = tuple(one for one in work.sowings if one.id in names)
    return Work(work.garden, work.as_of, sowings, tasks)


def with_beds_named(work: Work, names: Sequence[str]) -> Work:
    """The same work in beds of these names, over and over, and in a garden of the first."""
    garden = work.garden
    new = {
        bed.name: f"{names[number % len(names)]} {number}"
        for number, bed in enumerate(garden.beds, 1)
    }
    garden = replace(
        garden,
        site=replace(garden.site, name=names[0]),
        beds=tuple(replace(bed, name=new[bed.name]) for bed in garden.beds),
    )
    sowings = tuple(
        replace(sowing, blocks=tuple(replace(block, bed=new[block.bed]) for block in sowing.blocks))
        for sowing in work.sowings
    )
    return Work(garden, work.as_of, sowings, tasks_of(garden, sowings))


def with_crops_named(work: Work, names: Sequence[str]) -> Work:
    """The same work with sowings of crops of these names, over and over."""
    crops = sorted({one.crop.name for one in work.sowings})
    new = {crop: names[number % len(names)] for number, crop in enumerate(crops)}
    sowings = tuple(
        replace(
            one,
            id=f"{new[one.crop.name]} {number}",
            crop=replace(one.crop, name=new[one.crop.name], label=new[one.crop.name]),
            blocks=tuple(replace(block, under="") for block in one.blocks),
        )
        for number, one in enumerate(work.sowings, 1)
    )
    # How long manure lies goes by the crop, and nobody has told of these.
    soil = replace(work.garden.soil, manure=())
    garden = replace(work.garden, soil=soil)
    return Work(garden, work.as_of, sowings, tasks_of(garden, sowings))


def with_both_named(work: Work, names: Sequence[str]) -> Work:
    """The same work in beds and of crops of these names."""
    return with_crops_named(with_beds_named(work, names), names)
