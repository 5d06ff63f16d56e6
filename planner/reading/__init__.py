"""Reading: the grower's text becomes nouns, or problems.

Takes the bytes of garden.toml, crops.toml and a weather file that garden.toml names, and those of
journal.csv. Gives a complete Garden with the almanac merged in and every source marked, and a
Journal, or all problems of all files at once. It opens no file itself.
"""

from planner.reading.garden_file import read_garden
from planner.reading.journal_file import (
    NotedEntry,
    read_journal,
    read_new_entry,
    read_sound_entries,
)
from planner.reading.journal_shape import LARGEST_JOURNAL_BYTES
from planner.reading.named_sowings import NamedSowings, PlannedSowing, named_sowings
from planner.reading.near_miss import nearest_word
from planner.reading.plan_files import LARGEST_FILE_BYTES, PlanFile, PlanFiles
from planner.reading.portions import read_portions
from planner.reading.weather_file import WEATHER_UNITS, read_weather
from planner.reading.weather_lines import LARGEST_WEATHER_BYTES

__all__ = [
    "LARGEST_FILE_BYTES",
    "LARGEST_JOURNAL_BYTES",
    "LARGEST_WEATHER_BYTES",
    "WEATHER_UNITS",
    "NamedSowings",
    "NotedEntry",
    "PlanFile",
    "PlanFiles",
    "PlannedSowing",
    "named_sowings",
    "nearest_word",
    "read_garden",
    "read_journal",
    "read_new_entry",
    "read_portions",
    "read_sound_entries",
    "read_weather",
]
