"""`planner share`: one feed at an address nobody can guess, and nothing else."""

import hashlib
import http.client
import re
import signal
import socket
import stat
import subprocess
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from email.utils import formatdate
from pathlib import Path

import pytest

from planner.cli.folder.season_folder import write_season_folder
from tests.calendar.conftest import LIVE, Stages
from tests.calendar.programs import free_port
from tests.plans import PROGRAM, contents, planner, write_plan

_NOTHING = (404, b"")


@dataclass(frozen=True, slots=True)
class Feed:
    """A plan folder, and the feed it is shared as."""

    folder: Path
    port: int
    path: str
    process: "subprocess.Popen[str]"

    def ask(
        self, path: str | None = None, method: str = "GET", **headers: str
    ) -> tuple[int, bytes, dict[str, str]]:
        """Status, content and headers of an answer."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            told = {name.replace("_", "-"): value for name, value in headers.items()}
            connection.putrequest(method, path or self.path, skip_host="Host" in told)
            for name, value in told.items():
                connection.putheader(name, value)
            connection.endheaders()
            answer = connection.getresponse()
            return answer.status, answer.read(), dict(answer.getheaders())
        finally:
            connection.close()

    def status(self, path: str | None = None, method: str = "GET", **headers: str) -> int:
        return self.ask(path, method, **headers)[0]


@contextmanager
def shared(folder: Path, *options: str) -> Iterator[Feed]:
    port = free_port()
    command = [*PROGRAM, "share", str(folder), "--port", str(port), *options]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        try:
            assert process.stdout is not None
            said = process.stdout.readline()
            found = re.fullmatch(r"Subscribe to: http://([^/]+):(\d+)(/\S+)\n", said)
            assert found, said
            assert int(found[2]) == port
            while "Ctrl-C" not in process.stdout.readline():
                pass
            yield Feed(folder, port, found[3], process)
        finally:
            process.kill()


@pytest.fixture
def folder(tmp_path: Path, stages: Stages) -> Path:
    return stages.first.laid_out(tmp_path / "plan")


@pytest.fixture
def feed(folder: Path) -> Iterator[Feed]:
    with shared(folder) as one:
        yield one


def test_the_feed_is_the_calendar_to_the_byte(feed: Feed, stages: Stages) -> None:
    status, content, headers = feed.ask()
    assert (status, content) == (200, stages.first.files[LIVE])
    assert headers["Content-Type"] == "text/calendar; charset=utf-8"
    assert headers["Content-Length"] == str(len(content))
    assert "Server" not in headers


def test_head_tells_the_same_without_the_content(feed: Feed) -> None:
    _, _, got = feed.ask()
    status, content, headers = feed.ask(method="HEAD")
    assert (status, content) == (200, b"")
    for name in ("Content-Length", "Content-Type", "ETag", "Last-Modified"):
        assert headers[name] == got[name]


def test_who_has_it_already_is_sent_nothing(feed: Feed) -> None:
    _, _, headers = feed.ask()
    edition, changed = headers["ETag"], headers["Last-Modified"]
    known = [
        {"If_None_Match": edition},
        {"If_None_Match": f'"other", W/{edition}'},
        {"If_None_Match": "*"},
        {"If_Modified_Since": changed},
        {"If_None_Match": edition, "If_Modified_Since": formatdate(0, usegmt=True)},
    ]
    assert [feed.ask(**one)[:2] for one in known] == [(304, b"")] * len(known)
    unknown = [
        {"If_None_Match": '"other"'},
        {"If_None_Match": '"other"', "If_Modified_Since": changed},
        {"If_Modified_Since": formatdate(0, usegmt=True)},
        {"If_Modified_Since": "yesterday"},
    ]
    assert [feed.status(**one) for one in unknown] == [200] * len(unknown)


def test_the_feed_follows_a_new_season(feed: Feed, stages: Stages) -> None:
    _, _, before = feed.ask()
    assert write_season_folder(feed.folder, stages.later.files) is None
    status, content, headers = feed.ask(If_None_Match=before["ETag"])
    assert (status, content) == (200, stages.later.files[LIVE])
    assert headers["ETag"] != before["ETag"]


def test_no_reader_ever_gets_half_a_season(feed: Feed, stages: Stages) -> None:
    """Seasons are swapped as fast as the disk allows, while readers ask all the time."""
    whole = {hashlib.sha256(one.files[LIVE]).digest() for one in (stages.first, stages.later)}
    done = threading.Event()

    def swap() -> None:
        for _ in range(25):
            for one in (stages.later, stages.first):
                assert write_season_folder(feed.folder, one.files) is None
        done.set()

    writer = threading.Thread(target=swap)
    writer.start()
    asked, seen = 0, set()
    while not done.is_set() or asked < 20:
        status, content, _ = feed.ask()
        assert status == 200
        seen.add(hashlib.sha256(content).digest())
        asked += 1
        assert writer.is_alive() or done.is_set()
    writer.join()
    assert seen <= whole


@pytest.mark.parametrize(
    "path",
    [
        "/",
        "//",
        "/calendar.ics",
        "/season/calendar.ics",
        "/{token}",
        "/{token}/garden.toml",
        "/{token}/tick",
        "/{token}/season.json",
        "/{token}/../garden.toml",
        "/{token}/calendar.ics/",
        "/{token}/calendar.ics/../../.share-token",
        "/{token}/%63alendar.ics",
        "/{token}x/calendar.ics",
        "/{shorter}/calendar.ics",
        "/{TOKEN}/calendar.ics",
        "/../../../../etc/passwd",
        "/%2e%2e/%2e%2e/etc/passwd",
        "http://127.0.0.1/{token}/calendar.ics",
        "/" + "a" * 70_000,
    ],
    ids=lambda path: str(path)[:40],
)
def test_any_other_path_is_not_there(feed: Feed, path: str) -> None:
    token = feed.path.split("/")[1]
    asked = path.format(token=token, shorter=token[:-1], TOKEN=token.swapcase())
    assert feed.ask(asked)[:2] == _NOTHING


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS", "PROPFIND", "TRACE"])
def test_any_other_method_is_not_there(feed: Feed, method: str) -> None:
    assert feed.ask(method=method)[:2] == _NOTHING


def test_a_name_pointed_at_this_computer_reads_nothing(feed: Feed) -> None:
    """DNS rebinding: a page of another site asks under its own name."""
    for host in ("garden.example", f"garden.example:{feed.port}", "", "10.1.2.3", "[::2]"):
        assert feed.ask(Host=host)[:2] == _NOTHING, host
    for host in (f"127.0.0.1:{feed.port}", "localhost", f"LOCALHOST:{feed.port}", "[::1]"):
        assert feed.status(Host=host) == 200, host


def test_what_is_not_http_ends_without_detail(feed: Feed) -> None:
    for said in (b"\r\n\r\n", b"GET\r\n\r\n", b"\x16\x03\x01 TLS\r\n\r\n", b"GET / HTTP/9\r\n\r\n"):
        with socket.create_connection(("127.0.0.1", feed.port), timeout=30) as one:
            one.sendall(said)
            one.shutdown(socket.SHUT_WR)
            answer = b"".join(iter(lambda: one.recv(4096), b""))
        assert b"200" not in answer
        assert b"Python" not in answer
    assert feed.status() == 200


def test_a_reader_who_says_nothing_holds_nobody_up(feed: Feed) -> None:
    with socket.create_connection(("127.0.0.1", feed.port)):
        assert feed.status() == 200


def test_a_season_taken_away_is_missed_only_until_there_is_one(feed: Feed, stages: Stages) -> None:
    (feed.folder / "season").rename(feed.folder / "elsewhere")
    status, content, headers = feed.ask()
    assert (status, content) == (503, b"")
    assert headers["Retry-After"]
    stages.first.laid_out(feed.folder)
    assert feed.status() == 200


def test_the_address_stays_and_only_its_owner_can_read_it(folder: Path) -> None:
    with shared(folder) as one:
        path = one.path
    token = folder / ".share-token"
    assert token.read_text("ascii").strip() == path.split("/")[1]
    assert len(path.split("/")[1]) >= 43
    assert stat.S_IMODE(token.stat().st_mode) == 0o600
    token.chmod(0o644)
    with shared(folder) as one:
        assert one.path == path
    assert stat.S_IMODE(token.stat().st_mode) == 0o600


def test_two_plans_have_two_addresses(folder: Path, tmp_path: Path, stages: Stages) -> None:
    other = stages.first.laid_out(tmp_path / "other")
    with shared(folder) as one, shared(other) as two:
        assert one.path != two.path


def test_ctrl_c_ends_it_cleanly(feed: Feed) -> None:
    feed.process.send_signal(signal.SIGINT)
    said, _ = feed.process.communicate(timeout=30)
    assert feed.process.returncode == 0
    assert said.strip() == "No longer shared."


def test_only_this_computer_is_told_unless_the_grower_says_otherwise(folder: Path) -> None:
    with shared(folder, "--host", "0.0.0.0") as one:  # noqa: S104 - what is tested
        assert one.status() == 200
        assert one.status(Host="192.168.7.7:80") == 200
        assert one.ask(Host="garden.example")[:2] == _NOTHING


@pytest.mark.parametrize("options", [(), ("--host", "0.0.0.0")])  # noqa: S104 - as above
def test_other_devices_are_let_in_with_a_word_of_caution(
    folder: Path, options: tuple[str, ...]
) -> None:
    command = [*PROGRAM, "share", str(folder), "--port", "0", *options]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        lines = [process.stdout.readline() for _ in range(4 if options else 3)]
        process.kill()
    assert any("Take care" in line for line in lines) == bool(options)
    assert "Ctrl-C" in lines[-1]


def test_a_port_that_is_taken_is_one_problem(feed: Feed) -> None:
    result = planner("share", feed.folder, "--port", str(feed.port))
    assert result.returncode == 2
    assert result.stdout == ""
    assert "name another port with --port" in result.stderr


@pytest.mark.parametrize("damage", ["", "short", "a/../" * 20, "é" * 50])
def test_a_token_not_made_here_is_no_address(folder: Path, damage: str) -> None:
    (folder / ".share-token").write_text(damage, "utf-8")
    before = contents(folder)
    result = planner("share", folder, "--port", "0")
    assert result.returncode == 2
    assert "take the file away" in result.stderr
    assert contents(folder) == before


def test_without_a_season_there_is_nothing_to_share(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan")
    result = planner("share", plan, "--port", "0")
    assert result.returncode == 2
    assert "no season yet" in result.stderr
    assert set(contents(plan)) == {"garden.toml"}
