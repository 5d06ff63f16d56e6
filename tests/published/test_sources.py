"""Every published figure in the tests names where it comes from."""

from pathlib import Path

import pytest

from planner.almanac import bibliography
from tests.published import FOLDER, published_rows


@pytest.mark.parametrize("table", sorted(FOLDER.glob("*.csv")), ids=lambda path: path.stem)
def test_every_row_has_a_key_of_the_bibliography_or_a_full_citation(table: Path) -> None:
    rows = published_rows(table.name)
    assert rows
    for row in rows:
        source = row["source"]
        assert source in bibliography() or len(source.split()) >= 5, row
