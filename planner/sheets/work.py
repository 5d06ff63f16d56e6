"""Work: what sheets are made from, a garden with its sowings and tasks."""

from dataclasses import dataclass
from datetime import date
from functools import cached_property

from planner.bedwork import TooEarlyHarvests, too_early_harvests
from planner.garden import Bed, Garden
from planner.scheduling import Sowing
from planner.season import Season
from planner.tasks import Task
from planner.terms import Week, week_of


@dataclass(frozen=True)
class Work:
    """A garden's sowings and tasks, as planned on `as_of`."""

    garden: Garden
    as_of: date
    sowings: tuple[Sowing, ...]
    tasks: tuple[Task, ...]

    @cached_property
    def beds(self) -> dict[str, Bed]:
        """Each bed by its name, in the order of the plan."""
        return {bed.name: bed for bed in self.garden.beds}

    def number_of(self, bed: str) -> int:
        """Which bed of the plan it is, counted from 1."""
        return list(self.beds).index(bed) + 1

    @cached_property
    def named(self) -> dict[str, Sowing]:
        """Each sowing by its name."""
        return {sowing.id: sowing for sowing in self.sowings}

    @cached_property
    def too_early(self) -> TooEarlyHarvests:
        """The harvests before raw manure has lain long enough."""
        return too_early_harvests(self.garden, self.sowings)

    def first_pick(self, sowing: Sowing) -> date | None:
        """The day of the first harvest that does not come too early; None where none is planned."""
        days = (one.day for one in sowing.harvest if (sowing.id, one.day) not in self.too_early)
        return next(days, None)

    @cached_property
    def weeks(self) -> dict[Week, tuple[Task, ...]]:
        """The tasks of every week that has any, in order."""
        weeks: dict[Week, list[Task]] = {}
        for task in self.tasks:
            weeks.setdefault(week_of(task.on), []).append(task)
        return {week: tuple(weeks[week]) for week in sorted(weeks)}


def work_of(season: Season) -> Work:
    """What is printed of a season."""
    return Work(season.garden, season.as_of, season.sowings, season.tasks)
