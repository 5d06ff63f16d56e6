"""Weather files that name their columns in a first line.

The export of daily summaries names them DATE, TMIN, TMAX and PRCP (rain), with TMIN_ATTRIBUTES and
the like beside them on request; it is in degF and inches, or degC and millimetres, as its reader
chose, and does not say which. A grower's own table names them date, low, high, rain, or says the
unit: low_degf, high_degc, rain_in.

Source: documentation of the GHCN-Daily export (US National Centers for Environmental
Information): missing values are blank or written in nines; the second of an attribute's four
parts is the quality flag, and a value with one failed a check.
"""

import csv
import math
import re
from dataclasses import dataclass
from functools import lru_cache

from planner.reading.weather_days import DayColumn, WeatherDays, days_in, ordinal_of
from planner.reading.weather_lines import WeatherLines
from planner.terms import UNITS

_UNIT_OF_LOW = {"tmin": "", "low": "", "low_degf": "degF", "low_degc": "degC"}
_UNIT_OF_HIGH = {"tmax": "", "high": "", "high_degf": "degF", "high_degc": "degC"}
_UNIT_OF_RAIN = {"prcp": "", "rain": "", "rain_in": "in", "rain_mm": "mm"}
_RAIN_BESIDE = {"degF": "in", "degC": "mm"}
_NUMBER = re.compile(r"[+-]?(?:\d+(?:\.\d*)?|\.\d+)", re.ASCII)
_NINES = re.compile(r"-?9{3,}(?:\.[09]+)?", re.ASCII)
_NO_VALUE = {"", "na", "nan", "m"}  # what spreadsheets and weather observers write for "missing"


@dataclass(frozen=True, slots=True)
class ValueColumn:
    """Where a low or high stands, where its attributes stand, and the unit its name states.

    `attributes` is beyond the last column when there are none; `unit` is empty when not stated.
    """

    at: int
    attributes: int
    unit: str


@dataclass(frozen=True, slots=True)
class TableHead:
    """The first line of a table: its number, and the places of the columns that count.

    The column of rain is beyond the last one when there is none.
    """

    number: int
    width: int
    date: int
    low: ValueColumn
    high: ValueColumn
    rain: ValueColumn
    station: int


def head_of(number: int, line: str) -> TableHead | None:
    """The columns a first line names; None unless it has one date, one low and one high."""
    names = [cell.strip().casefold() for cell in _cells(line) or ()]
    low, high = _value_column(names, _UNIT_OF_LOW), _value_column(names, _UNIT_OF_HIGH)
    if low is None or high is None or names.count("date") != 1:
        return None
    rain = _value_column(names, _UNIT_OF_RAIN) or ValueColumn(len(names), len(names), "")
    station = names.index("station") if "station" in names else len(names)
    return TableHead(number, len(names), names.index("date"), low, high, rain, station)


def _value_column(names: list[str], unit_of: dict[str, str]) -> ValueColumn | None:
    found = [name for name in names if name in unit_of]
    if len(found) != 1:
        return None
    beside = f"{found[0]}_attributes"
    attributes = names.index(beside) if beside in names else len(names)
    return ValueColumn(names.index(found[0]), attributes, unit_of[found[0]])


def read_table(lines: WeatherLines, head: TableHead, unit: str) -> WeatherDays:
    """The days of a table: a line a day, in any order. `unit` is that of columns without one."""
    low = head.low.unit or unit
    rain = head.rain.unit or _RAIN_BESIDE[low]
    days = days_in(UNITS[low], UNITS[head.high.unit or unit], UNITS[rain])
    for number, line in lines.numbered(after=head.number):
        cells = _cells(line)
        if cells is None or not _fits(cells, head):
            _refuse(lines, number, f"It does not have the {head.width} cells of the first line.")
        elif any(cell.strip() for cell in cells):
            _read_day(lines, number, cells, head, days)
    return days


def _read_day(
    lines: WeatherLines, number: int, cells: list[str], head: TableHead, days: WeatherDays
) -> None:
    written = cells[head.date].strip()
    ordinal = ordinal_of(written)
    if ordinal is None:
        _refuse(lines, number, f'"{written}" is no date this record can have.')
        return
    if head.station < head.width and cells[head.station].strip():
        days.stations[cells[head.station].strip()] = None
    columns = [(days.low, head.low), (days.high, head.high)]
    if head.rain.at < head.width:
        columns.append((days.rain, head.rain))
    for column, where in columns:
        _read_value(lines, number, column, ordinal, _value_cells(cells, where))


def _cells(line: str) -> list[str] | None:
    """The cells of one line; None when a quotation mark is not closed on it."""
    if '"' not in line:
        return line.split(",")
    try:
        return next(csv.reader([line], strict=True, skipinitialspace=True))
    except csv.Error:
        return None


def _fits(cells: list[str], head: TableHead) -> bool:
    """As many cells as names; a spreadsheet may leave empty ones behind them, or empty lines."""
    spare = cells[head.width :] if len(cells) >= head.width else cells
    return not any(cell.strip() for cell in spare)


def _value_cells(cells: list[str], where: ValueColumn) -> tuple[str, str]:
    attributes = cells[where.attributes] if where.attributes < len(cells) else ""
    return cells[where.at].strip(), attributes


def _read_value(
    lines: WeatherLines, number: int, column: DayColumn, ordinal: int, cells: tuple[str, str]
) -> None:
    written, attributes = cells
    value = _value(written)
    if value is None:
        _refuse(lines, number, f'Its {column.word} "{written}" is no number.')
    elif math.isnan(value):
        return
    elif _failed_a_check(attributes):
        column.flagged += 1
    else:
        column.put(ordinal, value, lines, number)


def _failed_a_check(attributes: str) -> bool:
    parts = attributes.split(",")
    return len(parts) > 1 and bool(parts[1].strip())


def _refuse(lines: WeatherLines, number: int, wrong: str) -> None:
    lines.refuse(
        number,
        wrong,
        "write the date as 2027-05-01, numbers with a point, cells between commas.",
    )


@lru_cache(maxsize=4096)
def _value(written: str) -> float | None:
    """A number in the column's unit, `math.nan` for a missing one, None for anything else."""
    if written.casefold() in _NO_VALUE or _NINES.fullmatch(written):
        return math.nan
    return float(written) if _NUMBER.fullmatch(written) else None
