"""The daily record a plan names: its file, and the unit it counts in."""

from planner.garden import DailyWeather, NoWeather
from planner.reading.plan_files import PlanFiles
from planner.reading.toml_table import TomlTable
from planner.reading.weather_file import WEATHER_UNITS, read_weather
from planner.terms import Problem


def read_weather_named(
    table: TomlTable, files: PlanFiles, problems: list[Problem]
) -> DailyWeather | NoWeather:
    """The record named in the site's `weather`; problems with it are added."""
    unit = table.choice("weather_unit", WEATHER_UNITS) if "weather_unit" in table else None
    name = table.text("weather") if "weather" in table else None
    if name is None or ("weather_unit" in table and unit is None):
        return NoWeather()
    if "/" in name or "\\" in name:
        table.report(
            "file-missing",
            "weather",
            "The weather file lies beside garden.toml, in the same folder.",
            "put it there and write its name only.",
        )
        return NoWeather()
    file = files.beside(name)
    read = (file,) if isinstance(file, Problem) else read_weather(file, unit)
    if isinstance(read, DailyWeather):
        return read
    problems.extend(read)
    return NoWeather()
