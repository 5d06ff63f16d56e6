"""`planner log`: each event is noted, no line is lost or torn, and what cannot stand is refused."""

import os
import random
import resource
import signal
import subprocess
import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pandas as pd  # type: ignore[import-untyped] # this library ships no types
import pytest

from planner.cli.folder import garden_in, journal_held, journal_in
from planner.cli.shell import need
from planner.journal import Event
from tests.journals import HEADER, write_season
from tests.plans import PROGRAM, contents, planner, write_plan

# More killed runs by hand: KILLS=200.
KILLS = int(os.environ.get("KILLS", "30"))
SOWN = "2027-04-14,sown,radish 1,,\n"
SET_OUT = "2027-04-07,set out,leaf lettuce 1,,"


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    """A plan with a season of three sowings and no journal."""
    return write_season(tmp_path / "plan")


def lines_of(plan: Path) -> list[str]:
    """The lines of the journal."""
    return (plan / "journal.csv").read_text("utf-8").splitlines()


def events_of(plan: Path, sowing: str) -> list[Event]:
    """What counts of a sowing, by day."""
    journal = need(journal_in(plan, need(garden_in(plan)).crops))
    return [one.event for one in journal.of(sowing).entries]


# What is noted


@pytest.mark.parametrize(
    ("arguments", "line"),
    [
        (["sown", "radish 1", "--on", "2027-04-16"], "2027-04-16,sown,radish 1,,"),
        (["emerged", "radish 1", "--on", "2027-04-21"], "2027-04-21,emerged,radish 1,,"),
        (["set out", "leaf lettuce 1", "--on", "2027-04-07"], SET_OUT),
        (["set-out", "leaf lettuce 1", "--on", "2027-04-07"], SET_OUT),
        (
            ["picked", "radish 1", "--on", "2027-05-20", "--amount", "25 roots"],
            "2027-05-20,picked,radish 1,25 roots,",
        ),
        (
            ["picked", "leaf lettuce 1", "--on", "2027-05-20", "--amount", "0.5 kg"],
            "2027-05-20,picked,leaf lettuce 1,0.5 kg,",
        ),
        (["cleared", "radish 1", "--on", "2027-05-20"], "2027-05-20,cleared,radish 1,,"),
        (["lost", "radish 1", "--on", "2027-05-20"], "2027-05-20,lost,radish 1,,"),
        (
            ["lost", "radish 1", "--on", "2027-05-20", "--amount", "6 plants", "--note", "slugs"],
            "2027-05-20,lost,radish 1,6 plants,slugs",
        ),
        (["missed", "radish 1", "--on", "2027-04-20"], "2027-04-20,missed,radish 1,,"),
        (
            ["late", "radish 1", "--on", "2027-05-01", "--amount", "10 days"],
            "2027-05-01,late,radish 1,10 days,",
        ),
        (["SOWN", " Radish  1", "--on", "2027-04-16"], "2027-04-16,sown,radish 1,,"),
        (
            ["sown", "radish 1", "--on", "2027-04-16", "--note", 'wet, "cold"\nand\x1b[2J late'],
            '2027-04-16,sown,radish 1,,"wet, ""cold"" and [2J late"',
        ),
    ],
)  # fmt: skip
def test_each_event_is_noted_as_one_line(arguments: list[str], line: str, plan: Path) -> None:
    result = planner("log", plan, *arguments)
    assert (result.returncode, result.stderr) == (0, "")
    assert lines_of(plan) == [HEADER.rstrip(), line]
    assert result.stdout.startswith("Noted in journal.csv: ")
    follows = f"planner schedule {plan} makes the plan follow." in result.stdout
    assert follows == (arguments[0] != "picked")
    assert planner("check", plan).returncode == 0


def test_what_is_noted_counts(plan: Path) -> None:
    for event, day in (("sown", "2027-04-16"), ("emerged", "2027-04-21")):
        assert planner("log", plan, event, "radish 1", "--on", day).returncode == 0
    assert events_of(plan, "radish 1") == [Event.SOWN, Event.EMERGED]


def test_a_mistake_is_taken_back(plan: Path) -> None:
    planner("log", plan, "sown", "radish 1", "--on", "2027-04-16")
    result = planner("log", plan, "undone", "radish 1", "--on", "2027-04-17")
    assert result.stdout.splitlines()[0] == (
        "Noted in journal.csv: no longer counts that radish 1 sown on 2027-04-16."
    )
    assert len(lines_of(plan)) == 3
    assert events_of(plan, "radish 1") == []


def test_without_a_day_it_is_today(plan: Path) -> None:
    before = date.today()  # noqa: DTZ011 - the grower's own day
    assert planner("log", plan, "picked", "radish 2", "--amount", "3 roots").returncode == 0
    day = date.fromisoformat(lines_of(plan)[1].split(",")[0])
    assert before <= day <= date.today()  # noqa: DTZ011 - the same


def test_a_clock_set_back_only_gives_an_earlier_day(plan: Path) -> None:
    for day in ("2027-05-20", "2027-05-12"):
        options = ("--on", day, "--amount", "3 roots")
        assert planner("log", plan, "picked", "radish 1", *options).returncode == 0
    assert [line[:10] for line in lines_of(plan)[1:]] == ["2027-05-20", "2027-05-12"]
    assert planner("check", plan).returncode == 0


def test_a_spreadsheet_reads_the_journal_back(plan: Path) -> None:
    notes = ["wet, cold", '5" pots', "süß ☂", "=1+1"]
    for note in notes:
        options = ("--on", "2027-05-20", "--amount", "3 roots", "--note", note)
        assert planner("log", plan, "picked", "radish 1", *options).returncode == 0
    table = pd.read_csv(plan / "journal.csv", parse_dates=["date"])
    assert list(table.columns) == ["date", "event", "sowing", "amount", "note"]
    # The last would be a formula: an apostrophe keeps it words, and is not part of the note.
    assert list(table["note"]) == [*notes[:3], "'=1+1"]
    assert set(table["amount"]) == {"3 roots"}
    assert table["date"].dt.year.tolist() == [2027] * 4


# What is refused


@pytest.mark.parametrize(
    ("arguments", "title"),
    [
        (["sawn", "radish 1"], "line of the journal cannot be read"),
        (["sown", "radish 1", "--on", "2027-02-30"], "line of the journal cannot be read"),
        (["sown", "radish 1", "--on", ""], "line of the journal cannot be read"),
        (["sown", "radish 9", "--on", "2027-04-14"], "unknown sowing"),
        (["sown", "radish 1", "--on", "2027-04-14", "--amount", "2 lb"], "amount does not fit"),
        (["picked", "radish 1", "--on", "2027-05-14"], "amount does not fit the event"),
        (["picked", "radish 1", "--on", "2027-05-14", "--amount", "2 lb"], "amount does not fit"),
        (["lost", "radish 1", "--on", "2027-05-14", "--amount", "some"], "amount does not fit"),
        (["late", "radish 1", "--on", "2027-05-14"], "amount does not fit the event"),
        (["set out", "radish 1", "--on", "2027-04-14"], "event does not fit the sowing"),
        (["undone", "radish 1", "--on", "2027-04-14"], "event does not fit the sowing"),
        (["sown", "radish 1", "--on", "2026-04-14"], "this cannot be on that day"),
    ],
)
def test_an_entry_that_cannot_stand_is_not_noted(
    arguments: list[str], title: str, plan: Path
) -> None:
    before = contents(plan)
    result = planner("log", plan, *arguments)
    assert (result.returncode, result.stdout) == (2, "")
    assert result.stderr.startswith(f"the new entry: {title}")
    assert result.stderr.count("What to do: ") == 1
    assert contents(plan) == before


def test_an_entry_against_an_earlier_one_is_refused(plan: Path) -> None:
    planner("log", plan, "sown", "radish 1", "--on", "2027-04-16")
    before = contents(plan)
    result = planner("log", plan, "emerged", "radish 1", "--on", "2027-04-10")
    assert result.returncode == 2
    assert "journal.csv, line 2" in result.stderr
    assert contents(plan) == before


def test_without_a_season_nothing_can_be_noted(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan")
    for folder in (plan, tmp_path / "nowhere"):
        result = planner("log", folder, "sown", "radish 1")
        assert result.returncode == 2
        assert "Traceback" not in result.stderr
    assert set(contents(plan)) == {"garden.toml"}


def test_a_journal_of_a_later_version_is_left_alone(tmp_path: Path) -> None:
    later = "format,day,event,sowing,amount,unit\n2,2027-04-14,sown,radish 1,,\n"
    plan = write_season(tmp_path / "plan", later)
    before = contents(plan)
    for command in (("log", plan, "emerged", "radish 1"), ("check", plan)):
        result = planner(*command)
        assert result.returncode == 2
        assert result.stderr.startswith("journal.csv, line 1: columns of the journal are not known")
    assert contents(plan) == before


def test_damaged_lines_are_told_and_left_as_they_are(tmp_path: Path) -> None:
    damaged = f'{HEADER}soon,sown,radish 1,,\n2027-05-01,picked,"radish 1\n2027-0'.encode()
    plan = write_season(tmp_path / "plan", damaged + b"\xff\0")
    result = planner("log", plan, "sown", "radish 3", "--on", "2027-06-12")
    assert result.returncode == 0
    assert result.stderr.count("What to do: ") == 3
    assert "These lines were left as they are" in result.stderr
    added = b"\n2027-06-12,sown,radish 3,,\n"
    assert (plan / "journal.csv").read_bytes() == damaged + b"\xff\0" + added
    assert planner("check", plan).returncode == 2


def test_check_tells_problems_of_the_plan_and_the_journal_together(tmp_path: Path) -> None:
    plan = write_season(tmp_path / "plan", f"{HEADER}soon,sown,radish 1,,\n")
    garden = (plan / "garden.toml").read_text("utf-8").replace('"8 ft"', '"8 fet"')
    (plan / "garden.toml").write_text(garden, encoding="utf-8")
    result = planner("check", plan)
    assert result.stderr.startswith("garden.toml, line 15: ")
    assert "journal.csv, line 2: " in result.stderr
    assert result.stderr.endswith("2 problems in all.\n")


# Writing that fails


def test_a_folder_that_cannot_be_written_is_told(plan: Path) -> None:
    before = contents(plan)
    plan.chmod(0o555)
    result = planner("log", plan, "sown", "radish 1", "--on", "2027-04-14")
    plan.chmod(0o755)
    assert result.returncode == 2
    assert "folder cannot be written" in result.stderr
    assert contents(plan) == before


def test_a_journal_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    plan = write_season(tmp_path / "plan", HEADER + SOWN)
    before = contents(plan)
    (plan / "journal.csv").chmod(0o444)
    result = planner("log", plan, "emerged", "radish 1", "--on", "2027-04-20")
    assert result.returncode == 2
    assert "Nothing was changed." in result.stderr
    assert contents(plan) == before


def test_a_journal_that_is_a_folder_is_told(plan: Path) -> None:
    (plan / "journal.csv").mkdir()
    result = planner("log", plan, "sown", "radish 1", "--on", "2027-04-14")
    assert result.returncode == 2
    assert "file cannot be read" in result.stderr


@pytest.mark.parametrize("room_bytes", [0, 1, 29, 30, 31, 50])
def test_a_disk_that_is_full_leaves_no_part_of_a_first_line(room_bytes: int, plan: Path) -> None:
    before = contents(plan)
    result = log_with_room(plan, room_bytes)
    assert_no_room(result)
    assert contents(plan) == before


@pytest.mark.parametrize("room_bytes", [0, 1, 10, 27])
def test_a_disk_that_is_full_keeps_the_journal_as_it_was(room_bytes: int, tmp_path: Path) -> None:
    plan = write_season(tmp_path / "plan", HEADER + SOWN)
    before = contents(plan)
    result = log_with_room(plan, len(HEADER + SOWN) + room_bytes)
    assert_no_room(result)
    assert contents(plan) == before
    assert planner("log", plan, "emerged", "radish 1", "--on", "2027-04-20").returncode == 0
    assert lines_of(plan)[2] == "2027-04-20,emerged,radish 1,,"


def log_with_room(plan: Path, room_bytes: int) -> subprocess.CompletedProcess[str]:
    """A run that may let the journal grow to so many bytes."""
    limit = (room_bytes, room_bytes)
    return planner(
        "log", plan, "emerged", "radish 1", "--on", "2027-04-20",
        bound=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, limit),
    )  # fmt: skip


def assert_no_room(result: subprocess.CompletedProcess[str]) -> None:
    """The run told that there is no room, and what to do."""
    assert result.returncode == 2
    assert "folder cannot be written" in result.stderr
    assert "free some space" in result.stderr


# Many at once, and runs that die

# What a run does, many times over, without the time to begin a program anew.
_NOTE_MANY = """
import os, sys
from typer.testing import CliRunner
from planner.cli.app import app

def note_many(folder, name, count):
    words = ["log", folder, "picked", "radish 1", "--on", "2027-05-20", "--amount", "3 roots"]
    for number in range(count):
        done = CliRunner().invoke(app, [*words, "--note", f"{name} {number}"])
        assert done.exit_code == 0, done.output
"""
_MANY_RUNS = f"{_NOTE_MANY}\nnote_many(sys.argv[1], sys.argv[2], int(sys.argv[3]))"
# For each name that is sent to it a process of its own, begun without the time to load a program.
_TURNS = f"""{_NOTE_MANY}
for name in sys.stdin:
    child = os.fork()
    if child == 0:
        note_many(sys.argv[1], name.strip(), 1000)
        os._exit(0)
    print(child, flush=True)
    os.waitpid(child, 0)
    print("gone", flush=True)
"""


def many_runs(plan: Path, name: str, count: int) -> subprocess.Popen[bytes]:
    """A process that notes so many entries, one after the other."""
    return subprocess.Popen([PROGRAM[0], "-c", _MANY_RUNS, str(plan), name, str(count)])


def notes_of(plan: Path) -> Iterator[str]:
    """The note of each line of a journal in which every line is whole."""
    first, *lines = (plan / "journal.csv").read_bytes().splitlines(keepends=True)
    assert first == HEADER.encode()
    for line in lines:
        assert line.startswith(b"2027-05-20,picked,radish 1,3 roots,")
        assert line.endswith(b"\n")
        yield line.decode().rstrip().rpartition(",")[2]


def test_two_who_write_at_once_lose_nothing(plan: Path) -> None:
    runs = [many_runs(plan, name, 50) for name in ("Ines", "Oto")]
    assert [run.wait(timeout=120) for run in runs] == [0, 0]
    wanted = [f"{name} {number}" for name in ("Ines", "Oto") for number in range(50)]
    assert sorted(notes_of(plan)) == sorted(wanted)


def test_who_comes_second_waits_until_the_first_has_written(plan: Path) -> None:
    with journal_held(plan):
        run = many_runs(plan, "Oto", 1)
        with pytest.raises(subprocess.TimeoutExpired):
            run.wait(timeout=3)
        assert not (plan / "journal.csv").exists()
    assert run.wait(timeout=60) == 0
    assert list(notes_of(plan)) == ["Oto 0"]


def test_a_killed_run_leaves_whole_lines_and_loses_none(plan: Path) -> None:
    chance = random.Random(7)  # noqa: S311 - moments to kill at, the same in every run
    told = 0
    with subprocess.Popen(
        [PROGRAM[0], "-c", _TURNS, str(plan)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as turns:
        assert turns.stdin is not None
        assert turns.stdout is not None
        for turn in range(KILLS):
            turns.stdin.write(f"run {turn}\n")
            turns.stdin.flush()
            run = int(turns.stdout.readline())
            wait_for_more(plan, turns)
            time.sleep(chance.random() * 0.02)
            os.kill(run, signal.SIGKILL)
            assert turns.stdout.readline() == "gone\n"
            now = len(list(notes_of(plan)))
            assert now > told
            told = now
    assert planner("check", plan).returncode == 0


def wait_for_more(plan: Path, run: subprocess.Popen[str]) -> None:
    """Wait until a run has begun to write."""
    journal = plan / "journal.csv"
    size = journal.stat().st_size if journal.exists() else 0
    until = time.monotonic() + 60
    while not journal.exists() or journal.stat().st_size == size:
        assert run.poll() is None
        assert time.monotonic() < until
        time.sleep(0.001)


@pytest.mark.parametrize("kept", range(0, len(HEADER + SOWN) + 1, 3))
def test_a_journal_cut_short_anywhere_takes_the_next_entry_on_a_line_of_its_own(
    kept: int, tmp_path: Path
) -> None:
    from typer.testing import CliRunner  # noqa: PLC0415 - many short runs in one process

    from planner.cli.app import app  # noqa: PLC0415 - the same

    torn = (HEADER + SOWN).encode()[:kept]
    plan = write_season(tmp_path / "plan", torn)
    done = CliRunner().invoke(app, ["log", str(plan), "sown", "radish 3", "--on", "2027-06-12"])
    assert done.exit_code == 0, done.output
    content = (plan / "journal.csv").read_bytes()
    assert content.startswith(torn)
    assert content.startswith(HEADER.encode())
    assert content.endswith(b"\n2027-06-12,sown,radish 3,,\n")
