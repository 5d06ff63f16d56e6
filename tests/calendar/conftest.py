"""A season and the same after the grower changed the plan, made once for all tests here."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from planner.cli.app import app
from planner.writing import CalendarEvent, events_in
from tests.plans import QUICK
from tests.season_runs import SMALL_PLAN, PlanFolder, plan_folder

LIVE, UPDATE = "calendar.ics", "calendar-update.ics"
_FIRST_DAY, _LATER_DAY = date(2027, 2, 20), date(2027, 2, 27)


@dataclass(frozen=True, slots=True)
class Stage:
    """The files of a season, by name."""

    files: dict[str, bytes]

    @property
    def live(self) -> dict[str, CalendarEvent]:
        """The events of calendar.ics, by UID."""
        return events_in(self.files[LIVE])

    @property
    def called_off(self) -> dict[str, CalendarEvent]:
        """The events that only calendar-update.ics has, by UID."""
        update = events_in(self.files[UPDATE])
        return {uid: event for uid, event in update.items() if event.is_called_off}

    def laid_out(self, folder: Path) -> Path:
        """The plan folder with this season in it."""
        season = folder / "season"
        season.mkdir(parents=True, exist_ok=True)
        for name, content in self.files.items():
            path = season / name
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(content)
        return folder


@dataclass(frozen=True, slots=True)
class Stages:
    """A season, and the one made of it without tomatoes, away in May, with more radishes."""

    first: Stage
    later: Stage

    @property
    def moved(self) -> set[str]:
        """What has other days in the later one."""
        was, now = self.first.live, self.later.live
        return {uid for uid in was.keys() & now.keys() if _days(was[uid]) != _days(now[uid])}

    @property
    def changed(self) -> set[str]:
        """What says anything else in the later one; moved ones too."""
        was, now = self.first.live, self.later.live
        return {uid for uid in was.keys() & now.keys() if was[uid] != now[uid]}

    @property
    def new(self) -> set[str]:
        """What only the later one has."""
        return self.later.live.keys() - self.first.live.keys()

    @property
    def gone(self) -> set[str]:
        """What the later one calls off."""
        return self.first.live.keys() & self.later.called_off.keys()


def _days(event: CalendarEvent) -> tuple[date, date]:
    return event.first, event.end


@pytest.fixture(scope="session")
def stages(tmp_path_factory: pytest.TempPathFactory) -> Stages:
    folder = plan_folder(tmp_path_factory.mktemp("stages") / "plan")
    first = _scheduled(folder, _FIRST_DAY)
    folder.rewrite(SMALL_PLAN[SMALL_PLAN.rindex("[[target]]") :], "")
    folder.rewrite("from = 2027-07-18, to = 2027-07-26", "from = 2027-05-20, to = 2027-06-02")
    folder.rewrite("12 roots", "14 roots")
    made = Stages(first, _scheduled(folder, _LATER_DAY))
    assert len(made.moved) > 4
    assert made.changed > made.moved
    assert made.gone
    return made


def _scheduled(folder: PlanFolder, as_of: date) -> Stage:
    words = ["schedule", str(folder.path), "--as-of", str(as_of), *QUICK]
    result = CliRunner().invoke(app, words)
    assert result.exit_code == 0, result.output
    return Stage(folder.files())
