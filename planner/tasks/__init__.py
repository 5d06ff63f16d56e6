"""Tasks: what to do on which day, and why.

Takes Sowings with their Blocks. Gives Tasks in order of the day, each with a sentence the
grower can act on.
"""

from planner.tasks.task import Task, TaskKind
from planner.tasks.todo import tasks_of

__all__ = ["Task", "TaskKind", "tasks_of"]
