"""Tables of figures that ship with the program."""

import csv
from collections.abc import Iterator
from importlib.resources import files


def table_rows(name: str) -> Iterator[dict[str, str]]:
    """Each row of one of the almanac's CSV files, by column name."""
    text = files("planner.almanac").joinpath("data", name).read_text(encoding="utf-8")
    yield from csv.DictReader(text.splitlines())
