"""How commands behave in a shell: help, first mistakes, narrow or dumb screens, pipes, Ctrl-C.

Statuses above 128 as in POSIX.1-2017, Shell Command Language 2.8.2: 128 and the signal's number.
"""

import json
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path

import pexpect
import pytest
import typer

from planner.cli.app import app
from planner.cli.screen import folded
from tests.plans import AS_OF, PROGRAM, contents, garden_toml, planner, write_plan

COMMANDS = sorted(typer.main.get_command(app).commands)  # type: ignore[attr-defined]
_NAMED = "import sys; sys.argv[0] = 'planner'; from planner.cli import run; run()"
# A screen says itself how wide it is, unless the environment says otherwise.
_SCREEN = {"COLUMNS", "LINES", "TERM", "NO_COLOR"}
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f]")
# Commands that end by themselves and need nothing but a plan with a season.
SHOWN: dict[str, Sequence[str]] = {
    "check": ["check", "."],
    "schedule": ["schedule", ".", *AS_OF],
    "what if": ["schedule", ".", *AS_OF, "--what-if"],
    "week": ["week", ".", "--of", "2027-05-12"],
    "outlook": ["outlook", "."],
    "bedwork": ["bedwork", "."],
    "why": ["why", ".", "radish 1"],
    "crops": ["crops"],
    "crop": ["crops", "radish"],
    "stations": ["stations", "clemson"],
    "log": ["log", ".", "picked", "radish 1", "--on", "2027-05-20", "--amount", "2 roots"],
    "problem": ["check", "nowhere"],
    "help": ["--help"],
    "help on start": ["start", "--help"],
}


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small plan with a season, named in letters beyond ASCII."""
    garden = garden_toml(("Quince Yard", "Küchengarten ☂"), ("Wall bed", "Gänsebeet"))
    plan = write_plan(tmp_path_factory.mktemp("manners") / "plan", garden)
    assert planner("schedule", plan, *AS_OF).returncode == 0
    return plan


def _on_screen(
    plan: Path, words: Sequence[str], columns: int, **environment: str
) -> tuple[int, str]:
    """What a terminal of so many columns gets, and the status."""
    kept = {name: value for name, value in os.environ.items() if name not in _SCREEN}
    child = pexpect.spawn(
        sys.executable,
        ["-c", _NAMED, *words],
        cwd=str(plan),
        dimensions=(40, columns),
        encoding="utf-8",
        env={**kept, "TERM": "xterm", "PYTHONUTF8": "1", **environment},
        timeout=120,
    )
    child.expect(pexpect.EOF)
    child.close()
    status = child.exitstatus if child.exitstatus is not None else -(child.signalstatus or 0)
    return status, (child.before or "").replace("\r\n", "\n")


# Help


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_with_an_example(command: str) -> None:
    shown = planner(command, "--help")
    assert shown.returncode == 0
    assert f"Example: planner {command}" in shown.stdout
    # An option whose help is missing stands alone on its line.
    assert re.findall(r"^  --?\S+$", shown.stdout, re.MULTILINE) == []


def test_help_cuts_no_sentence_off() -> None:
    shown = planner("--help").stdout
    assert "..." not in shown.split("Commands:")[1]
    for command in COMMANDS:
        assert re.search(rf"^  {command} ", shown, re.MULTILINE)


def test_the_version_is_the_one_of_the_package() -> None:
    shown = planner("--version")
    assert re.fullmatch(r"planner \d+\.\d+\.\d+\n", shown.stdout)


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_is_shown_for_a_shell(shell: str) -> None:
    environment = [("_TYPER_COMPLETE_TEST_DISABLE_SHELL_DETECTION", "1")]
    shown = planner("--show-completion", shell, environment=environment)
    assert shown.returncode == 0
    assert "complet" in shown.stdout


# First mistakes


def test_without_a_word_the_commands_are_shown() -> None:
    shown = planner()
    assert shown.returncode == 2
    assert "First steps: planner start my-garden" in shown.stdout + shown.stderr


def test_a_misspelt_command_is_named() -> None:
    shown = planner("shedule")
    assert shown.returncode == 2
    assert "Did you mean 'schedule'?" in shown.stderr


@pytest.mark.parametrize("command", ["check", "schedule", "week", "outlook", "bedwork", "share"])
def test_in_no_plan_folder_what_to_do_is_told(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).resolve().parents[2]))
    shown = planner(command)
    assert shown.returncode == 2
    assert "planner start my-garden" in shown.stderr
    write_plan(tmp_path / "south")
    assert "south" in planner(command).stderr
    assert contents(tmp_path).keys() == {"south", "south/garden.toml"}


def test_within_a_plan_folder_no_folder_is_named(
    plan: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).resolve().parents[2]))
    monkeypatch.chdir(plan)
    for words in (["check"], ["week", "--of", "2027-05-12"], ["schedule", *AS_OF, "--what-if"]):
        assert planner(*words).returncode == 0


# Screens


@pytest.mark.parametrize("columns", [40, 60])
@pytest.mark.parametrize("name", SHOWN)
def test_a_narrow_screen_breaks_no_line_in_a_word(name: str, columns: int, plan: Path) -> None:
    _, shown = _on_screen(plan, SHOWN[name], columns)
    shown = re.sub(r"[^\n]*\r\x1b\[K", "", shown)
    too_long = [line for line in shown.splitlines() if len(line) > columns]
    # What has no space in it, such as a picture or a path, cannot be folded.
    assert [line for line in too_long if " " in line.strip()] == []


@pytest.mark.parametrize("name", SHOWN)
def test_a_dumb_terminal_gets_no_orders(name: str, plan: Path) -> None:
    status, shown = _on_screen(plan, SHOWN[name], 100, TERM="dumb", NO_COLOR="1")
    assert status == (2 if name == "problem" else 0), shown
    assert _CONTROL.findall(shown) == []


def test_columns_of_the_environment_are_respected(plan: Path) -> None:
    _, shown = _on_screen(plan, SHOWN["why"], 200, COLUMNS="50")
    assert max(map(len, shown.splitlines())) <= 50


def test_long_work_is_told_on_a_terminal_and_taken_back(plan: Path) -> None:
    _, shown = _on_screen(plan, SHOWN["what if"], 80)
    assert "Looking for a season ...\r\x1b[K" in shown


@pytest.mark.parametrize(
    ("line", "width", "shown"),
    [
        ("short", 20, "short"),
        ("one two three four five six", 20, "one two three four\n  five six"),
        ("  - one two three four five", 20, "  - one two three\n    four five"),
        ("radish    25 roots a week: 24 of 25 weeks", 30,
         "radish    25 roots a week: 24\n          of 25 weeks"),
        ("x" * 30, 20, "x" * 30),
    ],
)  # fmt: skip
def test_a_line_is_folded_at_words(line: str, width: int, shown: str) -> None:
    assert folded(line, width) == shown


# Pipes and files


@pytest.mark.parametrize("name", SHOWN)
def test_another_program_gets_plain_lines(name: str, plan: Path) -> None:
    done = _piped(plan, SHOWN[name])
    assert done.returncode == (2 if name == "problem" else 0), done.stderr
    assert _CONTROL.findall(done.stdout + done.stderr) == []
    assert "Looking for" not in done.stderr


def _piped(
    plan: Path, words: Sequence[str], **environment: str
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", _NAMED, *words],
        cwd=plan,
        capture_output=True,
        check=False,
        encoding="utf-8",
        env={**os.environ, "PYTHONUTF8": "1", "COLUMNS": "100", **environment},
        stdin=subprocess.DEVNULL,
        timeout=120,
    )


@pytest.mark.parametrize("name", SHOWN)
def test_a_screen_of_ascii_alone_stops_nothing(name: str, plan: Path) -> None:
    plain = {"PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii", "LANG": "C", "LC_ALL": "C"}
    done = _piped(plan, SHOWN[name], PYTHONCOERCECLOCALE="0", **plain)
    assert done.returncode == (2 if name == "problem" else 0), done.stderr
    assert done.stdout.isascii()
    assert done.stderr.isascii()


def test_json_keeps_names_that_a_screen_lacks(plan: Path) -> None:
    words = ["schedule", ".", *AS_OF, "--what-if", "--json"]
    plain = _piped(plan, words, PYTHONUTF8="0", PYTHONIOENCODING="ascii")
    assert plain.stdout.isascii()
    assert json.loads(plain.stdout) == json.loads(_piped(plan, words).stdout)
    assert json.loads(plain.stdout)["garden"] == "Küchengarten ☂"


def test_json_is_whole_on_a_narrow_screen(plan: Path) -> None:
    _, shown = _on_screen(plan, ["why", ".", "radish 1", "--json"], 40)
    assert json.loads(shown)


def _in_bash(script: str) -> subprocess.CompletedProcess[str]:
    program = f'{sys.executable} -c "{_NAMED}"'
    return subprocess.run(
        ["bash", "-c", f'planner() {{ {program} "$@"; }}; {script}'],
        capture_output=True, text=True, check=False, env={**os.environ, "PYTHONUTF8": "1"},
    )  # fmt: skip


@pytest.mark.parametrize("words", ["crops", "crops radish", "crops --json"])
def test_who_reads_one_line_only_is_no_news(words: str) -> None:
    done = _in_bash(f"planner {words} | head -n 1")
    assert done.returncode == 0
    assert done.stderr == ""
    assert done.stdout.count("\n") == 1


def test_an_output_that_is_closed_stops_nothing() -> None:
    done = _in_bash("planner crops >&-; echo $?")
    assert (done.stdout, done.stderr) == ("0\n", "")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no full device")
def test_an_output_without_room_is_told() -> None:
    done = _in_bash("planner crops > /dev/full; echo $?")
    assert done.stdout == "1\n"
    assert "could not be written" in done.stderr
    assert "Traceback" not in done.stderr


# Ctrl-C


@pytest.mark.parametrize("share", [0.3, 0.6, 0.8, 0.9, 0.95])
def test_ctrl_c_leaves_the_season_as_it_was(share: float, plan: Path) -> None:
    words = [*PROGRAM, "schedule", str(plan), "--as-of", "2027-01-15"]
    subprocess.run(words, check=True, stdout=subprocess.DEVNULL)
    # Made again, a season is the same to the byte, so a whole one can be told from a torn one.
    started = time.monotonic()
    subprocess.run(words, check=True, stdout=subprocess.DEVNULL)
    whole_run_s = time.monotonic() - started
    before = contents(plan)
    with subprocess.Popen(
        words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as running:
        time.sleep(whole_run_s * share)
        running.send_signal(signal.SIGINT)
        _, told = running.communicate(timeout=60)
    assert "Traceback" not in told
    assert not list(plan.glob("season.*"))
    assert contents(plan) == before
    # Otherwise it came before Python listens, or after all was done.
    assert running.returncode in {130, 0, -signal.SIGINT}
