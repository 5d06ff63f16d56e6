"""Weather files of GHCN-Daily, the daily record of the world's stations, in its two shapes.

Both hold lows (TMIN) and highs (TMAX) in tenths of degrees C, rain (PRCP) in tenths of millimetres,
and a quality flag that is blank when a value passed every check.

Source: readme of GHCN-Daily version 3 (US National Centers for Environmental Information),
part III, for the fixed columns; the description of its copy by year for the comma file.
"""

import re
from calendar import monthrange
from functools import lru_cache

from planner.reading.weather_days import DEGC, DayColumn, WeatherDays, days_in, ordinal_of
from planner.reading.weather_lines import WeatherLines

_STATION = r"[A-Z]{2}[A-Z0-9_-]{9}"
_MONTH = re.compile(rf"({_STATION})(\d{{4}})(0[1-9]|1[0-2])([A-Z0-9]{{4}})", re.ASCII)
_DAY = re.compile(rf"{_STATION},\d{{8}},[A-Z0-9]{{4}},", re.ASCII)
# The comma file has a first line with names in some copies (from memory).
_NAMES = re.compile(r"ID,DATE,ELEMENT,", re.ASCII)
_TENTHS = re.compile(r" *-?\d{1,4}", re.ASCII)

_MISSING = "-9999"
_FIRST_VALUE, _VALUE_WIDTH, _DAY_WIDTH, _QUALITY_FLAG, _DAYS = 21, 5, 8, 6, 31
_LINE_WIDTH = _FIRST_VALUE + _DAY_WIDTH * _DAYS
_FEWEST_CELLS, _MOST_CELLS = 7, 8  # the time of observation at the end may be left off


def is_month_line(line: str) -> bool:
    """Whether a line begins like one month of one element in fixed columns (.dly)."""
    return _MONTH.match(line) is not None


def is_day_line(line: str) -> bool:
    """Whether a line begins like one day of one element in a comma file."""
    return _DAY.match(line) is not None or _NAMES.match(line) is not None


def read_months(lines: WeatherLines) -> WeatherDays:
    """The days of a file in fixed columns: a line for each station, month and element."""
    days = days_in(DEGC, DEGC)
    columns = {"TMIN": days.low, "TMAX": days.high, "PRCP": days.rain}
    for number, line in lines.numbered():
        month = _MONTH.match(line)
        first = ordinal_of(f"{month[2]}{month[3]}01") if month else None
        if month is None or first is None:
            _refuse_month(lines, number, "It does not begin with station, year, month, element.")
            continue
        days.stations[month[1]] = None
        column = columns.get(month[4])
        if column is not None:
            length = monthrange(int(month[2]), int(month[3]))[1]
            _read_month(lines, number, column, range(first, first + length))
    return days


def _read_month(lines: WeatherLines, number: int, column: DayColumn, month: range) -> None:
    line = lines.text[number - 1].ljust(_LINE_WIDTH)
    for day in range(_DAYS):
        at = _FIRST_VALUE + _DAY_WIDTH * day
        written = line[at : at + _VALUE_WIDTH]
        if written == _MISSING:
            continue
        value = _whole_tenths(written)
        if day >= len(month):
            if written.strip():
                _refuse_month(lines, number, f"The month has no day {day + 1}, yet it has a value.")
        elif value is None:
            _refuse_month(lines, number, f'Its value of day {day + 1} is "{written.strip()}".')
        elif line[at + _QUALITY_FLAG] != " ":
            column.flagged += 1
        else:
            column.put(month[day], value, lines, number)


def _refuse_month(lines: WeatherLines, number: int, wrong: str) -> None:
    lines.refuse(
        number,
        wrong,
        "get the file anew, and keep its columns as they are: no tabs, no blanks taken out.",
    )


def read_day_lines(lines: WeatherLines) -> WeatherDays:
    """The days of a comma file: a line for each station, day and element."""
    days = days_in(DEGC, DEGC)
    columns = {"TMIN": days.low, "TMAX": days.high, "PRCP": days.rain}
    for number, line in lines.numbered():
        if _NAMES.match(line):
            continue
        cells = line.split(",")
        ordinal = ordinal_of(cells[1]) if _FEWEST_CELLS <= len(cells) <= _MOST_CELLS else None
        if ordinal is None:
            _refuse_day(lines, number, "It is not station,date,element,value and three flags.")
            continue
        days.stations[cells[0]] = None
        column = columns.get(cells[2])
        if column is not None and cells[3] != _MISSING:
            _read_day(lines, number, column, ordinal, cells)
    return days


def _read_day(
    lines: WeatherLines, number: int, column: DayColumn, ordinal: int, cells: list[str]
) -> None:
    value = _whole_tenths(cells[3])
    if value is None:
        _refuse_day(lines, number, f'Its value "{cells[3]}" is no whole number of tenths.')
    elif cells[5].strip():
        column.flagged += 1
    else:
        column.put(ordinal, value, lines, number)


def _refuse_day(lines: WeatherLines, number: int, wrong: str) -> None:
    lines.refuse(number, wrong, "get the file anew, or take this line out.")


@lru_cache(maxsize=4096)
def _whole_tenths(written: str) -> float | None:
    """A value written in tenths of its unit; None when it is no whole number."""
    return int(written) / 10 if _TENTHS.fullmatch(written) else None
