"""What `planner stations`, `crops` and `why` find by half a name, and numbers that cannot be."""

from pathlib import Path

import pytest

from tests.journals import write_season
from tests.plans import planner

# The station of Clemson University lies at 34.7 N, 82.8 W (NCEI station list).
_CLEMSON = "USC00381770"


@pytest.mark.parametrize("words", [["34.7", "-82.8"], ["34.7,-82.8"], ["--", "34.7", "-82.8"]])
def test_a_place_in_the_west_is_told_with_its_minus(words: list[str]) -> None:
    found = planner("stations", *words)
    assert found.returncode == 0, found.stderr
    assert found.stdout.startswith(_CLEMSON)


@pytest.mark.parametrize("words", ["10001", "95 200", "34.7"])
def test_what_is_no_place_on_earth_is_told(words: str) -> None:
    refused = planner("stations", words)
    assert refused.returncode == 2
    assert f'"{words}" is not a latitude and a longitude' in refused.stderr


@pytest.mark.parametrize(
    ("name", "remedy"),
    [
        ("beans", "name one of: bush bean, lima bean, pole bean."),
        ("raddish", 'try "radish".'),
        ("stones and sand", "planner crops lists them all."),
    ],
)
def test_what_is_no_crop_leads_to_those_it_may_be(name: str, remedy: str) -> None:
    refused = planner("crops", name)
    assert refused.returncode == 2
    assert f"What to do: {remedy}" in refused.stderr


@pytest.mark.parametrize(
    ("name", "remedy"),
    [
        ("radish", 'say which: "radish 1" to "radish 3".'),
        ("radishes", 'say which: "radish 1" to "radish 3".'),
        ("leaf lettuce", 'say which: "leaf lettuce 1".'),
        ("radish 9", 'try "radish 3".'),
    ],
)
def test_a_crop_without_a_number_leads_to_its_sowings(
    name: str, remedy: str, tmp_path: Path
) -> None:
    refused = planner("why", write_season(tmp_path / "plan"), name)
    assert refused.returncode == 2
    assert f"What to do: {remedy}" in refused.stderr


@pytest.mark.parametrize(
    "words",
    [
        ["schedule", ".", "--effort", "4"],
        ["schedule", ".", "--effort", "much"],
        ["outlook", ".", "--revised", "-1"],
        ["share", ".", "--port", "65536"],
    ],
)
def test_a_number_that_cannot_be_is_told_with_its_bounds(words: list[str]) -> None:
    refused = planner(*words)
    assert refused.returncode == 2
    assert f"{words[-1]} is no whole number from 0 to " in refused.stderr


def test_a_remedy_can_be_pasted_where_the_folder_has_a_space(tmp_path: Path) -> None:
    folder = write_season(tmp_path / "my garden")
    (folder / "season" / "season.json").unlink()
    refused = planner("week", folder)
    assert f"planner schedule '{folder}'" in refused.stderr
