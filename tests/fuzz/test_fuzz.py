"""Cases made up by chance. By hand: FUZZ_CASES=10000, and --hypothesis-seed=N for other ones."""

import json
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import typer
from hypothesis import given
from hypothesis import strategies as st

from planner.cli.folder.season_calendars import season_events
from planner.cli.publish.published import PUBLISHED, published_record
from planner.cli.share.address import SHARE_TOKEN
from planner.cli.share.page_server import PageServer
from tests.fuzz.harm import harmed_bytes, harmed_json, harmed_table, harmed_toml, json_bytes
from tests.fuzz.holds import (
    DRAFT,
    assert_checked_and_scheduled,
    assert_problems,
    assert_shown_and_remade,
    assert_whole,
    broken_in,
    cases,
    run,
)
from tests.fuzz.materials import (
    CROPS,
    JOURNAL,
    OWN_CROP,
    OWN_PLAN,
    WEATHER_PLAN,
    gardens,
    weather_files,
    write_case,
)
from tests.plans import GARDEN, contents, planner

Files = dict[str, bytes]
_LATER = ("--as-of", "2027-06-05", "--effort", "0")
_AT = "https://dav.example.org/robin/garden/"


@pytest.fixture(scope="module")
def first_season(tmp_path_factory: pytest.TempPathFactory) -> Files:
    """A small plan with its first season and a journal, as files."""
    files = {"garden.toml": GARDEN.encode()}
    plan = write_case(tmp_path_factory.mktemp("first") / "plan", files)
    assert run("schedule", plan, *DRAFT).status == 0
    return {**contents(plan), "journal.csv": JOURNAL.encode()}


# Plans


@cases(0.25)
@given(st.data())
def test_a_harmed_garden_is_refused_or_planned(tmp_path: Path, data: st.DataObject) -> None:
    garden = data.draw(st.sampled_from(gardens()))
    files = {"garden.toml": data.draw(harmed_toml(garden))}
    if "ridge radish" in garden:
        files["crops.toml"] = CROPS.encode()
    plan = write_case(tmp_path / "plan", files)
    made = assert_checked_and_scheduled(plan)
    if made.status == 0 and data.draw(st.integers(0, 3)) == 0:
        assert_shown_and_remade(plan)


@cases(0.08)
@given(st.data())
def test_a_garden_harmed_in_its_bytes_is_refused_or_planned(
    tmp_path: Path, data: st.DataObject
) -> None:
    garden = data.draw(st.sampled_from(gardens()))
    files = {
        "garden.toml": data.draw(harmed_bytes(garden.encode())),
        "crops.toml": CROPS.encode(),
    }
    assert_checked_and_scheduled(write_case(tmp_path / "plan", files))


@cases(0.15)
@given(st.data())
def test_harmed_crops_are_refused_or_planned(tmp_path: Path, data: st.DataObject) -> None:
    plain, wanted = data.draw(st.sampled_from(((CROPS, "ridge radish"), (OWN_CROP, "oca"))))
    harmed = st.one_of(harmed_toml(plain), harmed_bytes(plain.encode()))
    garden = OWN_PLAN.replace("ridge radish", wanted)
    files = {"garden.toml": garden.encode(), "crops.toml": data.draw(harmed)}
    assert_checked_and_scheduled(write_case(tmp_path / "plan", files))


@cases(0.15)
@given(st.data())
def test_a_harmed_weather_file_is_refused_or_planned(tmp_path: Path, data: st.DataObject) -> None:
    weather = data.draw(st.sampled_from(weather_files()))
    harmed = st.one_of(harmed_table(weather.decode()), harmed_bytes(weather))
    garden = WEATHER_PLAN
    if data.draw(st.booleans()):
        garden = garden.replace('weather_unit = "degC"\n', "")
    files = {"garden.toml": garden.encode(), "weather.csv": data.draw(harmed)}
    made = assert_checked_and_scheduled(write_case(tmp_path / "plan", files))
    if made.status == 0 and data.draw(st.integers(0, 7)) == 0:
        assert_shown_and_remade(tmp_path / "plan")


# What has happened, and what was there before


@cases(0.1)
@given(st.data())
def test_a_garden_harmed_after_its_season_was_made_is_refused_or_revised(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    garden = data.draw(harmed_toml(GARDEN))
    plan = write_case(tmp_path / "plan", {**first_season, "garden.toml": garden})
    before = contents(plan)
    checked = run("check", plan)
    made = run("schedule", plan, *_LATER)
    if made.status:
        assert checked.status or "what grows does not fit the plan any more" in made.told
        assert contents(plan) == before
    else:
        assert checked.status == 0
        assert_whole(plan)
        _assert_shown_or_refused(plan)


@cases(0.15)
@given(st.data())
def test_a_harmed_journal_is_refused_or_followed(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    harmed = st.one_of(harmed_table(JOURNAL), harmed_bytes(JOURNAL.encode()))
    plan = write_case(tmp_path / "plan", {**first_season, "journal.csv": data.draw(harmed)})
    before = contents(plan)
    checked = run("check", plan)
    made = run("schedule", plan, *_LATER)
    assert made.status == checked.status
    if made.status:
        assert contents(plan) == before
    else:
        assert_whole(plan)
        assert contents(plan)["journal.csv"] == before["journal.csv"]
    _assert_noted_or_refused(plan)


def _assert_noted_or_refused(plan: Path) -> None:
    """Whatever a journal holds, a new line is added whole, or nothing at all."""
    journal = plan / "journal.csv"
    was = journal.read_bytes()
    noted = run("log", plan, "picked", "radish 1", "--on", "2027-06-04", "--amount", "2 roots")
    now = journal.read_bytes()
    assert now.startswith(was)
    assert (now == was) == (noted.status == 2)


@cases(0.1)
@given(st.data())
def test_a_harmed_season_is_refused_or_revised(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    record: dict[str, Any] = json.loads(first_season["season/season.json"])
    plain = first_season["season/season.json"]
    harmed = st.one_of(harmed_json(record).map(json_bytes), harmed_bytes(plain))
    plan = write_case(tmp_path / "plan", {**first_season, "season/season.json": data.draw(harmed)})
    _assert_shown_or_refused(plan)
    _assert_revised_or_kept(plan)


def _assert_shown_or_refused(plan: Path) -> None:
    before = contents(plan)
    for words in (
        ("week", plan, "--of", "2027-05-12"),
        ("why", plan, "radish 1"),
        ("outlook", plan),
        ("bedwork", plan),
        ("check", plan),
    ):
        run(*words)
        assert contents(plan) == before


def _assert_revised_or_kept(plan: Path) -> None:
    before = contents(plan)
    if run("schedule", plan, *_LATER).status:
        assert contents(plan) == before
    else:
        assert_whole(plan)


@cases(0.05)
@given(st.data())
def test_a_harmed_calendar_is_refused_or_followed(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    name = data.draw(st.sampled_from(("season/calendar-update.ics", "season/calendar.ics")))
    plain = first_season[name]
    harmed = st.one_of(harmed_bytes(plain), harmed_table(plain.decode()))
    plan = write_case(tmp_path / "plan", {**first_season, name: data.draw(harmed)})
    _assert_leaves(lambda: season_events(plan))
    _assert_revised_or_kept(plan)


def _assert_leaves(act: Callable[[], object]) -> None:
    """Something is done, or left with status 2."""
    try:
        act()
    except typer.Exit as leaving:
        assert leaving.exit_code == 2  # noqa: PT017 - both ways are right


@cases(0.02)
@given(st.data())
def test_a_harmed_share_token_is_refused_or_shared(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    token = f"{'aZ09_-' * 8}\n".encode()
    harmed = st.one_of(harmed_bytes(token), st.binary(max_size=80))
    plan = write_case(tmp_path / "plan", {**first_season, SHARE_TOKEN: data.draw(harmed)})
    before = contents(plan)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(PageServer, "serve_forever", _interrupted)
        run("share", plan, "--port", "0")
    assert contents(plan) == before


def _interrupted(_: PageServer) -> None:
    raise KeyboardInterrupt


@cases(0.02)
@given(st.data())
def test_a_harmed_record_of_what_was_published_forgets_at_most_what_was_harmed(
    tmp_path: Path, data: st.DataObject
) -> None:
    lines = [{"at": _AT, "uid": f"u{n}", "imprint": f"i{n}"} for n in range(4)]
    plain = "".join(json.dumps(line) + "\n" for line in (*lines, {"at": _AT, "uid": "u0"}))
    harmed = st.one_of(harmed_bytes(plain.encode()), harmed_json(lines[0]).map(json_bytes))
    plan = write_case(tmp_path / "plan", {PUBLISHED: data.draw(harmed)})
    record = published_record(plan, _AT)
    record.sent("new", "imprint")
    assert published_record(plan, _AT).imprints == record.imprints


# In a process of its own


@cases(0.03)
@given(st.data())
def test_a_process_of_its_own_ends_the_same(tmp_path: Path, data: st.DataObject) -> None:
    garden = data.draw(st.sampled_from(gardens()))
    harmed = st.one_of(harmed_toml(garden), harmed_bytes(garden.encode()))
    files = {"garden.toml": data.draw(harmed), "crops.toml": CROPS.encode()}
    plan = write_case(tmp_path / "plan", files)
    ended: subprocess.CompletedProcess[str] = planner("check", plan)
    here = run("check", plan)
    assert (ended.returncode, ended.stdout) == (here.status, here.out)
    assert "Traceback" not in ended.stderr
    if ended.returncode:
        assert_problems(ended.stderr)


@cases(0.03)
@given(st.data())
def test_what_a_record_reads_again_breaks_no_rule(
    tmp_path: Path, first_season: Files, data: st.DataObject
) -> None:
    """A journal that stands leads to a season that can be read, revised and shown."""
    day = data.draw(st.sampled_from(("2027-04-30", "2027-06-05", "2027-08-20")))
    plan = write_case(tmp_path / "plan", {**first_season, "journal.csv": b""})
    assert run("schedule", plan, "--as-of", day, "--effort", "0").status == 0
    assert broken_in(plan) == []
    _assert_shown_or_refused(plan)
