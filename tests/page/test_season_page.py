"""season.html as a file: whole, closed to the network, and the same from the same season."""

import base64
import hashlib
import json
import re
import shutil
from datetime import date
from html.parser import HTMLParser
from pathlib import Path

import pytest
from typer.testing import CliRunner

from planner.cli.app import app
from tests.page.conftest import MADE_ON
from tests.plans import QUICK
from tests.season_runs import REPOSITORY, TRYING_BED, TRYING_NAME, copy_of

_LARGEST_BYTES = 1_500_000
_WITHOUT_END = {"meta", "input", "br", "link"}


class Reader(HTMLParser):
    """A page as the standard library's parser reads it: elements, attributes, and text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.texts: list[str] = []
        self.scripts: dict[str, str] = {}
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in _WITHOUT_END:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag, f"</{tag}> closes nothing"

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] in {"script", "style"}:
            self.scripts[self.open[-1]] = data
        else:
            self.texts.append(data)

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.texts).split())


@pytest.fixture(scope="module")
def page(made: Path) -> str:
    return (made / "season" / "season.html").read_text("utf-8")


@pytest.fixture(scope="module")
def read(page: str) -> Reader:
    return Reader(page)


def test_every_element_is_closed_and_every_name_is_given_once(read: Reader) -> None:
    assert read.open == []
    names = [told["id"] for _, told in read.elements if "id" in told]
    assert len(names) == len(set(names))
    links = {str(told["href"]) for tag, told in read.elements if tag == "a"}
    assert links
    assert {one.removeprefix("#") for one in links} <= set(names)


def test_every_task_every_sowing_and_every_reason_is_there(made: Path, read: Reader) -> None:
    record = json.loads((made / "season" / "season.json").read_bytes())
    for task in record["tasks"]:
        assert " ".join(task["text"].split()) in read.text
    for sowing in record["sowings"]:
        for why in sowing["why"]:
            assert " ".join(why.split()) in read.text
    for crop in {one["crop"] for one in record["unmet"] if one["kind"] != "nobody is there"}:
        assert f"What stays unmet of {crop}" in read.text
    assert "nobody is there to harvest" in read.text
    captions = [told.get("aria-label") or "" for _, told in read.elements]
    assert "What stands where, and when" in captions
    assert sum(one.startswith("Days of ") for one in captions) == len(record["sowings"])
    assert sum(" by week, in " in one for one in captions) == 3  # crops


def test_what_the_grower_writes_is_never_markup(read: Reader) -> None:
    assert f"{TRYING_NAME}" in read.text
    assert TRYING_BED in read.text
    assert '<b onclick="x()">Barrel</b> & "co"' in read.text
    assert not [told for _, told in read.elements if any(key.startswith("on") for key in told)]
    assert "b" not in {tag for tag, _ in read.elements}


def test_the_page_forbids_itself_everything_but_its_own_style_and_script(read: Reader) -> None:
    """Hashes as in CSP level 3, 6.7.3.3: base64 of the SHA-256 of what is between the tags."""
    policies = [
        str(told["content"])
        for tag, told in read.elements
        if told.get("http-equiv") == "Content-Security-Policy"
    ]
    hashes = {
        name: base64.b64encode(hashlib.sha256(content.encode()).digest()).decode()
        for name, content in read.scripts.items()
    }
    within = f"style-src 'sha256-{hashes['style']}'; script-src 'sha256-{hashes['script']}'"
    assert policies == [f"default-src 'none'; {within}; base-uri 'none'; form-action 'none'"]
    assert not [told for _, told in read.elements if {"src", "style", "srcset"} & told.keys()]
    addresses = set(re.findall(r"https?://[^\s\"'<)]+", json.dumps(read.elements)))
    assert addresses <= {"http://www.w3.org/2000/svg"}


def test_the_same_season_gives_the_same_bytes(made: Path, tmp_path: Path) -> None:
    again = copy_of(made, tmp_path / "again").path
    words = ["schedule", str(again), "--as-of", str(MADE_ON), *QUICK]
    assert CliRunner().invoke(app, words).exit_code == 0
    name = Path("season") / "season.html"
    assert (again / name).read_bytes() == (made / name).read_bytes()


def test_a_garden_of_fourteen_beds_is_no_burden_for_a_phone(tmp_path: Path) -> None:
    plan = copy_of(REPOSITORY / "sample_plans" / "ferry_street", tmp_path / "plan").path
    words = ["schedule", str(plan), "--as-of", str(date(2027, 1, 15)), *QUICK]
    assert CliRunner().invoke(app, words).exit_code == 0
    assert (plan / "season" / "season.html").stat().st_size < _LARGEST_BYTES


def test_a_plan_without_any_sowing_has_a_page_too(made: Path, tmp_path: Path) -> None:
    plan = Path(shutil.copytree(made, tmp_path / "plan", ignore=lambda *_: {"season"}))
    garden = (plan / "garden.toml").read_text("utf-8")
    (plan / "garden.toml").write_text(garden, "utf-8")
    words = ["schedule", str(plan), "--as-of", "2027-11-30", *QUICK]
    assert CliRunner().invoke(app, words).exit_code == 0
    read = Reader((plan / "season" / "season.html").read_text("utf-8"))
    assert read.open == []
    assert "Nothing more is to do this season." in read.text
