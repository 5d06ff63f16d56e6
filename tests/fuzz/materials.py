"""What is harmed: the sample plans, weather of every shape, a journal, and a season made before."""

import ast
import math
import re
import shutil
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from functools import cache
from pathlib import Path

from tests.plans import GARDEN
from tests.season_runs import SMALL_PLAN, want

REPOSITORY = Path(__file__).resolve().parents[2]
_READING = REPOSITORY / "planner" / "reading"
_TABLES = REPOSITORY / "planner" / "almanac" / "data"
CROPS = (REPOSITORY / "sample_plans" / "stony_ridge" / "crops.toml").read_text("utf-8")
OWN_CROP = """\
[crop.oca]
like = "potato"
label = "Oca"
spacing = "12 in"
hold_days = "20-30 days"
yield = "1 lb"
sun = "part"
"""
KEPT = """
[[kept]]
bed = "Gate bed"
what = "rhubarb"
from = "0 ft"
to = "2 ft"
since = 2027-03-01
until = 2027-08-31
"""
MEANS = """\
mean_high = ["8 degC", "10 degC", "13 degC", "16 degC", "20 degC", "23 degC", "27 degC", "27 degC",
             "24 degC", "17 degC", "11 degC", "7 degC"]
mean_low = ["1 degC", "2 degC", "3 degC", "5 degC", "8 degC", "11 degC", "13 degC", "13 degC",
            "11 degC", "7 degC", "4 degC", "1 degC"]
"""
# What bed work is counted with.
WORK_PLAN = (
    GARDEN.replace('sun = "full"', 'sun = "full"\nflow = "3 gal in 15 min"\ntimer = "front"', 1)
    .replace('sun = "part"', 'sun = "part"\ntimer = "front"\nnew = true', 1)
    .replace("latitude", f"{MEANS}latitude", 1)
    + """
[soil]
mix = { topsoil = 2, compost = 1 }
bag = "1.5 cu ft"
bag_price = 4.5
bulk = "1 cu yd"
settling = "2 in"
top_dress = "0.5 in"
compost_a_year = "1 in"

[water]
efficiency = 0.9
rain_used = 0.5
runs_each_week = 3
longest_run_minutes = 60
rain = ["5 in", "4 in", "4 in", "3 in", "2 in", "1 in", "1 in", "1 in", "2 in", "3 in", "6 in",
        "6 in"]

[seed]
confidence = 0.9
kept = 0.8
lead_weeks = 3
tray_cells = 50

[[packet]]
crop = "radish"
germination = 0.8
keeps_years = 4
seeds = 200
packed = 2025
left = 150

[[manure]]
bed = "Gate bed"
on = 2026-11-01
"""
)
# What stands in crops.toml, in a plan for it.
OWN_PLAN = GARDEN + want("ridge radish", "5 roots", "2027-05-01", "2027-07-31")
WEATHER_PLAN = """\
plan = 1

[site]
name = "Millrace garden"
latitude = 45.5
weather = "weather.csv"
weather_unit = "degC"

[season]
from = 2027-03-01
to = 2027-11-30

[[bed]]
name = "Long bed"
length = "8 ft"
width = "4 ft"
soil_depth = "15 in"
sun = "full"

[[target]]
crop = "radish"
each_week = "5 roots"
from = 2027-05-01
to = 2027-08-31

[[target]]
crop = "bush bean"
each_week = "0.5 lb"
from = 2027-07-15
to = 2027-08-31
"""


def _first_parts(text: str, beds: int, targets: int) -> str:
    """A plan with some of its beds and targets only, so that its season is soon made."""
    parts = re.split(r"\n(?=\[)", text)
    left = {"[[bed]]": beds, "[[target]]": targets}
    kept = []
    for part in parts:
        heading = part.split("\n", 1)[0].strip()
        left[heading] = left.get(heading, 1) - 1
        if left[heading] >= 0:
            kept.append(part)
    return "\n".join(kept)


@cache
def gardens() -> tuple[str, ...]:
    """Plans to harm: the sample plans cut short, and those of the tests."""
    samples = sorted((REPOSITORY / "sample_plans").glob("*/garden.toml"))
    whole = [path.read_text("utf-8") for path in samples if "ridge" not in str(path)]
    means = GARDEN.replace("latitude", f"{MEANS}latitude", 1)
    return (
        GARDEN,
        GARDEN + KEPT,
        means,
        WORK_PLAN,
        WORK_PLAN,
        SMALL_PLAN,
        OWN_PLAN,
        *(_first_parts(one, beds=3, targets=3) for one in whole),
    )


@cache
def words_of_reading() -> tuple[str, ...]:
    """Every short word that the reading room knows: keys, choices, and what is near them."""
    found = {
        node.value
        for path in sorted(_READING.glob("*.py"))
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }
    words = {one for one in found if re.fullmatch(r"[a-z][a-z_]{1,40}", one)}
    return tuple(sorted(words | set(_figures())))


def _figures() -> Iterator[str]:
    """Words of crops.toml, as the almanac's table of figures has them."""
    for line in (_TABLES / "crops.csv").read_text("utf-8").splitlines()[1:]:
        yield line.split(",")[1]


# Weather.


def _days(years: int) -> Iterator[tuple[date, float, float]]:
    """Invented daily lows and highs in degC: a yearly wave, and days that differ."""
    day = date(2026 - years, 1, 1)
    while day.year < 2026:
        turn = math.cos((day.timetuple().tm_yday - 200) * 2 * math.pi / 365)
        uneven = 4 * math.sin(day.toordinal() * 1.7) + 2 * math.sin(day.toordinal() * 0.31)
        mean = 11 + 10 * turn + uneven
        yield day, round(mean - 5.3, 1), round(mean + 5.6, 1)
        day += timedelta(days=1)


def _own_table(years: int) -> str:
    return "date,low,high\n" + "".join(f"{day},{low},{high}\n" for day, low, high in _days(years))


def _summaries(years: int) -> str:
    head = '"STATION","NAME","DATE","TMAX","TMIN"\n'
    return head + "".join(
        f'"XX000000001","MILLRACE","{day}","{high}","{low}"\n' for day, low, high in _days(years)
    )


def _day_lines(years: int) -> str:
    """GHCN-Daily as a comma file: station, day, element, tenths of degC, flags, hour."""
    return "".join(
        f"XX000000001,{day:%Y%m%d},{element},{round(value * 10)},,,E,\n"
        for day, low, high in _days(years)
        for element, value in (("TMAX", high), ("TMIN", low))
    )


def _month_lines(years: int) -> str:
    """GHCN-Daily in fixed columns: station, year and month, element, then 31 values."""
    months: dict[tuple[int, int, str], dict[int, int]] = {}
    for day, low, high in _days(years):
        for element, value in (("TMAX", high), ("TMIN", low)):
            months.setdefault((day.year, day.month, element), {})[day.day] = round(value * 10)
    lines = []
    for (year, month, element), values in months.items():
        cells = "".join(f"{values.get(day, -9999):5d}  E" for day in range(1, 32))
        lines.append(f"XX000000001{year}{month:02d}{element}{cells}\n")
    return "".join(lines)


@cache
def weather_files() -> tuple[bytes, ...]:
    """A record of each shape that is read: two years, so that a season is soon made."""
    makers = (_own_table, _summaries, _day_lines, _month_lines)
    return tuple(one(2).encode() for one in makers)


# What was there before.

JOURNAL = """\
date,event,sowing,amount,note
2027-04-21,sown,radish 1,,in the rain
2027-05-05,sown,radish 2,,
2027-05-20,lost,radish 2,6 plants,slugs
2027-05-28,picked,radish 1,12 roots,"good, crisp"
2027-06-02,late,radish 3,10 days,
2027-06-03,undone,radish 3,,
"""


def write_case(folder: Path, files: Mapping[str, bytes]) -> Path:
    """A plan folder with these files, in place of one there was."""
    shutil.rmtree(folder, ignore_errors=True)
    for name, content in files.items():
        path = folder / name
        if any(other.startswith(f"{name}/") for other in files):
            continue
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return folder
