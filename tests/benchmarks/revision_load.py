"""What a revision costs and changes when one sowing was missed, beside planning anew.

By hand: python -m tests.benchmarks.revision_load [--seed 1 --seed 2] [--size 14x15]

A made-up garden is scheduled; a third into its season a sowing is missed, the journal tells so,
and `planner schedule` runs again, as a whole process. From left to right:

- first, again: CPU seconds of the first schedule and of the revision; ratio: the second by the
  first. wall: seconds of the revision by the clock.
- future: sowings not yet begun. changed: added or dropped among them, as a share.
- fill: what the revision meets of all that is wanted. freely: what planning anew meets around
  what stands, in so many changes. bound: what no plan can pass then.
"""

import argparse
import json
import shutil
import tempfile
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from tests.benchmarks.run import PLANNER, Cost, cost_of, first_day
from tests.benchmarks.synthetic_gardens import synthetic_garden

_HEAD = (
    "garden            first   again  ratio   wall  future changed    fill  freely changed   bound"
)
_AFTER = timedelta(days=3)


@dataclass(frozen=True, slots=True)
class Revised:
    """A garden's first season, its revision, and the season planned anew in its place."""

    name: str
    first: Cost
    again: Cost
    before: dict[str, Any]
    little: dict[str, Any]
    freely: dict[str, Any]
    as_of: date

    def __str__(self) -> str:
        future = self._future(self.before)
        return (
            f"{self.name:<14} {self.first.cpu_s:8.2f} {self.again.cpu_s:7.2f}"
            f" {self.again.cpu_s / self.first.cpu_s:6.2f} {self.again.wall_s:6.2f} {len(future):7d}"
            f" {self._changed(self.little):7.1%} {self.little['measures']['fill']:7.4f}"
            f" {self.freely['measures']['fill']:7.4f} {self._changed(self.freely):7.1%}"
            f" {self.little['measures']['bound']:7.4f}"
        )

    def _future(self, season: dict[str, Any]) -> set[str]:
        """The names of sowings not begun on the day of the revision."""
        day = self.as_of.isoformat()
        return {one["id"] for one in season["sowings"] if one["sow_on"] >= day}

    def _changed(self, season: dict[str, Any]) -> float:
        was, now = self._future(self.before), self._future(season)
        return len(was ^ now) / max(1, len(was))


def revised(beds: int, crops: int, seed: int, copies: Path) -> Revised:
    """Schedule a made-up garden, miss a sowing a third into it, and revise."""
    name = f"{beds}x{crops} seed {seed}"
    folder = copies / name
    folder.mkdir()
    (folder / "garden.toml").write_text(synthetic_garden(beds, crops, 0.75, seed), encoding="utf-8")
    first = cost_of((*PLANNER, "schedule", str(folder), "--as-of", first_day(folder)))
    before = _season(folder)
    starts = sorted(before["sowings"], key=lambda one: (one["sow_on"], one["id"]))
    missed = starts[len(starts) // 3]
    as_of = date.fromisoformat(missed["sow_on"]) + _AFTER
    line = f"{missed['sow_on']},missed,{missed['id']},,\n"
    (folder / "journal.csv").write_text(f"date,event,sowing,amount,note\n{line}", encoding="utf-8")
    anew = copies / f"{name} anew"
    shutil.copytree(folder, anew)
    revise = (*PLANNER, "schedule", "--as-of", str(as_of))
    again = cost_of((*revise, str(folder)))
    cost_of((*revise, "--freely", str(anew)))
    return Revised(name, first, again, before, _season(folder), _season(anew), as_of)


def _season(folder: Path) -> dict[str, Any]:
    season: dict[str, Any] = json.loads((folder / "season" / "season.json").read_bytes())
    return season


def main() -> None:
    """Revise the gardens asked for, printing each row as it is done."""
    parser = argparse.ArgumentParser(description="What a revision costs and changes.")
    parser.add_argument("--size", default="14x15", help="beds x crops")
    parser.add_argument("--seed", action="append", type=int, help="1; may be repeated")
    arguments = parser.parse_args()
    beds, crops = map(int, arguments.size.split("x"))
    print(_HEAD)
    with tempfile.TemporaryDirectory() as copies:
        for seed in arguments.seed or (1, 2, 3, 4, 5):
            print(revised(beds, crops, seed, Path(copies)), flush=True)


if __name__ == "__main__":
    main()
