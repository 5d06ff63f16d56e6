"""Shells complete commands, options and folders by the scripts that the program shows.

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
_SHOWN = "env _TYPER_COMPLETE_TEST_DISABLE_SHELL_DETECTION=1 planner --show-completion"
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
    return {**os.environ, "PATH": path, "HOME": str(tmp_path / "home"), "PYTHONPATH": root}


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


def test_bash_completes_commands_and_options(environment: dict[str, str]) -> None:
    script = f"""
        eval "$({_SHOWN} bash)"
        COMP_WORDS=(planner sch); COMP_CWORD=1; _planner_completion planner
        echo "${{COMPREPLY[@]}}"
        COMP_WORDS=(planner schedule --eff); COMP_CWORD=2; _planner_completion planner
        echo "${{COMPREPLY[@]}}"
    """
    assert _said([_shell("bash"), "-c", script], environment) == ["schedule", "--effort"]


@pytest.mark.parametrize(
    ("typed", "completed"),
    [("sch", "schedule"), ("schedule --eff", "--effort"), ("schedule my-g", "my-garden/")],
)
def test_fish_completes_commands_options_and_folders(
    typed: str, completed: str, environment: dict[str, str]
) -> None:
    script = f'{_SHOWN} fish | source; complete -C "planner {typed}"'
    (line,) = _said([_shell("fish"), "--no-config", "-c", script], environment)
    assert line.split("\t")[0] == completed


@pytest.mark.parametrize(
    ("typed", "completed"),
    [
        ("sch", "schedule "),
        ("schedule --eff", "schedule --effort "),
        ("schedule my-g", "schedule my-garden/"),
    ],
)
def test_zsh_completes_commands_options_and_folders(
    typed: str, completed: str, environment: dict[str, str]
) -> None:
    child = pexpect.spawn(
        _shell("zsh"),
        ["-f", "-i"],
        env={**environment, "TERM": "dumb", "PS1": _PROMPT},
        cwd=environment["HOME"],
        encoding="utf-8",
        timeout=60,
    )
    child.expect_exact(_PROMPT)
    child.sendline(f'autoload -U compinit; compinit -D; eval "$({_SHOWN} zsh)"; {_TOLD_ON_CTRL_X}')
    child.expect_exact(_PROMPT)
    child.send(f"planner {typed}\t\x18")
    child.expect_exact(_PROMPT)
    child.close(force=True)
    assert Path(environment["HOME"], "line").read_text(encoding="utf-8") == f"planner {completed}\n"
