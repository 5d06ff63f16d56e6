"""A season made once, the page of it shared on this computer, and a browser to look at both."""

import http.client
import json
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from typer.testing import CliRunner

from planner.cli.app import app
from planner.cli.share.command import pages_of
from planner.cli.share.page_server import PageServer
from tests.node_packages import missing_for_test, node_package
from tests.plans import QUICK
from tests.season_runs import SMALL_PLAN, plan_folder

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext, Page

MADE_ON, LOOKED_AT = date(2027, 3, 15), date(2027, 5, 20)
TOKEN = "w" * 43
# A bed with a name that would be markup, a plan that a journal can speak of.
PLAN = SMALL_PLAN.replace('name = "Barrel"', """name = '<b onclick="x()">Barrel</b> & "co"'""")
CHROMIUM = ("chromium", "chromium-browser")
_QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
)


@pytest.fixture(scope="session")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A plan folder with its season; not to be written into."""
    folder = plan_folder(tmp_path_factory.mktemp("page") / "plan", PLAN).path
    words = ["schedule", str(folder), "--as-of", str(MADE_ON), *QUICK]
    result = CliRunner().invoke(app, words)
    assert result.exit_code == 0, result.output
    return folder


@pytest.fixture
def folder(tmp_path: Path, made: Path) -> Path:
    """The same, for one test alone."""
    return shutil.copytree(made, tmp_path / "plan")


@dataclass(frozen=True, slots=True)
class Shared:
    """A plan folder and the address it is shared at."""

    folder: Path
    port: int

    @property
    def base(self) -> str:
        return f"http://127.0.0.1:{self.port}/{TOKEN}/"

    @property
    def journal(self) -> list[str]:
        """The lines of the journal below its first."""
        path = self.folder / "journal.csv"
        return path.read_text("utf-8").splitlines()[1:] if path.exists() else []

    def task(self, kind: str, number: int = 0) -> dict[str, Any]:
        """A task of a kind, in the order of the season."""
        record = json.loads((self.folder / "season" / "season.json").read_bytes())
        found: dict[str, Any] = [one for one in record["tasks"] if one["kind"] == kind][number]
        return found

    def send(
        self,
        body: bytes | dict[str, object],
        name: str = "tick",
        token: str = TOKEN,
        **headers: str | None,
    ) -> tuple[int, bytes]:
        """Status and content of the answer to what the page's script would send."""
        told = {
            "Host": f"127.0.0.1:{self.port}",
            "Origin": f"http://127.0.0.1:{self.port}",
            "Content-Type": "application/json",
            **{key.replace("_", "-"): value for key, value in headers.items()},
        }
        content = body if isinstance(body, bytes) else json.dumps(body).encode()
        told.setdefault("Content-Length", str(len(content)))
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            connection.putrequest("POST", f"/{token}/{name}", skip_host=True)
            for key, value in told.items():
                if value is not None:
                    connection.putheader(key, value)
            connection.endheaders()
            connection.send(content)
            answer = connection.getresponse()
            return answer.status, answer.read()
        finally:
            connection.close()

    def read(self, name: str = "", **headers: str) -> tuple[int, str, dict[str, str]]:
        """Status, content and headers of a page."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            connection.request("GET", f"/{TOKEN}/{name}", headers=headers)
            answer = connection.getresponse()
            return answer.status, answer.read().decode(), dict(answer.getheaders())
        finally:
            connection.close()

    def tick(self, **told: object) -> tuple[int, str]:
        """Status of a tick, and what it says."""
        status, content = self.send({"seen": 0, **told})
        return status, " ".join(json.loads(content)["said"])


@contextmanager
def sharing(folder: Path) -> Iterator[Shared]:
    pages = pages_of(folder, TOKEN, "127.0.0.1", lambda: LOOKED_AT)
    with PageServer("127.0.0.1", 0, pages) as server:
        thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05})
        thread.start()
        try:
            yield Shared(folder, server.server_port)
        finally:
            server.shutdown()
            thread.join()


@pytest.fixture
def shared(folder: Path) -> Iterator[Shared]:
    with sharing(folder) as one:
        yield one


@pytest.fixture(scope="session")
def browser() -> "Iterator[Browser]":
    """Debian's Chromium, started once."""
    program = next(filter(None, map(shutil.which, CHROMIUM)), None)
    if program is None:
        missing_for_test("chromium not found, so no browser can open the page")
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where there is one

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=list(_QUIET))
        yield browser
        browser.close()


@dataclass(frozen=True, slots=True)
class Phone:
    """A page in a browser of its own, what it asked the network for, and what went wrong in it."""

    page: "Page"
    asked: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)


@contextmanager
def _phone(browser: "Browser", width: int, **options: Any) -> Iterator[Phone]:
    context: BrowserContext = browser.new_context(
        viewport={"width": width, "height": 740}, reduced_motion="reduce", **options
    )
    context.set_default_timeout(20_000)
    one = Phone(context.new_page())
    one.page.clock.set_fixed_time(f"{LOOKED_AT}T10:00:00")
    one.page.on("request", lambda request: one.asked.append(request.url))
    one.page.on("pageerror", lambda error: one.wrong.append(str(error)))
    one.page.on("console", lambda said: one.wrong.append(said.text))
    yield one
    # An answer that refuses is told in the console too, and is what is asked for.
    one.wrong[:] = [words for words in one.wrong if "Failed to load resource" not in words]
    context.close()


@pytest.fixture
def phone(browser: "Browser") -> Iterator[Phone]:
    with _phone(browser, 360) as one:
        yield one
    assert one.wrong == []


@pytest.fixture
def other_phone(browser: "Browser") -> Iterator[Phone]:
    with _phone(browser, 360) as one:
        yield one


@pytest.fixture
def plain_phone(browser: "Browser") -> Iterator[Phone]:
    """One whose JavaScript is turned off."""
    with _phone(browser, 360, java_script_enabled=False) as one:
        yield one


@pytest.fixture(scope="session")
def axe() -> str:
    """axe-core, which holds a page against WCAG, as a script."""
    package = node_package("axe-core", "4.14.1", "axe-core cannot look at the page")
    return (package / "axe.min.js").read_text("utf-8")


def violations(page: "Page", axe: str) -> list[tuple[str, str]]:
    """What axe-core finds against WCAG 2.2 A and AA and its own best practice, with where."""
    session = page.context.new_cdp_session(page)
    session.send("Runtime.evaluate", {"expression": axe})
    found = page.evaluate("axe.run(document, { resultTypes: ['violations'] })")
    return [(one["id"], node["html"]) for one in found["violations"] for node in one["nodes"]]
