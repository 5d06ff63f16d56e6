"""How much time and memory the commands take, each as a whole process.

By hand: python tests/benchmarks/run.py [--repeat 5]

Every command is started anew and measured by what the system charges it for: processor seconds
(user and system, the median of the repeats) and the most memory it held. Beside each runs a
small Python that only imports what the standard library gives for such work; the ratio to it
tells slow code from a slow machine. Samples are copied, so no season in the tree is touched.
"""

import argparse
import os
import shutil
import subprocess
import sys
import tempfile
import time
import tomllib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

SAMPLES = Path(__file__).resolve().parents[2] / "sample_plans"
BASELINE_NAME = "python importing json, csv, datetime"
_BASELINE = (sys.executable, "-c", "import json, csv, datetime")
# The same door as the installed `planner`, without a search of the path for it.
PLANNER = (sys.executable, "-c", "from planner.cli import run; run()")
_KB_PER_MB = 1024
# Linux counts the most memory in kilobytes, macOS in bytes.
_RSS_PER_KB = 1024 if sys.platform == "darwin" else 1


@dataclass(frozen=True, slots=True)
class Cost:
    """What one process was charged: processor seconds, most memory, seconds by the clock."""

    cpu_s: float
    peak_mb: float
    wall_s: float


@dataclass(frozen=True, slots=True)
class Task:
    """A command to measure; what it writes is taken away before each run."""

    name: str
    command: tuple[str, ...]
    written: Path | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: the medians of a command and of the small Python beside it."""

    name: str
    cost: Cost
    beside: Cost

    @property
    def ratio(self) -> float:
        """Processor time as a multiple of the small Python's."""
        return self.cost.cpu_s / max(self.beside.cpu_s, 1e-9)


def cost_of(command: Sequence[str]) -> Cost:
    """Run a command to its end; what the system charged for it alone."""
    started = time.monotonic()
    with subprocess.Popen(
        command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE
    ) as process:
        said = process.stderr.read() if process.stderr else b""
        _, status, usage = os.wait4(process.pid, 0)
        wall_s = time.monotonic() - started
        process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode != 0:
        message = f"{' '.join(command)} left with {process.returncode}:\n{said.decode()}"
        raise RuntimeError(message)
    peak_kb = usage.ru_maxrss / _RSS_PER_KB
    return Cost(usage.ru_utime + usage.ru_stime, peak_kb / _KB_PER_MB, wall_s)


def _median_of(costs: Sequence[Cost]) -> Cost:
    return Cost(
        median(one.cpu_s for one in costs),
        median(one.peak_mb for one in costs),
        median(one.wall_s for one in costs),
    )


def measure(task: Task, repeat: int) -> Row:
    """A command and, in turn with it, the small Python."""
    costs, beside = [], []
    for _ in range(repeat):
        if task.written is not None:
            shutil.rmtree(task.written, ignore_errors=True)
        beside.append(cost_of(_BASELINE))
        costs.append(cost_of(task.command))
    return Row(task.name, _median_of(costs), _median_of(beside))


def tasks(copies: Path) -> Iterator[Task]:
    """Every row's task; a plan is scheduled before its week is shown."""
    yield Task(BASELINE_NAME, _BASELINE)
    yield Task("planner --help", (*PLANNER, "--help"))
    for plan in sample_plans():
        folder = copies / plan
        shutil.copytree(SAMPLES / plan, folder, ignore=shutil.ignore_patterns("season"))
        day, name = first_day(folder), str(folder)
        yield Task(f"planner check {plan}", (*PLANNER, "check", name))
        schedule = (*PLANNER, "schedule", name, "--as-of", day)
        yield Task(f"planner schedule {plan}", schedule, written=folder / "season")
        yield Task(f"planner week {plan}", (*PLANNER, "week", name, "--of", day))


def sample_plans() -> list[str]:
    """The folders of sample_plans that hold a plan, by name."""
    return sorted(path.parent.name for path in SAMPLES.glob("*/garden.toml"))


def first_day(folder: Path) -> str:
    """The first day of a plan's season."""
    plan = tomllib.loads((folder / "garden.toml").read_text(encoding="utf-8"))
    return str(plan["season"]["from"])


def table(rows: Sequence[Row]) -> str:
    """The rows as an aligned table."""
    width = max(len(row.name) for row in rows)
    lines = [f"{'command':<{width}}  {'CPU s':>7}  {'ratio':>6}  {'peak MB':>7}"]
    lines += [
        f"{row.name:<{width}}  {row.cost.cpu_s:7.3f}  {row.ratio:6.1f}  {row.cost.peak_mb:7.1f}"
        for row in rows
    ]
    return "\n".join(lines)


def main() -> None:
    """Measure every command and print the table."""
    parser = argparse.ArgumentParser(description="Time and memory of the commands.")
    parser.add_argument("--repeat", type=int, default=5, help="runs of each command (5)")
    repeat: int = parser.parse_args().repeat
    if not hasattr(os, "wait4"):
        parser.error("this system does not tell what a single process was charged for")
    with tempfile.TemporaryDirectory() as copies:
        rows = [measure(task, repeat) for task in tasks(Path(copies))]
    print(table(rows))
    print(f"\nMedian of {repeat}; ratio: processor time against the first line, run in turn.")


if __name__ == "__main__":
    main()
