"""Shells complete commands, options and folders by the scripts that the program shows or installs.

Each shell does it itself: bash by its own variables, fish by `complete -C`, zsh on a terminal, by
the tab key.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pexpect
import pytest

from tests.node_packages import missing_for_test

_NAMED = "import sys; sys.argv[0] = 'planner'; from planner.cli import run; run()"
_SHELL_IS_TOLD = {"_TYPER_COMPLETE_TEST_DISABLE_SHELL_DETECTION": "1"}
_PROMPT = "ready> "
# The line as zsh's editor has it goes into a file, and a new prompt comes.
_TOLD_ON_CTRL_X = (
    'told() { print -r -- "$BUFFER" > ~/line; BUFFER=; zle accept-line }; '
    "zle -N told; bindkey '^X' told"
)


def _shell(name: str) -> str:
    """The shell's path; where it is missing a test fails in CI and is skipped elsewhere."""
    found = shutil.which(name)
    if found is None:
        missing_for_test(f"{name} is not installed")
    return str(found)


@pytest.fixture
def environment(tmp_path: Path) -> dict[str, str]:
    """An environment in which `planner` is the program under test."""
    program = tmp_path / "bin" / "planner"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nexec {sys.executable} -c "{_NAMED}" "$@"\n', encoding="utf-8")
    program.chmod(0o755)
    (tmp_path / "home" / "my-garden").mkdir(parents=True)
    path = f"{program.parent}:{os.environ['PATH']}"
    # The program is found from here: tests may run it straight from a checkout.
    root = str(Path(__file__).resolve().parents[2])
    return {
        **os.environ,
        "PATH": path,
        "HOME": str(tmp_path / "home"),
        "PYTHONPATH": root,
        **_SHELL_IS_TOLD,
    }


def _said(words: list[str], environment: dict[str, str]) -> list[str]:
    done = subprocess.run(
        words,
        capture_output=True,
        text=True,
        check=False,
        env=environment,
        cwd=environment["HOME"],
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def _installed(shell: str, environment: dict[str, str]) -> None:
    """Do what the program does once for this shell, in the home of the environment."""
    _said(["planner", "--install-completion", shell], environment)


def _completed_by_bash(set_up: str, environment: dict[str, str]) -> list[str]:
    script = f"""
        {set_up}
        COMP_WORDS=(planner sch); COMP_CWORD=1; _planner_completion planner
        echo "${{COMPREPLY[@]}}"
        COMP_WORDS=(planner schedule --eff); COMP_CWORD=2; _planner_completion planner
        echo "${{COMPREPLY[@]}}"
        complete -p planner
    """
    return _said([_shell("bash"), "-c", script], environment)


def _line_in_zsh(typed: str, environment: dict[str, str], options: str, *set_up: str) -> str:
    """What becomes of a line on a terminal when tab is pressed once."""
    child = pexpect.spawn(
        _shell("zsh"),
        [options, "-i"],
        env={**environment, "TERM": "dumb", "PS1": _PROMPT},
        cwd=environment["HOME"],
        encoding="utf-8",
        timeout=60,
    )
    child.expect_exact(_PROMPT)
    child.sendline("; ".join((*set_up, _TOLD_ON_CTRL_X)))
    child.expect_exact(_PROMPT)
    child.send(f"{typed}\t\x18")
    child.expect_exact(_PROMPT)
    child.close(force=True)
    return Path(environment["HOME"], "line").read_text(encoding="utf-8").removesuffix("\n")


IN_BASH = ["schedule", "--effort", "complete -o default -F _planner_completion planner"]
IN_FISH = [("sch", "schedule"), ("schedule --eff", "--effort"), ("schedule my-g", "my-garden/")]
IN_ZSH = [
    ("sch", "schedule "),
    ("schedule --eff", "schedule --effort "),
    ("schedule my-g", "schedule my-garden/"),
]


def test_bash_completes_commands_and_options(environment: dict[str, str]) -> None:
    """Folders it completes by itself, where the program has nothing to say (`-o default`)."""
    shown = 'eval "$(planner --show-completion bash)"'
    assert _completed_by_bash(shown, environment) == IN_BASH


def test_bash_completes_by_what_is_installed(environment: dict[str, str]) -> None:
    _installed("bash", environment)
    assert _completed_by_bash(". ~/.bashrc", environment) == IN_BASH


@pytest.mark.parametrize(("typed", "completed"), IN_FISH)
def test_fish_completes_commands_options_and_folders(
    typed: str, completed: str, environment: dict[str, str]
) -> None:
    script = f'planner --show-completion fish | source; complete -C "planner {typed}"'
    (line,) = _said([_shell("fish"), "--no-config", "-c", script], environment)
    assert line.split("\t")[0] == completed


def test_fish_completes_by_what_is_installed(environment: dict[str, str]) -> None:
    fish = _shell("fish")
    # Where fish looks for its files must be this home, whatever the machine says.
    there = {name: text for name, text in environment.items() if not name.startswith("XDG_")}
    _installed("fish", there)
    (line,) = _said([fish, "-c", 'complete -C "planner sch"'], there)
    assert line.split("\t")[0] == "schedule"


@pytest.mark.parametrize(("typed", "completed"), IN_ZSH)
def test_zsh_completes_commands_options_and_folders(
    typed: str, completed: str, environment: dict[str, str]
) -> None:
    shown = ("autoload -U compinit", "compinit -D", 'eval "$(planner --show-completion zsh)"')
    line = _line_in_zsh(f"planner {typed}", environment, "-f", *shown)
    assert line == f"planner {completed}"


@pytest.mark.parametrize(("typed", "completed"), IN_ZSH)
def test_zsh_completes_at_the_first_tab_by_what_is_installed(
    typed: str, completed: str, environment: dict[str, str]
) -> None:
    zsh_of = {name: text for name, text in environment.items() if name != "ZDOTDIR"}
    _installed("zsh", zsh_of)
    # With -d the home's own .zshrc is read, and none of the machine's.
    assert _line_in_zsh(f"planner {typed}", zsh_of, "-d") == f"planner {completed}"
