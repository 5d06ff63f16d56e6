"""The weeks of a season: what is to do, day by day, with the place in each bed; and bed work."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from planner.garden import SeasonWish
from planner.page.element import Html, el, fragment, joined
from planner.page.tick_place import tick_place
from planner.page.wording import day_words, full_day_words, week_words
from planner.season import Season
from planner.tasks import Task
from planner.terms import Week, count_words, week_of
from planner.writing import WeekBedwork, bed_by_bed, bedwork_by_week

# Stands in the place of what only the shared page has.
NOT_SHARED = el(
    "p", "To tick tasks off in the garden, share this page: planner share.", class_="acts"
)


def weeks_part(season: Season) -> Html:
    """Every week with something to do; this one and the next are open, by the day of planning.

    In a browser with JavaScript they are seen from the day it is looked at.
    """
    now = week_of(season.as_of)
    work = _work(season)
    past = [_week(week, work[week], now) for week in work if week < now]
    coming = [_week(week, work[week], now) for week in work if week >= now]
    return joined(
        [
            el("p", _what_is_next(work, now), id="now", role="status"),
            NOT_SHARED,
            el("div", *coming, id="coming-weeks"),
            el(
                "details",
                el("summary", el("span", "Earlier weeks", class_="which")),
                el("div", *past, id="past-weeks"),
                id="earlier",
                hidden=None if past else "",
            ),
        ]
    )


@dataclass(frozen=True, slots=True)
class _Work:
    """What a week has to do, and the days on which nobody is there to do it."""

    tasks: tuple[Task, ...]
    bedwork: WeekBedwork
    away: str


def _work(season: Season) -> dict[Week, _Work]:
    """The work of every week that has any, in order."""
    garden = season.garden
    tasks = {
        week: tuple(
            task
            for _, of_day in groupby(ones, lambda one: one.on)
            for task in bed_by_bed(garden, season.sowings, of_day)
        )
        for week, ones in groupby(season.tasks, lambda one: week_of(one.on))
    }
    bedwork = bedwork_by_week(garden, season.sowings)
    return {
        week: _Work(tasks.get(week, ()), bedwork.get(week, WeekBedwork()), _away(garden.wish, week))
        for week in sorted({*tasks, *bedwork})
    }


def _away(wish: SeasonWish, week: Week) -> str:
    days = [day for day in week.days if wish.is_away(day)]
    if not days:
        return ""
    first, last = day_words(days[0]), day_words(days[-1])
    return f"Away: {first}." if first == last else f"Away: {first} to {last}."


def _how_much(week: Week, work: _Work) -> str:
    """The number of the week, as on sheets and in pictures, and how much is to do."""
    many = count_words(len(work.tasks), "task") if work.tasks else "bed work alone"
    return f"week {week.number}, {many}"


def _what_is_next(weeks: Iterable[Week], now: Week) -> str:
    coming = [week for week in weeks if week >= now]
    if not coming:
        return f"This week is {week_words(now)}. Nothing more is to do this season."
    if coming[0] == now:
        return f"This week is {week_words(now)}."
    return (
        f"This week is {week_words(now)}. Nothing is to do in it; next comes the week of "
        f"{week_words(coming[0])}."
    )


def _week(week: Week, work: _Work, now: Week) -> Html:
    name = {now: "This week", now.after(1): "Next week"}.get(week, "")
    return el(
        "details",
        el(
            "summary",
            el("span", name, class_="which"),
            el("span", f"{week_words(week)} {week.sunday.year}", class_="when"),
            el("span", _how_much(week, work), class_="many"),
        ),
        el("p", work.away, class_="not-yet") if work.away else Html(),
        *(el("p", line, class_="not-yet") for line in work.bedwork.not_yet),
        *(_day(day, ones) for day, ones in groupby(work.tasks, key=lambda one: one.on)),
        _bedwork(work.bedwork.work),
        class_="week",
        id=f"week-{week}",
        data_monday=week.monday.isoformat(),
        open="" if week in {now, now.after(1)} else None,
    )


def _day(day: date, tasks: Iterable[Task]) -> Html:
    return joined([el("h3", full_day_words(day)), el("ul", *map(_task, tasks), class_="tasks")])


def _bedwork(lines: tuple[str, ...]) -> Html:
    if not lines:
        return Html()
    items = (el("li", line, class_="task") for line in lines)
    return joined([el("h3", "Bed work of the week"), el("ul", *items, class_="tasks")])


def _task(task: Task) -> Html:
    where = None if task.kind.is_indoors else el("p", _where(task), class_="where")
    return el(
        "li",
        el(
            "p",
            el("a", task.sowing, href=f"#{sowing_fragment(task.sowing)}"),
            f": {task.text}",
        ),
        where or Html(),
        tick_place(task.id),
        id=f"task-{fragment(task.id)}",
        class_="task",
    )


def _where(task: Task) -> str:
    """Bed and place; where there are several beds, the place names them."""
    return task.place if " + " in task.bed else f"{task.bed}, {task.place}"


def sowing_fragment(sowing: str) -> str:
    """The name within the page of a sowing's story."""
    return f"sowing-{fragment(sowing)}"
