"""A day's tasks in the order one goes: indoors first, then from bed to bed (§43)."""

from collections.abc import Iterable, Sequence

from planner.garden import Garden
from planner.scheduling import Sowing
from planner.tasks import Task, TaskKind

_ENTERING = {TaskKind.SOW, TaskKind.SET_OUT}


def bed_by_bed(garden: Garden, sowings: Sequence[Sowing], tasks: Iterable[Task]) -> list[Task]:
    """The tasks of a day along the beds of the plan; what makes room stands before what enters."""
    number = {bed.name: place for place, bed in enumerate(garden.beds)}
    named = {one.id: one for one in sowings}

    def along(task: Task) -> tuple[bool, int, bool, int, str, bool]:
        first = named[task.sowing].blocks[0]
        indoors = task.kind.is_indoors
        entering = task.kind in _ENTERING
        return not indoors, number[first.bed], entering, first.from_um, task.sowing, indoors

    return sorted(tasks, key=along)
