"""The season: the rooms run in order, once."""

from dataclasses import dataclass
from datetime import date
from uuid import UUID, uuid5

from planner.climate import Climate
from planner.garden import Garden
from planner.journal import NOTHING_TOLD, Journal
from planner.scheduling import (
    USUAL_EFFORT,
    Changing,
    Earlier,
    MoreGround,
    Opening,
    Sowing,
    Unmet,
    choose_sowings,
    name_sowings,
    openings,
)
from planner.season.basis import basis_of
from planner.season.changes import Changes, changes_between
from planner.season.crop_outlook import CropOutlook, outlooks_of
from planner.season.measures import Measures, measures_of
from planner.season.repeats import Repeat, repeats_of
from planner.season.season_tasks import season_tasks
from planner.season.tried import tried_outlooks
from planner.tasks import Task

# Namespace of this project's ids, made once (RFC 9562 version 5 ids below it).
_NAMESPACE = UUID("6f5d2a3e-8a58-5c0b-9d3c-2f0f6f2c7a11")


@dataclass(frozen=True, slots=True)
class Season:
    """The result: sowings, tasks, expected harvest, what stays unmet and why.

    `tried_fills`: the share of all wanted it would have given in each past year on record.
    """

    plan_id: UUID
    as_of: date
    garden: Garden
    sowings: tuple[Sowing, ...]
    tasks: tuple[Task, ...]
    outlooks: tuple[CropOutlook, ...]
    unmet: tuple[Unmet, ...]
    measures: Measures
    more_ground: tuple[MoreGround, ...]
    openings: tuple[Opening, ...]
    repeats: tuple[Repeat, ...]
    names_given: dict[str, int]
    basis: str
    changes: Changes
    tried_fills: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class EarlierSeason:
    """What is kept of a season made before: its id, its sowings, how many names each crop has had.

    `basis` marks what it rested on; empty where that is not known.
    """

    plan_id: UUID
    sowings: tuple[Sowing, ...]
    names_given: dict[str, int]
    basis: str = ""


def make_season(
    garden: Garden,
    as_of: date,
    earlier: EarlierSeason | None,
    effort: int = USUAL_EFFORT,
    *,
    journal: Journal = NOTHING_TOLD,
    changing: Changing = Changing.LITTLE,
) -> Season:
    """The season of a garden as seen on `as_of`.

    Sowings of the earlier season started before that day stand as they are, by what the journal
    tells; others may move where that is worth it, and stay when nothing has changed since but
    the day. The day asked for decides, and no day asked for before: when it lies before an earlier
    one, what was begun between the two may move again, and no name passes to another sowing.
    Sowings cleared before the season's first day are let go with their tasks, and what is left
    of them in store is not counted. The first season is the same with no earlier one.
    """
    before = earlier or EarlierSeason(_plan_id(garden), (), {})
    told = journal.as_of(as_of)
    basis = basis_of(garden, told)
    if before.basis == basis and effort <= USUAL_EFFORT and changing is Changing.LITTLE:
        changing = Changing.NOTHING
    climate = Climate(garden.site)
    choice = choose_sowings(garden, climate, as_of, Earlier(before.sowings, told, changing), effort)
    sowings, names = name_sowings(choice.sowings, choice.movable, before.names_given)
    outlooks, tried_fills = tried_outlooks(
        garden, climate, sowings, as_of, outlooks_of(garden, sowings, choice.unmet)
    )
    return Season(
        plan_id=before.plan_id,
        as_of=as_of,
        garden=garden,
        sowings=sowings,
        tasks=season_tasks(garden, sowings),
        outlooks=outlooks,
        unmet=choice.unmet,
        measures=measures_of(garden, outlooks, choice.bound.share),
        more_ground=choice.bound.more_ground,
        openings=openings(garden, climate, as_of, choice.unmet),
        repeats=repeats_of(garden, sowings),
        names_given=names,
        basis=basis,
        changes=changes_between(garden, as_of, before.sowings, sowings, choice.missed),
        tried_fills=tried_fills,
    )


def _plan_id(garden: Garden) -> UUID:
    """An id for a plan that has none yet, from what makes it this garden's plan."""
    beds = ",".join(f"{bed.name}:{bed.line_um}" for bed in garden.beds)
    wish = garden.wish
    words = f"{garden.site.name}|{garden.site.latitude_deg}|{wish.first}|{wish.last}|{beds}"
    return uuid5(_NAMESPACE, words)
