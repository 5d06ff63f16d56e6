"""Published figures that the program is held against; each row names its source."""

import csv
from collections.abc import Iterator
from pathlib import Path

FOLDER = Path(__file__).parent


def published_rows(name: str) -> Iterator[dict[str, str]]:
    """Each row of one of the tables, by column name."""
    text = (FOLDER / name).read_text(encoding="utf-8")
    yield from csv.DictReader(text.splitlines())
