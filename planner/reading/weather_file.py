"""Weather files: daily lows and highs of one station, recognised by what is in them.

Four shapes are known: GHCN-Daily in fixed columns (.dly), GHCN-Daily as a comma file, the export
of daily summaries, and a grower's own table with the columns date, low, high.
"""

from planner.garden import DailyWeather
from planner.reading.plan_files import PlanFile
from planner.reading.weather_belief import believe
from planner.reading.weather_days import WeatherDays
from planner.reading.weather_ghcn import is_day_line, is_month_line, read_day_lines, read_months
from planner.reading.weather_lines import WeatherLines, lines_of
from planner.reading.weather_table import TableHead, head_of, read_table
from planner.terms import Place, Problem

WEATHER_UNITS = ("degF", "degC")

_LINES_LOOKED_AT = 5
_MOST_STATIONS_NAMED = 5
_STATE_UNIT = 'state weather_unit = "degF" or weather_unit = "degC".'


def read_weather(file: PlanFile, unit: str | None) -> DailyWeather | tuple[Problem, ...]:
    """The record in a file, or every problem that keeps it from being used.

    `unit` is what the grower states of a file that does not say it: "degF", "degC", or None.
    """
    lines = lines_of(file)
    if isinstance(lines, Problem):
        return (lines,)
    if unit is not None and unit not in WEATHER_UNITS:
        wrong = f'"{unit}" is no unit of daily temperatures here.'
        return (Problem("weather-unit", Place(file.name), wrong, _STATE_UNIT),)
    days = _read_days(lines, unit)
    if isinstance(days, Problem):
        return (days,)
    if len(days.stations) > 1:
        return (_several_stations(days, file.name),)
    if lines.problems:
        return lines.all_problems
    record = believe(days, Place(file.name))
    return (record,) if isinstance(record, Problem) else record


def _read_days(lines: WeatherLines, unit: str | None) -> WeatherDays | Problem:
    first_lines = [line for line, _ in zip(lines.numbered(), range(_LINES_LOOKED_AT), strict=False)]
    if not first_lines:
        return Problem(
            "weather-shape", Place(lines.file), "It is empty.", "take a file with daily values."
        )
    head = head_of(*first_lines[0])
    if head is not None:
        return read_table(lines, head, _unit_of_table(lines, head, unit))
    if any(is_month_line(line) for _, line in first_lines):
        _refuse_degf(lines, unit)
        return read_months(lines)
    if any(is_day_line(line) for _, line in first_lines):
        _refuse_degf(lines, unit)
        return read_day_lines(lines)
    return Problem(
        "weather-shape",
        lines.place(first_lines[0][0]),
        "It is no file of GHCN-Daily, and its first line does not name one column date, one of "
        "lows (low or TMIN) and one of highs (high or TMAX), with commas between them.",
        "get the station's daily values as a GHCN-Daily file or as a table with DATE, TMIN and "
        "TMAX, or write date,low,high as the first line of your own.",
    )


def _unit_of_table(lines: WeatherLines, head: TableHead, unit: str | None) -> str:
    """The unit of columns that state none; degrees C, and a problem, when nobody states it."""
    named = {head.low.unit, head.high.unit}
    if unit is None and "" in named:
        _refuse_unit(
            lines, head.number, "Nothing says whether its temperatures are in degF or degC."
        )
    if unit is not None and named - {"", unit}:
        _refuse_unit(
            lines, head.number, f'Its columns say another unit than weather_unit = "{unit}".'
        )
    return unit or WEATHER_UNITS[1]


def _refuse_degf(lines: WeatherLines, unit: str | None) -> None:
    if unit == "degF":
        wrong = "A file of this shape is in tenths of degC, not in degF as weather_unit says."
        lines.problems.append(
            Problem("weather-unit", Place(lines.file), wrong, "take weather_unit out.")
        )


def _refuse_unit(lines: WeatherLines, number: int, wrong: str) -> None:
    lines.problems.append(Problem("weather-unit", lines.place(number), wrong, _STATE_UNIT))


def _several_stations(days: WeatherDays, file: str) -> Problem:
    names = list(days.stations)
    more = len(names) - _MOST_STATIONS_NAMED
    named = ", ".join(names[:_MOST_STATIONS_NAMED]) + (f" and {more} more" if more > 0 else "")
    return Problem(
        "weather-shape",
        Place(file),
        f"It holds {len(names)} stations: {named}.",
        "keep the lines of one station.",
    )
