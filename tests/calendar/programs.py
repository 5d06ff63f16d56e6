"""Programs that growers read calendars with, as they have them: apart from the planner."""

import os
import shutil
import socket
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import urlopen

import pytest

from tests.season_runs import REPOSITORY

_APPS = REPOSITORY / ".calendar_apps" / "bin"
USER, PASSWORD = "robin", "pea & bean 7"  # of a server that lives as long as its tests
_CONFIGURATION = """\
[server]
hosts = 127.0.0.1:{port}
[auth]
type = htpasswd
htpasswd_filename = {folder}/users
htpasswd_encryption = plain
delay = 0
[storage]
filesystem_folder = {folder}/collections
[logging]
level = info
"""


def program(name: str) -> str:
    """Where a program is; without it the test fails in CI and is skipped elsewhere."""
    found = shutil.which(name, path=f"{_APPS}{os.pathsep}{os.environ.get('PATH', '')}")
    if found is not None:
        return found
    reason = f"{name} not found; bash .ci/check installs it"
    if os.environ.get("CI"):
        pytest.fail(reason)
    pytest.skip(reason)


@dataclass(frozen=True, slots=True)
class ServedCalendar:
    """A calendar on a CalDAV server, and what the server logs."""

    home: str
    name: str
    log: Path

    @property
    def url(self) -> str:
        """Its address."""
        return f"{self.home}{self.name}/"

    def requests(self, method: str) -> int:
        """How many requests of a method for anything in it came in until now."""
        return self.log.read_text("utf-8").count(f"{method} request for '/{USER}/{self.name}/")

    @property
    def environment(self) -> dict[str, str]:
        """What the program has to be told to write there."""
        return {
            "PLANNER_CALDAV_URL": self.url,
            "PLANNER_CALDAV_USER": USER,
            "PLANNER_CALDAV_PASSWORD": PASSWORD,
            "PYTHON_KEYRING_BACKEND": "keyring.backends.null.Keyring",
        }


@dataclass
class Server:
    """A CalDAV server with calendars of one user."""

    home: str
    folder: Path
    log: Path
    calendars: list[str] = field(default_factory=list)

    def empty_calendar(self) -> ServedCalendar:
        """A calendar that nobody has written to."""
        name = f"garden{len(self.calendars)}"
        self.calendars.append(name)
        calendar = self.folder / "collections" / "collection-root" / USER / name
        calendar.mkdir(parents=True)
        (calendar / ".Radicale.props").write_text('{"tag": "VCALENDAR"}', "utf-8")
        return ServedCalendar(self.home, name, self.log)


@contextmanager
def radicale(folder: Path) -> Iterator[Server]:
    """A server on a free port that keeps its files in a folder."""
    port = free_port()
    command = [program("radicale"), "--config", str(folder / "config")]
    (folder / "users").write_text(f"{USER}:{PASSWORD}\n", "utf-8")
    (folder / "config").write_text(_CONFIGURATION.format(port=port, folder=folder), "utf-8")
    log = folder / "log"
    with log.open("wb") as said, subprocess.Popen(command, stderr=said, stdout=said) as process:
        try:
            _wait_for(f"http://127.0.0.1:{port}/", process, log)
            yield Server(f"http://127.0.0.1:{port}/{USER}/", folder, log)
        finally:
            process.terminate()


def free_port() -> int:
    """A port nobody has at this moment."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


def _wait_for(url: str, process: "subprocess.Popen[bytes]", log: Path) -> None:
    for _ in range(300):
        assert process.poll() is None, log.read_text("utf-8")
        try:
            with urlopen(url, timeout=5):  # noqa: S310 - a server of this test
                return
        except HTTPError as error:
            error.close()
            return
        except OSError:
            time.sleep(0.1)
    pytest.fail(f"the server does not answer: {log.read_text('utf-8')}")
