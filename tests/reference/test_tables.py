"""CSV files follow their metadata, as a library that reads tables by it finds.

Metadata Vocabulary for Tabular Data, W3C Recommendation, 17 December 2015; the library is csvw.
"""

import csv
import json
import shutil
import warnings
from pathlib import Path
from typing import Any

import pytest
from csvw import CSVW

from tests.plans import AS_OF, planner, write_plan
from tests.reference.schemas import DOCS

_TABLES = {
    "sowing-sheet.csv": "season/sowing-sheet.csv",
    "harvest.csv": "season/harvest.csv",
    "journal.csv": "journal.csv",
}


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan with a season, in whose journal each event stands once."""
    folder = write_plan(tmp_path_factory.mktemp("tables") / "plan")
    assert planner("schedule", folder, *AS_OF).returncode == 0
    for words in (
        ("sown", "radish 1", "--on", "2027-03-20", "--note", "=two, three"),
        ("emerged", "radish 1", "--on", "2027-03-28"),
        ("late", "radish 1", "--on", "2027-03-29", "--amount", "3 days"),
        ("picked", "radish 1", "--on", "2027-05-10", "--amount", "2 roots"),
        ("lost", "radish 1", "--on", "2027-05-11", "--amount", "1 plant"),
        ("cleared", "radish 1", "--on", "2027-05-20"),
        ("undone", "radish 1", "--on", "2027-05-20"),
        ("missed", "radish 2", "--on", "2027-04-20"),
    ):
        done = planner("log", folder, *words)
        assert done.returncode == 0, done.stderr
    return folder


def _metadata(table: str) -> dict[str, Any]:
    read = json.loads((DOCS / "schemas" / f"{table}-metadata.json").read_bytes())
    assert isinstance(read, dict)
    return read


def _beside_its_metadata(table: str, content: bytes, folder: Path) -> CSVW:
    (folder / table).write_bytes(content)
    metadata = f"{table}-metadata.json"
    shutil.copy(DOCS / "schemas" / metadata, folder / metadata)
    return CSVW(str(folder / table), md_url=str(folder / metadata), validate=True)


def _follows(read: CSVW) -> bool:
    """Whether the library finds no fault; it counts warnings of its own."""
    with warnings.catch_warnings():
        warnings.simplefilter("always")
        return bool(read.is_valid)


@pytest.mark.parametrize("table", _TABLES)
def test_a_table_follows_its_metadata(table: str, plan: Path, tmp_path: Path) -> None:
    content = (plan / _TABLES[table]).read_bytes()
    read = _beside_its_metadata(table, content, tmp_path)
    assert _follows(read)
    rows = list(csv.DictReader(content.decode().splitlines()))
    assert len(list(read.tables[0].iterdicts())) == len(rows) > 1


@pytest.mark.parametrize("table", _TABLES)
def test_a_table_has_the_columns_of_its_metadata(table: str, plan: Path) -> None:
    header = (plan / _TABLES[table]).read_text("utf-8").splitlines()[0].split(",")
    columns = _metadata(table)["tableSchema"]["columns"]
    assert [one["titles"] for one in columns] == header
    assert all(one["dc:description"] for one in columns)


@pytest.mark.parametrize(
    ("was", "now"),
    [
        (b"2027-05-10", b"10.05.2027"),
        (b"picked", b"eaten"),
        (b"emerged,radish 1", b"emerged,"),
    ],
)
def test_a_journal_with_a_fault_does_not_follow_it(
    was: bytes, now: bytes, plan: Path, tmp_path: Path
) -> None:
    content = (plan / "journal.csv").read_bytes()
    assert was in content
    harmed = _beside_its_metadata("journal.csv", content.replace(was, now, 1), tmp_path)
    assert not _follows(harmed)


def test_a_column_has_empty_cells_only_where_its_metadata_lets_it(plan: Path) -> None:
    for table, file in _TABLES.items():
        rows = list(csv.DictReader((plan / file).read_text("utf-8").splitlines()))
        for one in _metadata(table)["tableSchema"]["columns"]:
            is_empty = {not row[one["name"]] for row in rows}
            assert is_empty == ({False} if one["required"] else is_empty | {True}), one["name"]
