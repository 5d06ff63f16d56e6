"""Do other Pythons make the same season, byte for byte, from the same plan?

By hand: python -m tests.benchmarks.versions PYTHON [PYTHON ...], each an interpreter that has the
packages the program needs. The sample plans, and the sample garden at two places with a daily
record, are scheduled in January and revised in May, each time with another hash seed. Every file
is held against what this Python made. Leaves with 1 where one differs.
"""

import argparse
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from tests.benchmarks.daily_records import SERIES, weather_of
from tests.benchmarks.outlook_load import sample_text

_ROOT = Path(__file__).resolve().parents[2]
_RUN = "from planner.cli import run; run()"
_DAYS = ("2027-01-15", "2027-05-20")


def plans() -> dict[str, dict[str, bytes]]:
    """The files of each plan, by its name."""
    samples = {
        folder.name: {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()}
        for folder in sorted((_ROOT / "sample_plans").iterdir())
    }
    recorded = {
        name: {
            "garden.toml": sample_text(SERIES[name]).encode(),
            "weather.csv": weather_of(SERIES[name], lambda _: True).encode(),
        }
        for name in ("brussels", "northumberland")
    }
    return samples | recorded


def made(python: str, plan: dict[str, bytes], first_seed: int) -> dict[str, bytes]:
    """Every file of the plan's folder once this Python has scheduled and revised it."""
    with tempfile.TemporaryDirectory() as above:
        folder = Path(above, "plan")
        folder.mkdir()
        for name, text in plan.items():
            (folder / name).write_bytes(text)
        for seed, day in enumerate(_DAYS, first_seed):
            words = [python, "-c", _RUN, "schedule", str(folder), "--as-of", day]
            here = {**os.environ, "PYTHONHASHSEED": str(seed), "PYTHONPATH": str(_ROOT)}
            subprocess.run(words, env=here, check=True, stdout=subprocess.DEVNULL)
        found = sorted(path for path in folder.rglob("*") if path.is_file())
        return {str(path.relative_to(folder)): path.read_bytes() for path in found}


def differing(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    """The files that only one has, or that are not the same in both."""
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))


def main(arguments: list[str] | None = None) -> int:
    """Print, plan by plan and Python by Python, which files differ."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n", maxsplit=1)[0])
    parser.add_argument("pythons", nargs="+", metavar="PYTHON")
    pythons = parser.parse_args(arguments).pythons
    all_the_same = True
    for name, plan in plans().items():
        here = made(sys.executable, plan, 1)
        for number, python in enumerate(pythons, 1):
            files = differing(here, made(python, plan, 1 + number * len(_DAYS)))
            all_the_same = all_the_same and not files
            print(f"{name}, {python}: {', '.join(files) or f'{len(here)} files the same'}")
    return 0 if all_the_same else 1


if __name__ == "__main__":
    sys.exit(main())
