"""`planner week --pdf`: this week's sheet, whole or not at all."""

import shutil
from pathlib import Path

import pytest

from tests.plans import AS_OF, contents, planner, write_plan
from tests.sheets.paper_read import POINTS_PER_MM, SIZES_MM, ReadPdf, joined


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan folder with its season; not to be written into."""
    folder = write_plan(tmp_path_factory.mktemp("week") / "plan")
    assert planner("schedule", folder, *AS_OF).returncode == 0
    return folder


@pytest.fixture
def plan(tmp_path: Path, made: Path) -> Path:
    """The same, for one test alone."""
    return shutil.copytree(made, tmp_path / "plan")


def test_the_weeks_sheet_has_what_the_screen_shows(plan: Path, tmp_path: Path) -> None:
    paper = tmp_path / "week.pdf"
    shown = planner("week", plan, "--of", "2027-05-12", "--pdf", paper)
    assert shown.returncode == 0, shown.stderr
    assert shown.stdout.endswith(f"\nWritten for printing: {paper}\n")
    pdf = ReadPdf(paper.read_bytes())
    assert pdf.bookmarks == ["Week 19 Mon 10 May to Sun 16 May 2027"]
    assert pdf.pages[0].width == pytest.approx(SIZES_MM["letter"][0] * POINTS_PER_MM, abs=0.1)
    text = joined(" ".join(pdf.texts))
    tasks = [joined(one).removeprefix("[ ] ") for one in shown.stdout.split("\n  [ ] ")[1:]]
    assert tasks
    for task in tasks:
        name = task.partition(":")[0]
        assert name in text


def test_the_same_sheet_is_in_the_seasons_file(plan: Path, tmp_path: Path) -> None:
    planner("week", plan, "--of", "2027-05-12", "--pdf", tmp_path / "week.pdf")
    (alone,) = ReadPdf((tmp_path / "week.pdf").read_bytes()).texts
    season = ReadPdf((plan / "season" / "sheets.pdf").read_bytes()).texts
    assert alone in season


def test_a_week_without_tasks_is_a_sheet_to_write_on(plan: Path, tmp_path: Path) -> None:
    paper = tmp_path / "week.pdf"
    result = planner("week", plan, "--of", "2027-12-20", "--pdf", paper)
    assert result.returncode == 0
    assert "Nothing to do this week." in ReadPdf(paper.read_bytes()).texts[0]


def test_json_and_a_sheet_can_be_had_at_once(plan: Path, tmp_path: Path) -> None:
    paper = tmp_path / "week.pdf"
    result = planner("week", plan, "--of", "2027-05-12", "--json", "--pdf", paper)
    assert result.stdout.startswith("[")
    assert result.stdout.rstrip().endswith("]")
    assert paper.read_bytes().startswith(b"%PDF-")


def test_a_sheet_takes_the_place_of_the_one_before(plan: Path, tmp_path: Path) -> None:
    paper = tmp_path / "week.pdf"
    paper.write_bytes(b"old")
    assert planner("week", plan, "--of", "2027-05-12", "--pdf", paper).returncode == 0
    assert paper.read_bytes().startswith(b"%PDF-")
    assert [one.name for one in tmp_path.iterdir() if one.is_file()] == ["week.pdf"]


def test_a_link_is_followed(plan: Path, tmp_path: Path) -> None:
    (tmp_path / "link.pdf").symlink_to(tmp_path / "week.pdf")
    assert (
        planner("week", plan, "--of", "2027-05-12", "--pdf", tmp_path / "link.pdf").returncode == 0
    )
    assert (tmp_path / "link.pdf").is_symlink()
    assert (tmp_path / "week.pdf").read_bytes().startswith(b"%PDF-")


@pytest.mark.parametrize(
    ("name", "wrong"),
    [
        ("no such folder/week.pdf", "There is no folder"),
        ("plan", "Something of that name that is no plain file is in the way."),
        ("locked/week.pdf", "The computer says: Permission denied."),
        (f"{'w' * 300}.pdf", "The computer says: File name too long."),
        ("loop.pdf", "Something of that name that is no plain file is in the way."),
    ],
)
def test_where_nothing_can_be_written_nothing_is_and_it_is_told(
    plan: Path, tmp_path: Path, name: str, wrong: str
) -> None:
    (tmp_path / "locked").mkdir()
    (tmp_path / "locked" / "week.pdf").write_bytes(b"old")
    (tmp_path / "locked").chmod(0o555)
    (tmp_path / "loop.pdf").symlink_to(tmp_path / "loop.pdf")
    before = contents(tmp_path)
    result = planner("week", plan, "--of", "2027-05-12", "--pdf", tmp_path / name)
    assert result.returncode == 2
    assert result.stdout == ""
    assert result.stderr.startswith(f"{tmp_path / name}: file cannot be written\n  {wrong}")
    assert result.stderr.count("What to do: ") == 1
    assert contents(tmp_path) == before


def test_a_plan_changed_since_is_told_and_not_printed(plan: Path, tmp_path: Path) -> None:
    """The sheet's amounts come from the plan's files, so they must still be those of the season."""
    garden = plan / "garden.toml"
    text = garden.read_text("utf-8")
    crop = text.index('crop = "radish"')
    garden.write_text(
        text[:crop] + text[crop:].replace('crop = "radish"', 'crop = "beet"', 1), "utf-8"
    )
    for of in ("2027-05-05", "2027-04-28"):
        result = planner("week", plan, "--of", of, "--pdf", tmp_path / "week.pdf")
        assert result.returncode == 2
        assert "no longer what the plan's files say" in result.stderr
        assert f"planner schedule {plan}" in result.stderr
    assert not (tmp_path / "week.pdf").exists()
