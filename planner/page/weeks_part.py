"""The weeks of a season: what is to do, day by day, with the place in each bed."""

from itertools import groupby

from planner.page.element import Html, el, fragment, joined
from planner.page.tick_place import tick_place
from planner.page.wording import full_day_words, week_words
from planner.season import Season
from planner.tasks import Task, TaskKind
from planner.terms import Week, count_words, week_of

_INDOORS = {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF}
# Stands in the place of what only the shared page has.
NOT_SHARED = el(
    "p", "To tick tasks off in the garden, share this page: planner share.", class_="acts"
)


def weeks_part(season: Season) -> Html:
    """Every week with tasks; open are this one and the next, seen from the day of planning.

    In a browser with JavaScript they are seen from the day it is looked at.
    """
    now = week_of(season.as_of)
    weeks = [
        (week, list(tasks)) for week, tasks in groupby(season.tasks, lambda one: week_of(one.on))
    ]
    past = [_week(week, tasks, now) for week, tasks in weeks if week < now]
    coming = [_week(week, tasks, now) for week, tasks in weeks if week >= now]
    return joined(
        [
            el("p", _what_is_next(season, now), id="now", role="status"),
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


def _what_is_next(season: Season, now: Week) -> str:
    if any(week_of(one.on) == now for one in season.tasks):
        return f"This week is {week_words(now)}."
    first = next((one.on for one in season.tasks if week_of(one.on) > now), None)
    if first is None:
        return f"This week is {week_words(now)}. Nothing more is to do this season."
    return (
        f"This week is {week_words(now)}. Nothing is to do in it; next comes the week of "
        f"{week_words(week_of(first))}."
    )


def _week(week: Week, tasks: list[Task], now: Week) -> Html:
    days = groupby(tasks, key=lambda one: one.on)
    name = {now: "This week", now.after(1): "Next week"}.get(week, "")
    return el(
        "details",
        el(
            "summary",
            el("span", name, class_="which"),
            el("span", f"{week_words(week)} {week.sunday.year}", class_="when"),
            el("span", count_words(len(tasks), "task"), class_="many"),
        ),
        *(
            joined(
                [
                    el("h3", full_day_words(day)),
                    el("ul", *map(_task, ones), class_="tasks"),
                ]
            )
            for day, ones in days
        ),
        class_="week",
        id=f"week-{week}",
        data_monday=week.monday.isoformat(),
        open="" if week in {now, now.after(1)} else None,
    )


def _task(task: Task) -> Html:
    where = None if task.kind in _INDOORS else el("p", _where(task), class_="where")
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
