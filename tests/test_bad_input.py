"""Whatever a plan folder holds: all faults told at once, and no season lost or half written."""

import csv
import itertools
import json
import os
import resource
import shutil
import signal
import subprocess
import time
from pathlib import Path
from typing import Any

import pytest

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from tests.plans import (
    AS_OF,
    GARDEN,
    PROGRAM,
    QUICK,
    SEASON_FILES,
    contents,
    garden_toml,
    planner,
    write_plan,
)

Told = tuple[str, int, str]

# More killed runs by hand: KILLS=200.
KILLS = int(os.environ.get("KILLS", "24"))
FAULTY_GARDEN = """\
plan = 1

[site]
name = "Quince Yard"
latitude = true
last_spring_freeze = "02-30"
first_fall_freeze = "11-09"

[season]
from = 2027-02-01
to = 2027-12-31
freeze_risc = 0.1
garden_days = ["Wed", "Sonday"]

[[bed]]
name = "Gate bed"
length = "8 lb"
width = "4"
sun = "sunny"

[[bed]]
name = "gate  bed"
length = "6 ft"
width = "3 ft"
soil_depth = "12 in"
sun = "part"

[[target]]
crop = "raddish"
each_week = "12 roots"

[[target]]
crop = "spinach"
each_week = "900000 oz"

[[target]]
crop = "carrot"
each_week = "12 roots"
from = 2027-06-01
to = 2028-01-31

[[target]]
crop = "beet"
each_week = "2 lb"
"""

FAULTY_CROPS = """\
[crop.beet]
spacing = "3 inn"
hardiness = "hard"

[crop.oca]
like = "potatto"
days_to_emerge = "3 in"
labl = "Oca"
"""


def told_of(garden: str, crops: str | None = None) -> list[Told]:
    """File, line and kind of every problem in a plan, in the order told."""
    own = PlanFile("crops.toml", crops.encode()) if crops is not None else None
    read = read_garden(PlanFiles(PlanFile("garden.toml", garden.encode()), own))
    if isinstance(read, Garden):
        return []
    return [(one.place.file, one.place.line, one.kind) for one in read]


def assert_refused(result: subprocess.CompletedProcess[str], title: str) -> None:
    """The run told one problem of this title, in words and on a screen's worth of room."""
    assert "Traceback" not in result.stderr
    assert result.returncode == 2
    assert result.stdout == ""
    assert result.stderr.splitlines()[0].endswith(f": {title}")
    assert result.stderr.count("What to do: ") == 1
    assert len(result.stderr) < 2_000
    assert all(letter.isprintable() or letter == "\n" for letter in result.stderr)


# Many faults


def test_all_faults_of_all_files_are_told_in_one_run_in_the_order_of_their_lines(
    tmp_path: Path,
) -> None:
    plan = write_plan(tmp_path / "plan", FAULTY_GARDEN, FAULTY_CROPS)
    result = planner("check", plan, "--json")
    assert result.returncode == 2
    assert [(one["file"], one["line"], one["kind"]) for one in json.loads(result.stdout)] == [
        ("crops.toml", 2, "bad-quantity"),
        ("crops.toml", 3, "not-a-choice"),
        ("crops.toml", 6, "unknown-crop"),
        ("crops.toml", 7, "wrong-unit"),
        ("crops.toml", 8, "unknown-key"),
        ("garden.toml", 5, "wrong-type"),
        ("garden.toml", 6, "bad-month-day"),
        ("garden.toml", 12, "unknown-key"),
        ("garden.toml", 13, "not-a-choice"),
        ("garden.toml", 15, "missing-key"),
        ("garden.toml", 17, "wrong-unit"),
        ("garden.toml", 18, "bad-quantity"),
        ("garden.toml", 19, "not-a-choice"),
        ("garden.toml", 22, "name-taken"),
        ("garden.toml", 29, "unknown-crop"),
        ("garden.toml", 34, "out-of-range"),
        ("garden.toml", 40, "target-outside-season"),
        ("garden.toml", 44, "wrong-unit"),
    ]


def test_check_tells_on_the_screen_how_many_problems_there_are(tmp_path: Path) -> None:
    result = planner("check", write_plan(tmp_path / "plan", FAULTY_GARDEN, FAULTY_CROPS))
    assert result.returncode == 2
    assert result.stderr.endswith("\n18 problems in all.\n")
    assert result.stderr.count("What to do: ") == 18


def test_the_same_faults_are_told_in_the_same_words_on_every_run(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", "")
    runs = [planner("check", plan, environment=[("PYTHONHASHSEED", seed)]) for seed in "1234"]
    assert len({run.stderr for run in runs}) == 1


def test_faults_of_one_line_are_told_in_the_order_they_stand() -> None:
    garden = garden_toml(("to = 2027-12-31", 'to = 2027-12-31\ngarden_days = ["Wod", "Sonday"]'))
    read = read_garden(PlanFiles(PlanFile("garden.toml", garden.encode())))
    assert isinstance(read, tuple)
    assert [one.wrong.split()[0] for one in read] == ['"Wod"', '"Sonday"']


@pytest.mark.parametrize(
    ("garden", "crops", "told"),
    [
        pytest.param(
            garden_toml(('each_week = "12 roots"\n', "")),
            None,
            [("garden.toml", 27, "missing-key")],
            id="the dates of a target without an amount",
        ),
        pytest.param(
            garden_toml(("to = 2027-12-31", 'to = "2027-12-31"'), ("from = 2027-05-01\n", "")),
            None,
            [("garden.toml", 11, "wrong-type")],
            id="the end of a target in a faulty season",
        ),
        pytest.param(
            garden_toml(("8 ft", "8 fet"), ("radish", "tomato"), ("12 roots", "5 lb")),
            None,
            [("garden.toml", 15, "bad-quantity")],
            id="a crop for which a faulty bed was meant",
        ),
        pytest.param(
            garden_toml(("radish", "oca")),
            "[crop.oca\n",
            [("crops.toml", 1, "toml-syntax")],
            id="a crop that stands in an unreadable crops.toml",
        ),
        pytest.param(
            garden_toml(("radish", "oca")),
            '[crop.oca]\nlike = "raddish"\n',
            [("crops.toml", 2, "unknown-crop")],
            id="a crop like a misspelt one",
        ),
        pytest.param(
            garden_toml(("latitude", "mean_low = 4\nlatitude")),
            None,
            [("garden.toml", 5, "wrong-type")],
            id="a list that is none",
        ),
    ],
)
def test_one_fault_is_not_told_as_two(garden: str, crops: str | None, told: list[Told]) -> None:
    assert told_of(garden, crops) == told


def test_a_bed_is_read_to_its_end_when_its_name_is_taken() -> None:
    garden = garden_toml(("Wall bed", "Gate bed"), ('"part"', '"prt"'))
    assert told_of(garden) == [
        ("garden.toml", 21, "name-taken"),
        ("garden.toml", 25, "not-a-choice"),
    ]


@pytest.mark.parametrize(
    ("garden", "crops", "place"),
    [
        pytest.param(
            garden_toml(("latitude", f"mean_high = {['46 degF'] * 12}\nlatitude")),
            None,
            ("garden.toml", 5),
            id="highs without lows",
        ),
        pytest.param(
            garden_toml(("latitude", 'last_spring_freeze_one_in_ten = "02-14"\nlatitude')),
            None,
            ("garden.toml", 5),
            id="a rare last freeze before the usual one",
        ),
        pytest.param(
            GARDEN,
            '[crop.radish]\nspacing = "3 in"\n\n[crop.Radishes]\nspacing = "4 in"\n',
            ("crops.toml", 4),
            id="one crop told twice",
        ),
        pytest.param(
            GARDEN, '[crop.""]\nlike = "radish"\n', ("crops.toml", 1), id="a crop without a name"
        ),
    ],
)
def test_no_contradiction_is_passed_over_in_silence(
    garden: str, crops: str | None, place: tuple[str, int]
) -> None:
    assert [told[:2] for told in told_of(garden, crops)] == [place]


# Odd values


@pytest.mark.parametrize(
    ("size", "kind"),
    [
        ("-0", "bad-quantity"),
        ("nan", "bad-quantity"),
        ("nan ft", "bad-quantity"),
        ("1e308 ft", "bad-quantity"),
        ("8", "bad-quantity"),
        ("8 fet", "bad-quantity"),
        ("-0 ft", "out-of-range"),
        ("0 ft", "out-of-range"),
        ("-8 ft", "out-of-range"),
        ("0.0000001 ft", "out-of-range"),
        ("99999999999 ft", "out-of-range"),
        pytest.param(f"{'9' * 400} ft", "out-of-range", id="400 digits"),
    ],
)
@pytest.mark.parametrize("key", ["length", "diameter"])
def test_a_bed_of_no_possible_size_is_refused(key: str, size: str, kind: str) -> None:
    sides = 'length = "8 ft"\nwidth = "4 ft"' if key == "diameter" else 'length = "8 ft"'
    assert told_of(garden_toml((sides, f'{key} = "{size}"'))) == [("garden.toml", 15, kind)]


@pytest.mark.parametrize(
    ("latitude", "kind"),
    [
        ("true", "wrong-type"),
        ('"nan"', "wrong-type"),
        ("2027-01-01", "wrong-type"),
        ("nan", "out-of-range"),
        ("inf", "out-of-range"),
        ("1e308", "out-of-range"),
        ("1e400", "out-of-range"),
        pytest.param("9" * 400, "out-of-range", id="400 digits"),
        pytest.param("9" * 5000, "toml-syntax", id="5000 digits"),
    ],
)
def test_a_latitude_of_no_place_is_refused(latitude: str, kind: str) -> None:
    assert [one[2] for one in told_of(garden_toml(("47.6", latitude)))] == [kind]


def test_a_latitude_of_minus_zero_is_the_equator() -> None:
    assert told_of(garden_toml(("47.6", "-0"))) == []


@pytest.mark.parametrize("amount", ["-12 roots", "0 roots", "1e308 roots", "nan roots", "nan"])
def test_an_amount_nobody_can_pick_is_refused(amount: str) -> None:
    (told,) = told_of(garden_toml(("12 roots", amount)))
    assert told[:2] == ("garden.toml", 29)
    assert told[2] in {"bad-quantity", "out-of-range"}


@pytest.mark.parametrize("year", ["0001", "9999"])
def test_a_season_at_the_end_of_the_calendar_is_refused(year: str) -> None:
    told = told_of(GARDEN.replace("2027", year))
    assert told
    assert {kind for _, _, kind in told} == {"out-of-range"}


@pytest.mark.parametrize("day", ["0001-01-01", "9999-12-31"])
def test_a_year_out_of_reach_is_refused(day: str, scheduled: Path) -> None:
    before = contents(scheduled)
    assert_refused(planner("week", scheduled, "--of", day), "not a date")
    assert_refused(planner("schedule", scheduled, "--as-of", day), "not a date")
    assert contents(scheduled) == before


@pytest.mark.parametrize(
    ("statement", "kind"),
    [
        ('days_to_emerge = "9999999999 days"', "out-of-range"),
        ('days_from_sowing = "99999999 weeks"', "out-of-range"),
        ('hold_days = "999999999999 days"', "out-of-range"),
        ('habit = "pick"\npicking_days = "99999999 days"', "out-of-range"),
        ('habit = "store"\nstore_days = "999999999 days"', "out-of-range"),
        ('sowing_depth = "100 m"', "out-of-range"),
        ('spacing = "0.0000001 in"', "out-of-range"),
        ('yield = "2 ft"', "wrong-unit"),
        ('spacing = "-3 in"', "out-of-range"),
    ],
)
def test_a_figure_no_crop_has_is_refused_in_its_line(statement: str, kind: str) -> None:
    crops = f'[crop.oca]\nlike = "radish"\n{statement}\n'
    line = len(crops.splitlines())
    assert told_of(garden_toml(("radish", "oca")), crops) == [("crops.toml", line, kind)]


def test_a_crop_nearly_spelt_is_named(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", garden_toml(("radish", "raddish")))
    result = planner("check", plan)
    assert_refused(result, "unknown crop")
    assert result.stderr.startswith('garden.toml, line 28: unknown crop\n  28 | crop = "raddish"\n')
    assert '"radish"' in result.stderr


# Odd files


def test_a_garden_of_ten_megabytes_is_not_read(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", GARDEN + "# and so on\n" * 900_000)
    assert_refused(planner("check", plan), "file is too large")


def test_a_garden_in_latin_1_is_told_with_its_line(tmp_path: Path) -> None:
    latin_1 = garden_toml(("Gate bed", "Gänsebeet")).encode("latin-1")
    result = planner("check", write_plan(tmp_path / "plan", latin_1))
    assert_refused(result, "file cannot be read")
    assert result.stderr.startswith("garden.toml, line 14: ")
    assert "UTF-8" in result.stderr


def test_a_byte_order_mark_is_no_part_of_the_plan(tmp_path: Path) -> None:
    result = planner("check", write_plan(tmp_path / "plan", b"\xef\xbb\xbf" + GARDEN.encode()))
    assert (result.returncode, result.stderr) == (0, "")


def test_lines_that_end_as_on_windows_are_counted_right() -> None:
    garden = garden_toml(('"part"', '"prt"'))
    assert told_of(garden.replace("\n", "\r\n")) == told_of(garden)
    assert told_of(garden) == [("garden.toml", 25, "not-a-choice")]


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ('"Wall bed"', '"Wall bed', ("garden.toml", 21, "toml-syntax")),
        ("[season]", "[season", ("garden.toml", 9, "toml-syntax")),
        ("to = 2027-12-31", "to = 2027-02-30", ("garden.toml", 11, "toml-syntax")),
        ("sun =", "sun", ("garden.toml", 18, "toml-syntax")),
        ("plan = 1", "plan = 1\nplan = 1", ("garden.toml", 2, "toml-syntax")),
    ],
    ids=["a quote", "a bracket", "a day", "an equals sign", "one word twice"],
)
def test_a_slip_in_toml_is_told_in_its_line(was: str, now: str, told: Told) -> None:
    assert told_of(garden_toml((was, now))) == [told]


@pytest.mark.parametrize(
    ("was", "now", "told"),
    [
        ('length = "8 ft"', '"l\\u0065ngth" = "8 fx"', ("garden.toml", 15, "bad-quantity")),
        (
            '"Gate bed"\nlength = "8 ft"',
            '"""\nGate\nbed"""\nlength = "8 fx"',
            ("garden.toml", 17, "bad-quantity"),
        ),
        ("plan = 1", 'plan = 1\n"" = 3', ("garden.toml", 2, "unknown-key")),
        ("plan = 1", 'plan = 1\n"süß" = 3', ("garden.toml", 2, "unknown-key")),
        ("[season]", "[crops.radish]\n[season]", ("garden.toml", 9, "unknown-key")),
    ],
    ids=["escapes", "lines in a name", "no letters", "other letters", "a table in a table"],
)
def test_a_fault_is_told_in_its_line_however_it_is_written(was: str, now: str, told: Told) -> None:
    assert told_of(garden_toml((was, now))) == [told]


def test_the_line_shown_is_the_line_counted(tmp_path: Path) -> None:
    garden = garden_toml(("Quince Yard", "Quince\u2028Yard"), ('"part"', '"prt"'))
    result = planner("check", write_plan(tmp_path / "plan", garden))
    assert '  25 | sun = "prt"\n' in result.stderr


@pytest.mark.parametrize(
    ("garden", "title"),
    [
        pytest.param(b"[" * 100_000, "not valid TOML", id="brackets"),
        pytest.param(b"a = " + b"[" * 100_000, "not valid TOML", id="lists in lists"),
        pytest.param(b"a = " + b"{a = " * 20_000, "not valid TOML", id="tables in tables"),
        pytest.param(b"\0" * 10_000, "not valid TOML", id="NUL bytes"),
        pytest.param(GARDEN.encode("utf-16"), "file cannot be read", id="UTF-16"),
        pytest.param(b"\x1b[2J\x1b]0;x\x07" * 9, "not valid TOML", id="orders to the screen"),
        pytest.param(
            GARDEN.encode() + b"\n[" + b".".join([b"a"] * 2_000) + b"]\n",
            "unknown word",
            id="a heading of two thousand words",
        ),
        pytest.param(
            garden_toml(("plan = 1", f"plan = 1\nx = {'[' * 300}{']' * 300}")).encode(),
            "unknown word",
            id="lists in lists that end",
        ),
        pytest.param(
            garden_toml(("Gate bed", "Gate bed" * 50_000), ('"8 ft"', '"8 fx"')).encode(),
            "not a quantity",
            id="an endless name beside a fault",
        ),
        pytest.param(
            garden_toml(("8 ft", "8" * 400_000)).encode(), "not a quantity", id="an endless value"
        ),
    ],
)
def test_a_file_that_is_no_plan_is_refused_in_a_few_lines(
    garden: bytes, title: str, tmp_path: Path
) -> None:
    plan = write_plan(tmp_path / "plan", garden)
    assert_refused(planner("check", plan), title)
    assert contents(plan) == {"garden.toml": garden}


def test_a_garden_that_is_a_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "plan" / "garden.toml").mkdir(parents=True)
    assert_refused(planner("check", tmp_path / "plan"), "file cannot be read")


def test_a_garden_nobody_may_read_is_refused(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan")
    (plan / "garden.toml").chmod(0o000)
    assert_refused(planner("check", plan), "file cannot be read")


@pytest.mark.parametrize("command", ["check", "schedule"])
def test_a_plan_folder_that_does_not_exist_is_named(command: str, tmp_path: Path) -> None:
    result = planner(command, tmp_path / "nowhere")
    assert_refused(result, "file not found")
    assert f"There is no folder {tmp_path / 'nowhere'}." in result.stderr
    assert contents(tmp_path) == {}


@pytest.mark.parametrize("command", ["check", "schedule", "week", "why", "start"])
def test_a_folder_name_no_disk_can_hold_is_told(command: str, tmp_path: Path) -> None:
    more = ["radish 1"] if command == "why" else []
    result = planner(command, tmp_path / ("x" * 300), *more)
    assert "Traceback" not in result.stderr
    assert result.returncode == 2


@pytest.mark.parametrize("command", ["check", "schedule"])
def test_a_name_the_screen_cannot_show_stops_nothing(command: str, tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", garden_toml(("Quince Yard", "Küchengarten")))
    result = planner(command, plan, environment=[("PYTHONIOENCODING", "ascii")])
    assert (result.returncode, result.stderr) == (0, "")


# The season that stands


@pytest.fixture(scope="module")
def first_season(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small plan, scheduled once."""
    plan = write_plan(tmp_path_factory.mktemp("first") / "plan")
    assert planner("schedule", plan, *AS_OF).returncode == 0
    return plan


@pytest.fixture
def scheduled(first_season: Path, tmp_path: Path) -> Path:
    """A copy of the scheduled plan, to harm."""
    return Path(shutil.copytree(first_season, tmp_path / "scheduled"))


def record_in(plan: Path) -> dict[str, Any]:
    """The season's record."""
    record = json.loads((plan / "season" / "season.json").read_text("utf-8"))
    assert isinstance(record, dict)
    return record


def assert_whole(season: Path) -> None:
    """All files are there, complete, and of one run."""
    assert {path.name for path in season.iterdir() if path.is_file()} == SEASON_FILES
    listed = (season / "written.txt").read_text("utf-8").splitlines()
    assert all((season / name).is_file() for name in listed)
    tasks = record_in(season.parent)["tasks"]
    with (season / "sowing-sheet.csv").open(encoding="utf-8", newline="") as sheet:
        assert len(list(csv.DictReader(sheet))) == len(tasks)
    for name in ("calendar.ics", "calendar-update.ics"):
        assert (season / name).read_text("utf-8").rstrip().endswith("END:VCALENDAR")
    assert (season / "harvest.csv").read_text("utf-8").endswith("\n")


def test_a_season_that_is_a_plain_file_is_left_alone(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan")
    (plan / "season").write_text("my notes on the season\n", encoding="utf-8")
    before = contents(plan)
    result = planner("schedule", plan, *AS_OF)
    assert_refused(result, "folder cannot be written")
    assert "is in the way" in result.stderr
    assert contents(plan) == before


def test_files_the_program_did_not_write_stay_in_the_season(scheduled: Path) -> None:
    season = scheduled / "season"
    (season / "notes.txt").write_text("slugs on the Gate bed\n", encoding="utf-8")
    (season / "photos").mkdir()
    (season / "photos" / "may.jpg").write_bytes(b"\xff\xd8")
    (season / "latest").symlink_to("photos/may.jpg")
    assert planner("schedule", scheduled, "--as-of", "2027-06-15", *QUICK).returncode == 0
    assert (season / "notes.txt").read_text("utf-8") == "slugs on the Gate bed\n"
    assert (season / "photos" / "may.jpg").read_bytes() == b"\xff\xd8"
    assert (season / "latest").is_symlink()
    assert record_in(scheduled)["as_of"] == "2027-06-15"


@pytest.mark.parametrize("command", ["schedule", "week", "why"])
@pytest.mark.parametrize(
    "text",
    ["", "\0\0", "{}", "[]", '{"format": 2}', '{"format": 1, "sowings": 3, "tasks": "x"}'],
    ids=["nothing", "NUL bytes", "no words", "a list", "another format", "other shapes"],
)
def test_a_season_of_another_shape_is_refused_and_left_untouched(
    command: str, text: str, tmp_path: Path
) -> None:
    plan = write_plan(tmp_path / "plan")
    (plan / "season").mkdir()
    (plan / "season" / "season.json").write_text(text, encoding="utf-8")
    before = contents(plan)
    result = planner(command, plan, *(["radish 1"] if command == "why" else []))
    assert_refused(result, "the earlier season cannot be read")
    assert contents(plan) == before


@pytest.mark.parametrize("share", [0.1, 0.5, 0.99])
def test_a_damaged_season_is_left_untouched(share: float, scheduled: Path) -> None:
    file = scheduled / "season" / "season.json"
    os.truncate(file, int(file.stat().st_size * share))
    before = contents(scheduled)
    assert_refused(planner("schedule", scheduled, *AS_OF), "the earlier season cannot be read")
    assert contents(scheduled) == before


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("plants", 1e999),
        ("blocks", [{"bed": "Gate bed", "from_m": 0, "to_m": 1e999}]),
        ("harvest_days", []),
        ("unit", "furlong"),
        ("sow_on", "soon"),
        ("why", 5),
        ("id", "radish"),
        ("id", "radish x"),
        ("id", "radish 0"),
        ("id", "3"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_season_with_one_wrong_statement_is_left_untouched(
    key: str, value: object, scheduled: Path
) -> None:
    record = record_in(scheduled)
    record["sowings"][0][key] = value
    (scheduled / "season" / "season.json").write_text(json.dumps(record), encoding="utf-8")
    before = contents(scheduled)
    result = planner("schedule", scheduled, "--as-of", "2027-06-15", *QUICK)
    assert_refused(result, "the earlier season cannot be read")
    assert contents(scheduled) == before


def test_a_damaged_calendar_is_left_untouched(scheduled: Path) -> None:
    (scheduled / "season" / "calendar-update.ics").write_bytes(b"\xff\xfe\0BEGIN")
    before = contents(scheduled)
    assert_refused(planner("schedule", scheduled, *AS_OF), "the earlier season cannot be read")
    assert contents(scheduled) == before


def test_a_calendar_with_a_line_twice_is_left_untouched(scheduled: Path) -> None:
    calendar = scheduled / "season" / "calendar-update.ics"
    line = b"SEQUENCE:0\r\n"
    calendar.write_bytes(calendar.read_bytes().replace(line, line * 2, 1))
    before = contents(scheduled)
    assert_refused(planner("schedule", scheduled, *AS_OF), "the earlier season cannot be read")
    assert contents(scheduled) == before


@pytest.mark.parametrize(
    ("was", "now"),
    [
        pytest.param('"Wall bed"', '"Plum bed"', id="its bed"),
        pytest.param(
            '"leaf lettuce"\neach_week = "8 oz"', '"carrot"\neach_week = "5 roots"', id="its crop"
        ),
    ],
)
def test_a_sowing_begun_since_the_last_season_is_not_forgotten(
    was: str, now: str, scheduled: Path
) -> None:
    (scheduled / "garden.toml").write_text(garden_toml((was, now)), encoding="utf-8")
    before = contents(scheduled)
    result = planner("schedule", scheduled, "--as-of", "2027-06-15", *QUICK)
    assert_refused(result, "what grows does not fit the plan any more")
    assert contents(scheduled) == before


def test_a_season_nobody_may_open_is_told(scheduled: Path) -> None:
    season = scheduled / "season"
    season.chmod(0o000)
    result = planner("week", scheduled)
    season.chmod(0o755)
    assert_refused(result, "file cannot be read")


# Writing that fails


def test_a_folder_that_cannot_be_written_keeps_its_season(scheduled: Path) -> None:
    before = contents(scheduled)
    scheduled.chmod(0o555)
    result = planner("schedule", scheduled, "--as-of", "2027-06-15", *QUICK)
    scheduled.chmod(0o755)
    assert_refused(result, "folder cannot be written")
    assert "Nothing was changed." in result.stderr
    assert contents(scheduled) == before


@pytest.mark.parametrize("room_bytes", [0, 4_096, 40_000])
def test_a_disk_that_fills_up_midway_keeps_the_season(room_bytes: int, scheduled: Path) -> None:
    before = contents(scheduled)
    result = planner(
        "schedule",
        scheduled,
        "--as-of",
        "2027-06-15",
        bound=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (room_bytes, room_bytes)),
    )
    assert_refused(result, "folder cannot be written")
    assert "Nothing was changed." in result.stderr
    assert contents(scheduled) == before


def test_a_disk_that_fills_up_leaves_no_half_of_a_first_season(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan")
    limit = (40_000, 40_000)
    result = planner(
        "schedule", plan, *AS_OF, bound=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, limit)
    )
    assert_refused(result, "folder cannot be written")
    assert contents(plan) == {"garden.toml": GARDEN.encode()}


def begin_schedule(plan: Path, as_of: str) -> subprocess.Popen[bytes]:
    """A run of the program that goes on while the test does."""
    return subprocess.Popen(
        [*PROGRAM, "schedule", str(plan), "--as-of", as_of, *QUICK],
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1"},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )


def kill_after(run: subprocess.Popen[bytes], delay_s: float) -> int:
    """Kill a run, or find it ended already."""
    time.sleep(delay_s)
    run.kill()
    return run.wait()


def kill_while_writing(run: subprocess.Popen[bytes], plan: Path, delay_s: float) -> int:
    """Kill a run a moment after it has begun to write."""
    while run.poll() is None and not list(plan.glob("season.new*")):
        time.sleep(0.0001)
    return kill_after(run, delay_s)


def test_a_killed_run_leaves_a_whole_season(scheduled: Path) -> None:
    started = time.monotonic()
    begin_schedule(scheduled, "2027-01-16").wait()
    whole_run_s = time.monotonic() - started
    days = itertools.cycle(["2027-06-15", "2027-06-16"])
    ends = []
    half = KILLS // 2
    for turn in range(half):
        run = begin_schedule(scheduled, next(days))
        ends.append(kill_after(run, whole_run_s * turn / (half - 1)))
        assert_whole(scheduled / "season")
    for turn in range(half):
        clear_leavings(scheduled)
        run = begin_schedule(scheduled, next(days))
        ends.append(kill_while_writing(run, scheduled, 0.03 * (turn / half) ** 2))
        assert_whole(scheduled / "season")
    assert -signal.SIGKILL in ends


def test_a_killed_first_run_leaves_a_whole_season_or_none(tmp_path: Path) -> None:
    for turn in range(5):
        plan = write_plan(tmp_path / f"plan {turn}")
        kill_while_writing(begin_schedule(plan, "2027-01-15"), plan, 0.001 * turn**2)
        if (plan / "season").exists():
            assert_whole(plan / "season")


def clear_leavings(plan: Path) -> None:
    """Take away what killed runs left, so that the next one's beginning can be seen."""
    for path in plan.glob("season.new*"):
        shutil.rmtree(path)


def test_a_run_that_died_between_two_renamings_is_put_right(scheduled: Path) -> None:
    before = contents(scheduled / "season")
    (scheduled / "season").rename(scheduled / "season.old")
    assert planner("week", scheduled, "--of", "2027-05-01").returncode == 0
    assert contents(scheduled / "season") == before
    assert not (scheduled / "season.old").exists()


def test_what_a_killed_run_left_is_cleared_by_the_next(scheduled: Path) -> None:
    with subprocess.Popen([*PROGRAM, "--version"], stdout=subprocess.DEVNULL) as ended:
        left = scheduled / f"season.new.{ended.pid}"
    left.mkdir()
    (left / "season.json").write_text("{", encoding="utf-8")
    assert planner("schedule", scheduled, *AS_OF).returncode == 0
    assert {path.name for path in scheduled.iterdir()} == {"garden.toml", "season"}
