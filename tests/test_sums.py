"""Sums of fractions are rounded once, by math.fsum: the same in every version of Python.

From 3.12 on, `sum` rounds fractions less than before ("What's New In Python 3.12"); two plans as
good as equal may then change places. Here commands are run with a `sum` that takes no fractions
from the planner's own code.
"""

import builtins
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from planner.cli.app import app
from tests.benchmarks.daily_records import SERIES, weather_of
from tests.benchmarks.outlook_load import sample_text
from tests.plans import AS_OF

_SUM = builtins.sum


def _sum_of_whole_numbers(items: Iterable[Any], /, start: Any = 0) -> Any:
    """The sum; the planner's code may not ask for one that is a fraction."""
    total = _SUM(items, start)
    caller = sys._getframe(1).f_globals["__name__"]
    if caller.startswith("planner."):
        assert not isinstance(total, float), f"{caller} sums fractions: use math.fsum"
    return total


@pytest.fixture
def whole_sums(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(builtins, "sum", _sum_of_whole_numbers)


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    """The sample plan with most in it, at a place with a daily record."""
    (tmp_path / "garden.toml").write_text(sample_text(SERIES["brussels"]), encoding="utf-8")
    record = weather_of(SERIES["brussels"], lambda year: year >= 1996)
    (tmp_path / "weather.csv").write_text(record, encoding="utf-8")
    return tmp_path


def _run(*words: str) -> None:
    done = CliRunner().invoke(app, words, catch_exceptions=False)
    assert done.exit_code == 0, done.output


@pytest.mark.usefixtures("whole_sums")
def test_no_command_adds_up_fractions_but_by_rounding_once(plan: Path) -> None:
    _run("schedule", str(plan), *AS_OF)
    for command in ("week", "outlook", "bedwork"):
        _run(command, str(plan))


@pytest.mark.usefixtures("whole_sums")
def test_a_sum_of_fractions_would_be_seen() -> None:
    planner: dict[str, Any] = {"__name__": "planner.room"}
    with pytest.raises(AssertionError, match=r"use math\.fsum"):
        exec("sum([0.1, 0.2])", planner)  # noqa: S102 - as if it stood in the planner's code
    exec("assert sum([1, 2]) == 3", planner)  # noqa: S102
