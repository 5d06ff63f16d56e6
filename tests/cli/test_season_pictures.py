"""The pictures in the season folder: their names, and that they follow the garden."""

import re
from datetime import date
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.cli.folder.file_names import file_names
from planner.cli.folder.season_pictures import season_pictures
from tests.pictures.gardens import MANY_BEDS, season_named
from tests.season_runs import plan_folder

# Names that Windows keeps for devices: Microsoft, "Naming files, paths, and namespaces",
# from memory.
_DEVICES = {"con", "prn", "aux", "nul", "com1", "lpt1"}


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (["North 1", "north-1", "North  1!"], ["north-1", "north-1-2", "north-1-3"]),
        (["Café wall", "日当たり", "🥕", "畑"], ["cafe-wall", "bed", "bed-2", "bed-3"]),
        (["a-2", "a", "A"], ["a-2", "a", "a-3"]),
        (["../../etc/passwd", "C:\\new"], ["etc-passwd", "c-new"]),
    ],
)
def test_a_file_name_is_plain_and_given_once(words: list[str], names: list[str]) -> None:
    assert file_names(words, "bed") == names


@given(st.lists(st.text(max_size=80), max_size=12))
def test_whatever_is_written_makes_a_name_of_its_own(words: list[str]) -> None:
    names = file_names(words, "bed")
    assert len(set(names)) == len(words)
    assert all(re.fullmatch("[a-z0-9]+(-[a-z0-9]+)*", one) and len(one) <= 60 for one in names)


def test_there_is_a_picture_of_the_garden_each_bed_and_each_crop() -> None:
    season = season_named(MANY_BEDS)
    pictures = season_pictures(season)
    assert len(pictures) == 1 + len(season.garden.beds) + len(season.garden.crops)
    for name, content in pictures.items():
        assert name.startswith("pictures/")
        assert Path(name).stem not in _DEVICES
        assert ET.fromstring(content).tag.endswith("svg")  # noqa: S314 - of this program


def test_the_picture_of_a_bed_goes_with_the_bed(tmp_path: Path) -> None:
    folder = plan_folder(tmp_path / "plan")
    folder.schedule(date(2027, 3, 1))
    assert "pictures/year-barrel.svg" in folder.files()
    mine = folder.path / "season" / "pictures" / "my-photo.jpg"
    mine.write_bytes(b"\xff\xd8")
    folder.rewrite('name = "Barrel"', 'name = "Half barrel"')
    folder.schedule(date(2027, 3, 1))
    pictures = {name for name in folder.files() if name.startswith("pictures/")}
    assert "pictures/year-half-barrel.svg" in pictures
    assert "pictures/year-barrel.svg" not in pictures
    assert mine.read_bytes() == b"\xff\xd8"
