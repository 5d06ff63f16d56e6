"""Plan folders for tests of whole seasons, and running the program on them."""

import json
import os
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from typer.testing import CliRunner

from planner.cli.app import app
from tests.plan_text import target
from tests.plans import PROGRAM, SEASON_FILES
from tests.reference.schemas import season_faults

REPOSITORY = Path(__file__).resolve().parent.parent
SAMPLE_PLANS = tuple(
    sorted(path.parent for path in (REPOSITORY / "sample_plans").glob("*/garden.toml"))
)
WRITTEN_FILES = tuple(sorted(SEASON_FILES))
# Names that a calendar must escape, fold or clean; `\b` is a backslash and a b.
TRYING_NAME = 'Ferry; Street, "north"\\ bed ☂'
TRYING_BED = "Under the old café wall, north\\new; 日当たりの良い長い畑の名前はとても長い"

SMALL_PLAN = """
plan = 1

[site]
name = 'Ferry; Street, "north"\\ bed ☂'
latitude = 45.5
last_spring_freeze = "04-20"
first_fall_freeze = "10-15"

[season]
from = 2027-03-01
to = 2027-11-30
garden_days = ["Wed", "Sat"]
away = [{ from = 2027-07-18, to = 2027-07-26 }]

[[bed]]
name = 'Under the old café wall, north\\new; 日当たりの良い長い畑の名前はとても長い'
length = "10 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[bed]]
name = "Barrel"
diameter = "1 m"
soil_depth = "30 cm"
sun = "part"

[[target]]
crop = "radish"
each_week = "12 roots"
from = 2027-05-10
to = 2027-09-26

[[target]]
crop = "leaf lettuce"
each_week = "8 oz"
from = 2027-06-07
to = 2027-08-29

[[target]]
crop = "tomato"
each_week = "2 lb"
from = 2027-08-09
to = 2027-09-12
"""

# The small plan before its targets.
SMALL_GARDEN = SMALL_PLAN.split("[[target]]", maxsplit=1)[0]


def want(crop: str, each_week: str, first: str, last: str) -> str:
    """A weekly target between two days as a grower writes it."""
    return target(crop, each_week, f"from = {first}", f"to = {last}")


@dataclass(frozen=True, slots=True)
class PlanFolder:
    """A plan folder on disk."""

    path: Path

    def files(self) -> dict[str, bytes]:
        """What the program wrote, by its name below the season folder."""
        season = self.path / "season"
        return {
            one.relative_to(season).as_posix(): one.read_bytes()
            for one in sorted(season.rglob("*"))
            if one.is_file()
        }

    def record(self) -> dict[str, Any]:
        """season.json."""
        record = json.loads((self.path / "season" / "season.json").read_bytes())
        assert isinstance(record, dict)
        return record

    def rewrite(self, old: str, new: str) -> None:
        """Change the plan as a grower would."""
        garden = self.path / "garden.toml"
        before = garden.read_text(encoding="utf-8")
        assert old in before, f"the plan does not say {old!r}"
        garden.write_text(before.replace(old, new), encoding="utf-8")

    def schedule(self, as_of: date) -> None:
        """Schedule in this process."""
        result = CliRunner().invoke(app, ["schedule", str(self.path), "--as-of", str(as_of)])
        assert result.exit_code == 0, f"{result.output}\n{result.exception!r}"
        assert season_faults(self.path) == []

    def schedule_elsewhere(self, as_of: date, environment: Mapping[str, str]) -> None:
        """Schedule in a process of its own, with other settings of the machine."""
        subprocess.run(
            [*PROGRAM, "schedule", str(self.path), "--as-of", str(as_of)],
            check=True,
            env={**os.environ, **environment},
            stdout=subprocess.DEVNULL,
            timeout=120,
        )


def plan_folder(path: Path, garden: str = SMALL_PLAN) -> PlanFolder:
    """A new plan folder with a garden.toml."""
    path.mkdir(parents=True)
    (path / "garden.toml").write_text(garden, encoding="utf-8")
    return PlanFolder(path)


def copy_of(plan: Path, path: Path) -> PlanFolder:
    """What a grower wrote in a plan folder, without the season made of it."""
    path.mkdir(parents=True)
    for file in plan.iterdir():
        if file.is_file():
            (path / file.name).write_bytes(file.read_bytes())
    return PlanFolder(path)
