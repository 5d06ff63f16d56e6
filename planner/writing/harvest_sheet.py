"""harvest.csv: for each week and crop, what is wanted and what can be expected."""

from collections.abc import Iterator

from planner.season import CropOutlook, Season
from planner.terms import Week
from planner.writing.csv_text import csv_bytes
from planner.writing.recorded import recorded

COLUMNS = ("week", "crop", "wanted", "expected", "low", "high", "unit", "unmet_reason")


def write_harvest_sheet(season: Season) -> bytes:
    """The sheet in order of week, crops in the order of the plan."""
    rows = (
        [f"{cell:.10g}" if isinstance(cell, float) else cell for cell in row]
        for row in harvest_rows(season)
    )
    return csv_bytes(COLUMNS, rows)


def harvest_rows(season: Season) -> list[tuple[str | float, ...]]:
    """A row for each week and crop of which something is wanted or expected."""
    rows = [row for outlook in season.outlooks for row in _rows(outlook)]
    rows.sort(key=lambda row: row[0])
    return [(str(week), *cells) for week, cells in rows]


def _rows(outlook: CropOutlook) -> Iterator[tuple[Week, tuple[str | float, ...]]]:
    reasons = {one.week: f"{one.reason.kind}: {one.reason.why}" for one in outlook.unmet}
    for week, *amounts in outlook.weeks:
        numbers = (recorded(float(amount)) for amount in amounts)
        unit = outlook.crop.unit.name
        yield week, (outlook.crop.name, *numbers, unit, reasons.get(week, ""))
