"""The season folder changes in one step or not at all."""

from pathlib import Path

import pytest

from planner.cli.folder import season_folder
from planner.cli.folder.season_folder import WRITTEN, recover, write_season_folder
from tests.plans import AS_OF, SEASON_FILES, planner, write_plan

FIRST = {"season.json": b"first", "calendar.ics": b"first"}
SECOND = {"season.json": b"second", "calendar.ics": b"second"}
DRAWN = {**FIRST, "pictures/north.svg": b"north", "pictures/south.svg": b"south"}
REDRAWN = {**SECOND, "pictures/north.svg": b"north again"}


def _contents(folder: Path) -> dict[str, bytes]:
    """Every file in the season folder but the list of them."""
    season = folder / "season"
    return {
        path.relative_to(season).as_posix(): path.read_bytes()
        for path in season.rglob("*")
        if path.is_file() and path.name != WRITTEN
    }


def _names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def _cannot_exchange(first: Path, second: Path) -> bool:
    del first, second
    return False


@pytest.fixture(params=["one step", "two renamings"])
def folder(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder on a system that can exchange two names at once, and on one that cannot."""
    if request.param == "two renamings":
        monkeypatch.setattr(season_folder, "_exchange", _cannot_exchange)
    return tmp_path


def test_a_season_takes_the_place_of_the_one_before(folder: Path) -> None:
    assert write_season_folder(folder, FIRST) is None
    assert write_season_folder(folder, SECOND) is None
    assert _contents(folder) == SECOND
    assert _names(folder) == ["season"]


def test_what_the_grower_put_there_is_carried_over(folder: Path) -> None:
    write_season_folder(folder, FIRST)
    (folder / "season" / "notes.txt").write_bytes(b"slugs")
    (folder / "season" / "photos").mkdir()
    (folder / "season" / "photos" / "one.txt").write_bytes(b"x")
    write_season_folder(folder, SECOND)
    assert (folder / "season" / "notes.txt").read_bytes() == b"slugs"
    assert (folder / "season" / "photos" / "one.txt").read_bytes() == b"x"


def test_a_picture_of_what_is_no_more_is_gone(folder: Path) -> None:
    write_season_folder(folder, DRAWN)
    assert _contents(folder) == DRAWN
    assert write_season_folder(folder, REDRAWN) is None
    assert _contents(folder) == REDRAWN


def test_the_growers_own_pictures_stay_beside_the_programs(folder: Path) -> None:
    write_season_folder(folder, DRAWN)
    mine = folder / "season" / "pictures" / "year-2026.svg"
    mine.write_bytes(b"mine")
    (folder / "season" / "pictures" / "latest").symlink_to("year-2026.svg")
    write_season_folder(folder, REDRAWN)
    assert mine.read_bytes() == b"mine"
    assert (folder / "season" / "pictures" / "latest").is_symlink()


def test_what_was_written_before_there_was_a_list_is_taken_for_the_growers(folder: Path) -> None:
    write_season_folder(folder, DRAWN)
    (folder / "season" / WRITTEN).unlink()
    write_season_folder(folder, REDRAWN)
    assert _contents(folder) == {**REDRAWN, "pictures/south.svg": b"south"}


@pytest.mark.parametrize("in_the_way", ["a file", "a link", "a folder"])
def test_what_is_of_another_kind_is_told_and_left_alone(folder: Path, in_the_way: str) -> None:
    write_season_folder(folder, FIRST)
    season = folder / "season"
    match in_the_way:
        case "a file":
            (season / "pictures").write_bytes(b"mine")
        case "a link":
            (folder / "elsewhere").mkdir()
            (season / "pictures").symlink_to(folder / "elsewhere")
        case "a folder":
            (season / "pictures" / "north.svg").mkdir(parents=True)
    problem = write_season_folder(folder, DRAWN)
    assert problem is not None
    assert problem.kind == "folder-unwritable"
    assert "pictures" in problem.place.file
    assert (season / "season.json").read_bytes() == b"first"
    assert not (season / "pictures" / "south.svg").exists()


def test_a_file_in_the_way_is_told_and_left_alone(folder: Path) -> None:
    (folder / "season").write_bytes(b"mine")
    problem = write_season_folder(folder, FIRST)
    assert problem is not None
    assert problem.kind == "folder-unwritable"
    assert (folder / "season").read_bytes() == b"mine"
    assert _names(folder) == ["season"]


def test_a_run_that_died_between_two_renamings_is_put_right(tmp_path: Path) -> None:
    write_season_folder(tmp_path, FIRST)
    (tmp_path / "season").rename(tmp_path / "season.old")
    recover(tmp_path)
    assert _contents(tmp_path) == FIRST


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    problem = write_season_folder(tmp_path / "nowhere", FIRST)
    assert problem is not None
    assert problem.kind == "folder-unwritable"


def test_every_file_a_grower_opens_is_named_in_the_end(tmp_path: Path) -> None:
    """season.json, the calendar of changes and the list of files are for programs."""
    shown = planner("schedule", write_plan(tmp_path / "plan"), *AS_OF).stdout
    named = " ".join(shown[shown.index("Written to") :].split())
    opened = SEASON_FILES - {"season.json", "calendar-update.ics", WRITTEN}
    assert set(named.partition(": ")[2].split(", ")) == {*opened, "pictures"}
