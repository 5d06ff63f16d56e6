"""The daily record a plan names: its file, and the unit it counts in."""

from planner.garden import DailyWeather, NoWeather
from planner.reading.plan_files import PlanFiles
from planner.reading.toml_table import TomlTable
from planner.reading.weather_file import WEATHER_UNITS, read_weather
from planner.reading.weather_seasons import sides_untold
from planner.terms import Problem

# Freeze dates stated in any of these ways rule over the record.
_OTHER_FREEZES = ("station", "last_spring_freeze", "first_fall_freeze")


def read_weather_named(
    table: TomlTable, latitude: float | None, files: PlanFiles, problems: list[Problem]
) -> DailyWeather | NoWeather:
    """The record named in the site's `weather`; problems with it are added."""
    unit = table.choice("weather_unit", WEATHER_UNITS) if "weather_unit" in table else None
    name = table.text("weather") if "weather" in table else None
    _refuse_lone_unit(table)
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
        _refuse_untold_freezes(table, read, latitude)
        return read
    problems.extend(read)
    return NoWeather()


def _refuse_lone_unit(table: TomlTable) -> None:
    if "weather_unit" in table and "weather" not in table:
        table.report(
            "unknown-key",
            "weather_unit",
            '"weather_unit" stands alone: no "weather" names a file.',
            'add a line: weather = "weather.csv" with the name of the file, or take this out.',
        )


def _refuse_untold_freezes(table: TomlTable, weather: DailyWeather, latitude: float | None) -> None:
    """A problem where freezes are to be read off a record that does not tell both of them."""
    if latitude is None or any(key in table for key in _OTHER_FREEZES):
        return
    untold = sides_untold(weather, latitude)
    if untold:
        table.report(
            "weather-too-little",
            "weather",
            f"No year of the record tells {' and '.join(untold)}: in each more than ten lows are "
            "missing, or it ends before the first freeze of a mild winter.",
            'state last_spring_freeze = "04-15" and first_fall_freeze = "10-20" (half of all '
            "years) by hand, or get a longer record.",
        )
