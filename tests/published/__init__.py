"""Published figures that the program is held against; each row names its source."""

import csv
from pathlib import Path

FOLDER = Path(__file__).parent


def published_rows(name: str) -> list[dict[str, str]]:
    """Each row of one of the tables, by column name."""
    text = (FOLDER / name).read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))
