"""A new plan by options or by questions, as someone who has not gardened yet would answer."""

import os
import sys
import tomllib
from collections.abc import Iterable
from datetime import date
from pathlib import Path
from typing import Any

import pexpect
import pytest

from planner.cli.start.answers import usual_season
from tests.plans import planner

PROGRAM = ["-c", "from planner.cli import run; run()"]
OPTIONS = [
    "--name", "Quay garden", "--latitude", "47.6", "--last-spring-freeze", "03-28",
    "--first-fall-freeze", "11-09", "--from", "2027-02-01", "--to", "2027-12-31",
    "--garden-days", "Wed, Sat", "--bed", "North 1: 8 ft x 4 ft, 15 in deep, full",
    "--bed", "Barrel: 30 in round, 16 in deep", "--want", "radish: 25 roots",
]  # fmt: skip
NAME, PLACE = ["Quay garden"], ["clemson", "1"]
BEDS = ["8 x 4 ft", "1", "15 in", "full", ""]
EAT, DAYS, SEASON, WRITE = ["2", "radish", ""], ["Sat"], ["2027-02-01", "2027-12-31"], [""]
_SCREEN = {"COLUMNS", "LINES"}  # the terminal itself says how large it is
CTRL_C = "\x03"


def _answer(
    folder: Path, *answers: Iterable[str], options: Iterable[str] = (), columns: int = 80
) -> tuple[int, str]:
    """Run `planner start` on a terminal and type an answer to each question."""
    child = pexpect.spawn(
        sys.executable,
        [*PROGRAM, "start", str(folder), *options],
        dimensions=(24, columns),
        encoding="utf-8",
        env={name: value for name, value in os.environ.items() if name not in _SCREEN},
        timeout=60,
    )
    shown = ""
    for answer in (one for part in answers for one in part):
        if child.expect(["> ", pexpect.EOF]):
            break
        shown += child.before or ""
        if answer == CTRL_C:
            _interrupt(child)
        else:
            child.sendline(answer)
    child.expect(pexpect.EOF)
    shown += child.before or ""
    child.close()
    return int(child.exitstatus if child.exitstatus is not None else -1), shown.replace("\r", "")


def _interrupt(child: "pexpect.spawn[str]") -> None:
    """Press Ctrl-C, again where it came in the instant before the program began to listen."""
    child.sendintr()
    if child.expect([pexpect.EOF, pexpect.TIMEOUT], timeout=5):
        child.sendintr()


def _plan(folder: Path) -> dict[str, Any]:
    return tomllib.loads((folder / "garden.toml").read_text("utf-8"))


# By options


def test_options_make_a_plan_that_can_stand(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "garden"
    made = planner("start", str(folder), *OPTIONS)
    assert made.returncode == 0, made.stderr
    checked = planner("check", str(folder))
    assert checked.returncode == 0, checked.stderr
    assert "Quay garden: 2 beds" in checked.stdout


def test_a_plan_that_exists_is_never_overwritten(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    planner("start", str(folder), *OPTIONS)
    before = (folder / "garden.toml").read_bytes()
    again = planner("start", str(folder), *OPTIONS)
    assert again.returncode == 2
    assert "a plan is there already" in again.stderr
    assert (folder / "garden.toml").read_bytes() == before


def test_without_a_terminal_what_is_missing_is_told_and_nothing_written(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    made = planner("start", str(folder), "--latitude", "47.6")
    assert made.returncode == 2
    assert "no freeze dates" in made.stderr
    for option in ("--place", "--last-spring-freeze", "--station", "--bed", "--want", "--eat"):
        assert option in made.stderr
    assert "garden.toml" not in made.stderr
    assert "Traceback" not in made.stderr
    assert not folder.exists()


@pytest.mark.parametrize(
    ("option", "words", "told"),
    [
        ("--bed", "eight by four", '"eight by four" cannot be understood'),
        ("--bed", "North 1: 8 by 4, 15 in deep", "cannot be understood"),
        ("--want", "radish", '"radish" cannot be understood'),
        ("--want", "beans: 2 lb", "bush bean, lima bean, pole bean"),
        ("--people", "nan", "people cannot be fed"),
        ("--garden-days", "soon", '"soon" cannot be understood'),
        ("--place", "nowhere at all", "No weather station is known near"),
        ("--place", "10001", "No weather station is known near"),
        ("--place", "portland", "name one of them with --station"),
        ("--station", "XX1", 'There is no station "XX1"'),
        ("--last-spring-freeze", "soon", '"soon"'),
    ],
)
def test_an_option_that_cannot_be_understood_is_told(
    option: str, words: str, told: str, tmp_path: Path
) -> None:
    made = planner("start", str(tmp_path / "garden"), *OPTIONS, option, words)
    assert made.returncode == 2
    assert told in made.stderr
    assert not (tmp_path / "garden").exists()


def test_plain_words_do_in_options_too(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    made = planner(
        "start", str(folder), "--latitude", "51.5", "--last-spring-freeze", "mid April",
        "--first-fall-freeze", "end of October", "--bed", "Wall: 10 by 4 steps, a foot deep, 4 h",
        "--people", "3.5", "--eat", "radish, lettuce and kale", "--garden-days", "weekends",
    )  # fmt: skip
    assert made.returncode == 0, made.stderr
    plan = _plan(folder)
    assert plan["site"]["last_spring_freeze"] == "04-15"
    assert plan["site"]["first_fall_freeze"] == "10-25"
    assert plan["season"]["garden_days"] == ["Sat", "Sun"]
    bed = plan["bed"][0]
    assert (bed["length"], bed["width"], bed["soil_depth"]) == ("25 ft", "10 ft", "1 ft")
    assert bed["sun"] == "part"
    assert [one["crop"] for one in plan["target"]] == ["radish", "lettuce", "kale"]
    assert {one["for_people"] for one in plan["target"]} == {3.5}


def test_options_and_questions_make_the_same_plan(tmp_path: Path) -> None:
    asked, told = tmp_path / "asked", tmp_path / "told"
    status, output = _answer(asked, NAME, PLACE, BEDS, EAT, DAYS, SEASON, WRITE)
    assert status == 0, output
    station = _plan(asked)["site"]["station"]
    made = planner(
        "start", str(told), "--name", "Quay garden", "--station", station,
        "--bed", "Bed 1: 8 x 4 ft, 15 in deep, full", "--eat", "radish", "--garden-days", "Sat",
        "--from", "2027-02-01", "--to", "2027-12-31",
    )  # fmt: skip
    assert made.returncode == 0, made.stderr
    assert (told / "garden.toml").read_bytes() == (asked / "garden.toml").read_bytes()


# By questions


def test_who_knows_neither_frost_dates_nor_feet_gets_a_plan_that_feeds_them(
    tmp_path: Path,
) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        [""],
        ["?", "clemson", "1"],
        ["?", "4 by 2 steps", "2", "a foot", "8 hours", ""],
        ["four", "radish, lettuce, tomatoes", ""],
        ["weekends"],
        ["", ""],
        WRITE,
    )
    assert status == 0, output
    assert "CLEMSON" in output
    assert "Taken as 10 ft x 5 ft." in output
    plan = _plan(folder)
    assert len(plan["bed"]) == 2
    # Tomatoes are not asked for in weeks that freeze: Clemson's last freeze is at the end of March.
    tomato = plan["target"][2]
    assert tomato["from"].month >= 5
    assert tomato["to"].month <= 12
    made = planner("schedule", str(folder), "--effort", "0")
    assert made.returncode == 0, made.stderr


def test_questions_forgive_wrong_answers(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        NAME,
        ["atlantis on sea", "10001", "34.7 -82.8", "99", "west", "1"],
        [
            "", "a big bed", "8 by 4", "yards", "feet", "many", "1", "deep", "15 in",
            "blue", "full", "",
        ],
        ["everyone", "4", "raddish", "beans", "radish", ""],
        ["someday", "Sat"],
        ["soon", "2027-02-01", "2027-12-31"],
        ["9", ""],
    )  # fmt: skip
    assert status == 0, output
    assert "CLEMSON" in output
    assert output.count("Please try again") == 11
    said = " ".join(output.split())
    assert 'try "radish".' in said
    assert "bush bean, lima bean, pole bean" in said
    assert "postcodes are not" in said
    assert "Please type a length and a width" in said
    assert _plan(folder)["site"]["latitude"] == 34.7
    assert planner("check", str(folder)).returncode == 0


def test_where_no_station_is_near_months_do(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder, NAME, ["", "52.1 N", "soon", "mid May", "?", "early October"],
        BEDS, EAT, DAYS, SEASON, WRITE,
    )  # fmt: skip
    assert status == 0, output
    site = _plan(folder)["site"]
    assert site["last_spring_freeze"] == "05-15"
    assert site["first_fall_freeze"] == "10-05"
    assert "15 May to 5 Oct" in output


def test_a_place_without_freezes_is_told_by_one_word(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(folder, NAME, ["", "8.5", "never"], BEDS, EAT, DAYS, SEASON, WRITE)
    assert status == 0, output
    assert _plan(folder)["site"]["first_fall_freeze"] == "never"


def test_what_the_plan_would_refuse_is_asked_again_at_once(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        NAME,
        # The fall freeze before the spring one; then an end of the season before its beginning.
        ["", "47.6", "04-15", "03-01", "", "04-15", "10-20"],
        [
            "North 1: 8 ft x 4 ft, 15 in deep, full", "north  1: 4 ft round, 15 in deep",
            "South: 8000 ft x 4 ft, 15 in deep", "",
        ],
        ["2", "radish: 3 lb", "radish: 25 roots", "radish", ""],
        DAYS,
        ["2027-12-31", "2027-02-01", "2027-02-01", "2027-12-31"],
        WRITE,
    )  # fmt: skip
    assert status == 0, output
    assert 'already names the bed "North 1"' in output
    plan = _plan(folder)
    assert len(plan["bed"]) == 1
    assert len(plan["target"]) == 1
    assert planner("check", str(folder)).returncode == 0


def test_a_question_before_can_be_gone_back_to(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder,
        ["Quay", "<", "Quay garden"],
        ["portland", "<", "clemson", "1"],
        [
            "8 x 4 ft",
            "2",
            "<",
            "6 x 3 ft",
            "1",
            "15 in",
            "full",
            "4 ft round",
            "1",
            "",
            "",
            "<",
            "",
        ],
        ["2", "radish", "kale", "<", ""],
        ["back", "3", "radish", "", "Sat"],
        SEASON,
        WRITE,
    )
    assert status == 0, output
    plan = _plan(folder)
    assert plan["site"]["name"] == "Quay garden"
    assert [(one["length"], one["width"]) for one in plan["bed"]] == [("6 ft", "3 ft")]
    assert [(one["crop"], one["for_people"]) for one in plan["target"]] == [("radish", 3)]


def test_any_answer_can_be_changed_at_the_end(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(
        folder, NAME, PLACE, BEDS, EAT, DAYS, SEASON,
        ["1", "Gate garden"], ["3", "2 x 1 m", "1", "30 cm", "part", ""], ["5", "<"],
        WRITE,
    )  # fmt: skip
    assert status == 0, output
    plan = _plan(folder)
    assert plan["site"]["name"] == "Gate garden"
    assert [one["length"] for one in plan["bed"]] == ["2 m"]
    assert plan["season"]["garden_days"] == ["Sat"]


def test_only_what_options_leave_open_is_asked(tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    options = ["--name", "Quay garden", "--place", "34.7 -82.8", "--people", "2", "--eat", "radish"]
    status, output = _answer(folder, BEDS, DAYS, SEASON, WRITE, options=options)
    assert status == 0, output
    assert "1 of 3: Beds" in output


ALL = [*NAME, *PLACE, *BEDS, *EAT, *DAYS, *SEASON]


@pytest.mark.parametrize("answers", [0, 2, 5, len(ALL)])
def test_ctrl_c_leaves_nothing(answers: int, tmp_path: Path) -> None:
    folder = tmp_path / "garden"
    status, output = _answer(folder, ALL[:answers], [CTRL_C])
    assert status == 130
    assert "Traceback" not in output
    assert not folder.exists()


def test_answers_that_cannot_be_written_are_shown(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    status, output = _answer(tmp_path / "file" / "garden", ALL, WRITE)
    assert status == 2
    assert "folder cannot be written" in output
    assert 'name = "Quay garden"' in output
    assert 'crop = "radish"' in output


@pytest.mark.parametrize("columns", [40, 60])
def test_questions_keep_to_a_narrow_screen(columns: int, tmp_path: Path) -> None:
    _, output = _answer(
        tmp_path / "garden", NAME, ["?", *PLACE], ["?", *BEDS], ["?", "2", "?", "radish", ""],
        DAYS, SEASON, WRITE, columns=columns,
    )  # fmt: skip
    before_the_end = output.split("Wrote")[0].replace("\x1b[K", "")
    assert max(map(len, before_the_end.splitlines())) <= columns


@pytest.mark.parametrize(
    ("day", "latitude", "first", "last"),
    [
        ("2027-03-10", 47.6, "2027-03-10", "2027-12-31"),
        ("2027-09-01", 47.6, "2028-01-01", "2028-12-31"),
        ("2027-09-01", -34, "2027-09-01", "2028-06-30"),
        ("2028-02-10", -34, "2028-02-10", "2028-06-30"),
        ("2028-03-01", -34, "2028-07-01", "2029-06-30"),
    ],
)
def test_the_usual_season_runs_from_midwinter_to_midwinter(
    day: str, latitude: float, first: str, last: str
) -> None:
    usual = usual_season(date.fromisoformat(day), latitude)
    assert usual == (date.fromisoformat(first), date.fromisoformat(last))
