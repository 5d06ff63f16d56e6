"""What spreadsheet programs make of the season's tables: dates, numbers, words, no formulas.

Sources: RFC 4180 for CSV; OWASP, "CSV Injection", for the signs that begin a formula; both from
memory. season.xlsx is read back by openpyxl, which did not write it. By hand LibreOffice Calc 7.4
opened the CSV files and the workbook: dates came as dates, numbers as numbers, nothing as a
formula, with a comma and with a semicolon as separator.
"""

import csv
import io
import re
import zipfile
from datetime import date, datetime
from typing import Any

import openpyxl
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from planner.journal import Journal
from planner.reading import NamedSowings, NotedEntry, PlanFile, read_journal, read_new_entry
from planner.season import Season
from planner.terms import guarded, unguarded
from planner.writing import write_harvest_sheet, write_season_workbook, write_sowing_sheet
from planner.writing.harvest_sheet import COLUMNS as HARVEST_COLUMNS
from planner.writing.sowing_sheet import COLUMNS as TASK_COLUMNS
from tests.pictures.gardens import season_named
from tests.plan_text import own_crop, season_of
from tests.season_runs import want

_BEGINS_A_FORMULA = re.compile("[ \u00a0]*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")
_HOSTILE_BEDS = ("=1+1", "+café; =HYPERLINK(1,2)", "@sum\t-2+3", "'=1", "-")
_HOSTILE_CROP = '=cmd|"/c calc"!a1'
_TEXT = st.text(alphabet="=+-@'\" ,;|\t\r\nab1\uff1d", max_size=14)


def _bed(name: str) -> str:
    quoted = name.replace("\\", "\\\\").replace('"', '\\"').replace("\t", "\\t")
    return (
        f'[[bed]]\nname = "{quoted}"\nlength = "4 ft"\nwidth = "2 ft"\n'
        'soil_depth = "18 in"\nsun = "full"\n'
    )


@pytest.fixture(scope="module")
def hostile() -> Season:
    """A season in which whoever named beds and crops meant ill."""
    quoted = _HOSTILE_CROP.replace('"', '\\"')
    head = (
        'plan = 1\n[site]\nname = "=1+1"\nlatitude = 45.5\nlast_spring_freeze = "04-20"\n'
        'first_fall_freeze = "10-15"\n[season]\nfrom = 2027-03-01\nto = 2027-11-30\n'
    )
    wants = [
        want(quoted, "3 heads", "2027-06-07", "2027-09-26"),
        want("radish", "40 roots", "2027-05-10", "2027-09-26"),
        want("leaf lettuce", "8 oz", "2027-06-07", "2027-08-29"),
    ]
    crop = own_crop(quoted, days_from_sowing="40 days")
    return season_of("\n".join((head, *map(_bed, _HOSTILE_BEDS), *wants)), crop)


def _rows(content: bytes, separator: str = ",") -> list[list[str]]:
    return list(csv.reader(io.StringIO(content.decode("utf-8"), newline=""), delimiter=separator))


def test_no_cell_begins_a_formula(hostile: Season) -> None:
    for content in (write_sowing_sheet(hostile), write_harvest_sheet(hostile)):
        cells = [cell for row in _rows(content) for cell in row]
        assert [cell for cell in cells if _BEGINS_A_FORMULA.match(cell)] == []


@pytest.mark.parametrize("separator", [";", "\t", "|"])
def test_none_does_where_another_separator_is_taken_for_granted(
    hostile: Season, separator: str
) -> None:
    for content in (write_sowing_sheet(hostile), write_harvest_sheet(hostile)):
        cells = [cell for row in _rows(content, separator) for cell in row]
        assert [cell for cell in cells if _BEGINS_A_FORMULA.match(cell)] == []


def test_the_words_of_the_grower_can_be_had_back(hostile: Season) -> None:
    rows = csv.DictReader(io.StringIO(write_sowing_sheet(hostile).decode(), newline=""))
    told = [(unguarded(one["bed"]), unguarded(one["sowing"])) for one in rows]
    assert told == [(task.bed, task.sowing) for task in hostile.tasks]
    assert {_HOSTILE_CROP, "radish"} <= {sowing.rpartition(" ")[0] for _, sowing in told}
    assert set(_HOSTILE_BEDS) & {bed for bed, _ in told}


@given(_TEXT)
@example("=1+1")
@example("a; =b")
@example("'=c")
def test_guarding_is_undone_and_leaves_no_formula(text: str) -> None:
    cell = guarded(text)
    assert unguarded(cell) == text
    for part in re.split("[,;|\t\r\n]", cell):
        assert not re.match("[ \u00a0]*[=+\\-@\uff1d]", part)


@pytest.mark.parametrize(
    "text", ["radish 3", "2 ft to 2 ft 6 in", "'tis the last", "Zoë's bed", ""]
)
def test_usual_words_stay_as_they_are(text: str) -> None:
    assert guarded(text) == text
    assert unguarded(text) == text


# The journal.


@pytest.mark.parametrize(
    "note", ["=1+1", "slugs; =2", "-5 degC at night", "'tis cold", "'=x", "@home", "late"]
)
def test_a_note_is_written_guarded_and_read_as_it_was(note: str) -> None:
    names = NamedSowings({"radish": 3}, {})
    file = PlanFile("journal.csv", b"")
    noted = read_new_entry(file, ("2027-05-01", "sown", "radish 3", "", note), names)
    assert isinstance(noted, NotedEntry), noted
    assert not _BEGINS_A_FORMULA.match(_rows(noted.appended)[1][4])
    read = read_journal(PlanFile("journal.csv", noted.appended), names)
    assert isinstance(read, Journal), read
    assert [entry.note for entry in read.entries] == [note]


# The workbook.


@pytest.fixture(scope="module", params=["ferry_street", "tern_bay"])
def season(request: pytest.FixtureRequest) -> Season:
    return season_named(request.param)


def _book(season: Season) -> Any:
    return openpyxl.load_workbook(io.BytesIO(write_season_workbook(season)))


def test_the_workbook_says_what_the_csv_files_say(season: Season) -> None:
    book = _book(season)
    assert book.sheetnames == ["sowing sheet", "harvest"]
    for sheet, content in zip(
        book.worksheets, (write_sowing_sheet(season), write_harvest_sheet(season)), strict=True
    ):
        rows = [[_as_csv(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
        assert rows == _rows(content)


def _as_csv(cell: object) -> str:
    if isinstance(cell, datetime):
        return cell.date().isoformat()
    return "" if cell is None else f"{cell:.10g}" if isinstance(cell, float) else str(cell)


def test_dates_are_dates_and_numbers_numbers(season: Season) -> None:
    tasks, harvest = _book(season).worksheets
    columns = dict(zip(TASK_COLUMNS, tasks.iter_cols(min_row=2), strict=True))
    assert {cell.data_type for cell in columns["date"]} == {"d"}
    assert {cell.number_format for cell in columns["date"]} == {"yyyy-mm-dd"}
    assert [cell.value.date() for cell in columns["date"]] == [one.on for one in season.tasks]
    assert {cell.data_type for cell in columns["plants"]} == {"n"}
    amounts = dict(zip(HARVEST_COLUMNS, harvest.iter_cols(min_row=2), strict=True))
    for column in ("wanted", "expected", "low", "high"):
        assert {cell.data_type for cell in amounts[column]} == {"n"}


def test_the_head_stays_in_view_and_every_task_can_be_ticked_off(season: Season) -> None:
    tasks, harvest = _book(season).worksheets
    assert tasks.freeze_panes == harvest.freeze_panes == "A2"
    assert tasks.auto_filter.ref == tasks.dimensions
    (choice,) = tasks.data_validations.dataValidation
    assert choice.formula1 == '"x"'
    assert str(choice.sqref) == f"M2:M{len(season.tasks) + 1}"


@pytest.mark.parametrize(("name", "paper"), [("ferry_street", 1), ("tern_bay", 9)])
def test_a_sheet_prints_across_one_page_of_the_growers_paper(name: str, paper: int) -> None:
    for sheet in _book(season_named(name)).worksheets:
        assert int(sheet.page_setup.paperSize) == paper
        assert sheet.page_setup.orientation == "landscape"
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        # One page across is what the standard takes where nothing is said; 0 is any number down.
        assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.print_title_rows == "$1:$1"


def test_words_are_no_formulas_in_the_workbook(hostile: Season) -> None:
    cells = [cell for sheet in _book(hostile).worksheets for row in sheet for cell in row]
    assert "f" not in {cell.data_type for cell in cells}
    assert {_HOSTILE_CROP, *_HOSTILE_BEDS} & {cell.value for cell in cells}


def test_equal_seasons_give_equal_workbooks_without_a_time_in_them(season: Season) -> None:
    content = write_season_workbook(season)
    assert content == write_season_workbook(season)
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        assert {one.date_time for one in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert {one.compress_type for one in archive.infolist()} == {zipfile.ZIP_STORED}
        told = archive.read("docProps/core.xml").decode()
    assert set(re.findall(r"\d{4}-\d\d-\d\d", told)) == {season.as_of.isoformat()}
    assert date.fromisoformat("1980-01-01") < season.as_of
