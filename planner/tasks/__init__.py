"""Tasks: what to do on which day, and why.

Takes Sowings with their Blocks. Gives Tasks in order of the day, each with a sentence the
grower can act on.
"""

from planner.tasks.sowing_tasks import tasks_of
from planner.tasks.task import Task, TaskKind

__all__ = ["Task", "TaskKind", "tasks_of"]
