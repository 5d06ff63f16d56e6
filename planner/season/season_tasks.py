"""Season tasks: what to do, with bed work that forbids a harvest told in the task itself (§46)."""

from dataclasses import replace

from planner.bedwork import TooEarly, too_early_harvests
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.tasks import Task, tasks_of


def season_tasks(garden: Garden, sowings: tuple[Sowing, ...]) -> tuple[Task, ...]:
    """The tasks in order of the day; a harvest that comes too early says from when on it may be."""
    too_early = too_early_harvests(garden, sowings)
    return tuple(
        _told(task, too_early.get((task.sowing, task.on))) for task in tasks_of(garden, sowings)
    )


def _told(task: Task, wait: TooEarly | None) -> Task:
    if wait is None or not task.kind.is_harvest:
        return task
    return replace(task, text=wait.words(task.crop))
