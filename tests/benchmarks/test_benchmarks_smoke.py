"""The benchmark runs and measures every command; how fast they are it does not judge."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.benchmarks.run import BASELINE_NAME, sample_plans

_RUN = Path(__file__).with_name("run.py")


@pytest.mark.skipif(not hasattr(os, "wait4"), reason="needs the cost of a single process")
def test_the_benchmark_completes_and_names_every_row() -> None:
    done = subprocess.run(
        [sys.executable, str(_RUN), "--repeat", "1"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    expected = [BASELINE_NAME, "planner --help"]
    for plan in sample_plans():
        expected += [f"planner {verb} {plan}" for verb in ("check", "schedule", "week")]
    assert len(expected) > 2
    lines = done.stdout.splitlines()
    rows = lines[1 : 1 + len(expected)]
    for name, row in zip(expected, rows, strict=True):
        assert row.startswith(f"{name} "), row
        cpu_s, ratio, peak_mb = map(float, row.removeprefix(name).split())
        assert min(cpu_s, ratio, peak_mb) >= 0
    # Everything is aligned on the right.
    assert len({len(line) for line in lines[: 1 + len(expected)]}) == 1
