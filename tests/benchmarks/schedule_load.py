"""How well, and at what cost, gardens of many sizes are scheduled, beside the rule of thumb.

By hand, all rows: python -m tests.benchmarks.schedule_load
Some of them:      python -m tests.benchmarks.schedule_load --size 14x15 --load 0.75 --seed 1
The sample plans:  python -m tests.benchmarks.schedule_load --samples

A garden of beds x crops is made up (`synthetic_gardens`; load 0.5 is slack, 0.75 tight, 1.1 far
over) and `planner schedule` runs on it as a whole process, once. From left to right:

- CPU s, wall s, MB: what the system charged the process for, and how long it took by the clock.
- fill, bound, gap: shares of all that is wanted (met; what no plan can pass; what lies between).
- surplus: harvest beyond what is wanted. lost: area times days that found no place in the beds,
  as a share, where the season tells it.
- sow, pieces: sowings, and the stretches of bed they stand in; blocks of a sowing that touch in
  one bed are one piece. p/s is pieces to a sowing.
- Four fills of the rule of thumb, on the same garden: by the packet's days (fix) and by the
  season (sea), each in the garden's beds (lim) and with as much ground as it asks for (unl).
- short: the season's shortfall (1 - fill) over that of the rule that knows the season and has
  all the ground it asks for. Below 1 the planner, in its own beds, feeds better than a careful
  grower with endless ground; where the load is slack both are near nothing, so look at the fills.
"""

import argparse
import json
import shutil
import subprocess
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from planner.cli.folder import garden_in
from planner.cli.shell import need
from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling.thumb.rule_of_thumb import Room, Thumb, rule_of_thumb
from tests.benchmarks.run import PLANNER, SAMPLES, Cost, cost_of, first_day, sample_plans
from tests.benchmarks.synthetic_gardens import synthetic_garden

_HEAD = (
    f"{'garden':<22} {'CPU s':>7} {'wall s':>7} {'MB':>5}  {'fill':>5} {'bound':>5} {'gap':>5}"
    f" {'surpl':>5} {'lost':>5}  {'sow':>5} {'pieces':>6} {'p/s':>4}"
    f"  {'fix lim':>7} {'fix unl':>7} {'sea lim':>7} {'sea unl':>7}  {'short':>5}"
)
_RULES = tuple((thumb, room) for thumb in Thumb for room in Room)


@dataclass(frozen=True, slots=True)
class Size:
    """So many beds and crops, at a load, from a seed."""

    beds: int
    crops: int
    load: float
    seed: int

    @property
    def name(self) -> str:
        """As it stands in the table."""
        return f"{self.beds}x{self.crops} {self.load:g} seed {self.seed}"


ALL_SIZES = (
    *(Size(14, 15, load, seed) for load in (0.5, 0.75, 1.1) for seed in (1, 2, 3)),
    *(Size(3, 10, 0.75, seed) for seed in (1, 2, 3)),
    Size(50, 20, 0.75, 1),
    Size(200, 30, 0.75, 1),
    Size(1000, 30, 0.75, 1),
)


@dataclass(frozen=True, slots=True)
class Scheduled:
    """A plan's cost, its season as written, and the fills of the rule of thumb."""

    name: str
    cost: Cost
    season: dict[str, Any]
    thumbs: tuple[float, ...]

    def __str__(self) -> str:
        measures, sowings = self.season["measures"], len(self.season["sowings"])
        pieces = pieces_of(self.season)
        fills = " ".join(f"{fill:7.3f}" for fill in self.thumbs)
        short = (1 - measures["fill"]) / max(1e-9, 1 - self.thumbs[-1])
        lost = measures.get("unplaced")
        return (
            f"{self.name:<22} {self.cost.cpu_s:7.2f} {self.cost.wall_s:7.2f}"
            f" {self.cost.peak_mb:5.0f}  {measures['fill']:5.3f} {measures['bound']:5.3f}"
            f" {measures['gap']:5.3f} {measures['surplus']:5.2f}"
            f" {'-' if lost is None else format(lost, '.3f'):>5}  {sowings:5d} {pieces:6d}"
            f" {pieces / max(1, sowings):4.2f}  {fills}  {short:5.2f}"
        )


def pieces_of(season: dict[str, Any]) -> int:
    """Stretches of bed on end, each of one sowing."""
    return sum(_pieces(sowing["blocks"]) for sowing in season["sowings"])


def _pieces(blocks: list[dict[str, Any]]) -> int:
    ends = {(block["bed"], block["to_m"]) for block in blocks}
    return sum((block["bed"], block["from_m"]) not in ends for block in blocks)


def scheduled(name: str, folder: Path, effort: int | None) -> Scheduled:
    """Run `planner schedule` on a folder, then the rule of thumb in its four forms."""
    options = [] if effort is None else ["--effort", str(effort)]
    cost = cost_of((*PLANNER, "schedule", str(folder), "--as-of", first_day(folder), *options))
    season = json.loads((folder / "season" / "season.json").read_bytes())
    return Scheduled(name, cost, season, thumbs_of(need(garden_in(folder))))


def thumbs_of(garden: Garden) -> tuple[float, ...]:
    """The fills of the rule of thumb, the season-aware one with endless ground last."""
    climate = Climate(garden.site)
    return tuple(
        rule_of_thumb(garden, climate, garden.wish.first, thumb, room).fill
        for thumb, room in _RULES
    )


def folders(
    sizes: Sequence[Size], samples: Sequence[str], copies: Path
) -> Iterator[tuple[str, Path]]:
    """Every plan to schedule, in a folder of its own."""
    for size in sizes:
        folder = copies / size.name
        folder.mkdir()
        text = synthetic_garden(size.beds, size.crops, size.load, size.seed)
        (folder / "garden.toml").write_text(text, encoding="utf-8")
        yield size.name, folder
    for plan in samples:
        shutil.copytree(SAMPLES / plan, copies / plan, ignore=shutil.ignore_patterns("season"))
        yield plan, copies / plan


def knows_effort() -> bool:
    """Whether `planner schedule` can be told how hard to search."""
    shown = subprocess.run(
        [*PLANNER, "schedule", "--help"], capture_output=True, check=True, encoding="utf-8"
    )
    return "--effort" in shown.stdout


def _wanted(arguments: argparse.Namespace) -> tuple[Sequence[Size], Sequence[str]]:
    if arguments.samples:
        return (), sample_plans()
    if not (arguments.size or arguments.load or arguments.seed):
        return ALL_SIZES, sample_plans()
    sizes = [
        Size(int(beds), int(crops), load, seed)
        for beds, crops in (size.split("x") for size in arguments.size or ["14x15"])
        for load in arguments.load or [0.75]
        for seed in arguments.seed or [1]
    ]
    return sizes, ()


def main() -> None:
    """Schedule the gardens asked for, printing each row as it is done."""
    parser = argparse.ArgumentParser(description="How well gardens are scheduled, and the cost.")
    parser.add_argument("--size", action="append", help="beds x crops, as 14x15; may be repeated")
    parser.add_argument("--load", action="append", type=float, help="0.75; may be repeated")
    parser.add_argument("--seed", action="append", type=int, help="1; may be repeated")
    parser.add_argument("--samples", action="store_true", help="only the sample plans")
    parser.add_argument("--effort", type=int, help="passed on, where the command knows it")
    arguments = parser.parse_args()
    if arguments.effort is not None and not knows_effort():
        parser.error("planner schedule knows no --effort")
    print(_HEAD, flush=True)
    with tempfile.TemporaryDirectory() as copies:
        for name, folder in folders(*_wanted(arguments), Path(copies)):
            print(scheduled(name, folder, arguments.effort), flush=True)


if __name__ == "__main__":
    main()
