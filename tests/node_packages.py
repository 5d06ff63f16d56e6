"""Packages of npm that tests read our files with, each of one stated version."""

import fcntl
import json
import os
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.season_runs import REPOSITORY

NODE_PREFIX = REPOSITORY / ".node"


def node_package(name: str, version: str, what_for: str) -> Path:
    """The folder of a package, fetched where it is missing; a missing npm fails only in CI."""
    missing = [program for program in ("node", "npm") if shutil.which(program) is None]
    if missing:
        missing_for_test(f"{' and '.join(missing)} not found, so {what_for}")
    folder = NODE_PREFIX / "node_modules" / name
    NODE_PREFIX.mkdir(exist_ok=True)
    with (NODE_PREFIX / ".lock").open("w") as lock:  # tests may run side by side
        fcntl.flock(lock, fcntl.LOCK_EX)
        if _version(folder) != version:
            install = ["npm", "install", "--prefix", str(NODE_PREFIX), f"{name}@{version}"]
            quiet = ["--save-exact", "--no-audit", "--no-fund", "--loglevel", "error"]
            subprocess.run([*install, *quiet], check=True, capture_output=True, timeout=180)
    return folder


def missing_for_test(reason: str) -> None:
    """Fail in CI, skip elsewhere."""
    if os.environ.get("CI"):
        pytest.fail(reason)
    pytest.skip(reason)


def _version(folder: Path) -> str:
    told = folder / "package.json"
    return str(json.loads(told.read_bytes())["version"]) if told.exists() else ""
