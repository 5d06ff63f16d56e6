"""Next week: what to be ready for, told a week ahead."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.garden import SeasonWish
from planner.sheets.day_words import day_words, week_words
from planner.sheets.letters import shown
from planner.sheets.work import Work
from planner.tasks import Task, TaskKind
from planner.terms import Week, count_words, week_of

_TOLD = (
    TaskKind.START_INDOORS,
    TaskKind.HARDEN_OFF,
    TaskKind.SET_OUT,
    TaskKind.SOW,
)
_FIRST_PICKING = "pick for the first time"
_TENDING = "only picking, thinning and clearing"
_NOTHING = "nothing to do"
_LONGEST_NAME = 60


@dataclass(frozen=True, slots=True)
class Ahead:
    """One kind of work and the sowings it is for."""

    verb: str
    sowings: str


@dataclass(frozen=True, slots=True)
class NextWeek:
    """The week that follows: its days, what to be ready for, what else, and days away."""

    title: str
    work: tuple[Ahead, ...]
    otherwise: str
    away: str


def next_week(work: Work, week: Week) -> NextWeek:
    """What a week will ask for; picking is told where a sowing is picked first."""
    ahead = tuple(_ahead(work, week))
    otherwise = "" if ahead else _TENDING if week in work.weeks else _NOTHING
    return NextWeek(week_words(week), ahead, otherwise, away_words(work.garden.wish, week))


def away_words(wish: SeasonWish, week: Week) -> str:
    """The days of a week on which nobody is there, empty where there are none."""
    days = [day for day in week.days if wish.is_away(day)]
    if not days:
        return ""
    return (
        day_words(days[0]) if len(days) == 1 else f"{day_words(days[0])} to {day_words(days[-1])}"
    )


def _ahead(work: Work, week: Week) -> Iterator[Ahead]:
    tasks = work.weeks.get(week, ())
    for kind in _TOLD:
        named = [_named(work, one) for one in tasks if one.kind is kind]
        if named:
            yield Ahead(kind.value, ", ".join(named))
    first = [
        shown(one.id, _LONGEST_NAME)
        for one in work.sowings
        if (day := work.first_pick(one)) is not None and week_of(day) == week
    ]
    if first:
        yield Ahead(_FIRST_PICKING, ", ".join(first))


def _named(work: Work, task: Task) -> str:
    sowing = work.named[task.sowing]
    thing = "plant" if task.seeds is None else sowing.crop.start_from.value.removesuffix("s")
    amount = count_words(sowing.plants if task.seeds is None else task.seeds, thing)
    return f"{shown(sowing.id, _LONGEST_NAME)} ({amount})"
