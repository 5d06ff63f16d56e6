"""What tasks say of one and of many, and the names under which a sowing is found."""

from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from planner.cli.app import app
from planner.tasks.sowing_tasks import _they
from tests.season_runs import SMALL_GARDEN, plan_folder, want


@pytest.mark.parametrize(
    ("names", "words"),
    [
        (["radish 8"], "radish 8 follows"),
        (["cilantro 5", "radish 8"], "cilantro 5 and radish 8 follow"),
        (["cilantro 5", "kale 2", "radish 8"], "cilantro 5, kale 2 and radish 8 follow"),
    ],
)
def test_one_follows_and_more_follow(names: list[str], words: str) -> None:
    assert _they(names, "follow") == words


def test_a_single_slip_is_planted_as_one(tmp_path: Path) -> None:
    once = '[[target]]\ncrop = "sweet potato"\nonce = "1 lb"\nby = 2027-10-10\n'
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + once)
    folder.schedule(date(2027, 3, 1))
    record = folder.record()
    (sowing,) = record["sowings"]
    assert sowing["seeds"] == 1
    (planting,) = (one for one in record["tasks"] if one["kind"] == "sow")
    assert planting["text"].startswith("Plant 1 slip of sweet potato, ")


@pytest.mark.parametrize("name", ["swiss chard 1", "silverbeet 1", " Silverbeet 1 "])
def test_a_sowing_is_found_under_any_name_of_its_crop(name: str, tmp_path: Path) -> None:
    chard = want("swiss chard", "8 oz", "2027-06-14", "2027-07-11")
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + chard)
    folder.schedule(date(2027, 3, 1))
    result = CliRunner().invoke(app, ["why", str(folder.path), name])
    assert result.exit_code == 0, result.output
    assert result.stdout.startswith("swiss chard 1:")


def test_a_sowing_that_is_not_there_is_told_under_any_name(tmp_path: Path) -> None:
    chard = want("swiss chard", "8 oz", "2027-06-14", "2027-07-11")
    folder = plan_folder(tmp_path / "plan", SMALL_GARDEN + chard)
    folder.schedule(date(2027, 3, 1))
    result = CliRunner().invoke(app, ["why", str(folder.path), "silverbeet 99"])
    assert result.exit_code == 2
    assert 'No sowing is named "silverbeet 99"' in result.stderr
