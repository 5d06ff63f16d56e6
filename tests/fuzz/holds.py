"""What must hold of a command, whatever the files hold: run in this process, output caught."""

import json
import os
import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

from hypothesis import HealthCheck, settings
from typer.testing import CliRunner

from planner.cli.app import app
from planner.terms import PROBLEM_KINDS
from tests.plans import SEASON_FILES, contents
from tests.verifier import broken_rules_of

# More by hand: FUZZ_CASES=10000.
_USUAL_CASES = 120
_CASES = int(os.environ.get("FUZZ_CASES", _USUAL_CASES))
_TITLES = {kind.title for kind in PROBLEM_KINDS.values()}
_STATUSES = {0, 1, 2}
DRAFT = ("--as-of", "2027-01-15", "--effort", "0")
_SHOWN_MOST = 100_000
_STEERS = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
# Of freezes on record the verifier knows no days.
_NOT_BY_RECORD = "tender crops stand out of frost"


def cases(share: float) -> settings:
    """Settings for a share of all cases: the same ones each time, and others by hand."""
    return settings(
        max_examples=max(1, round(_CASES * share)),
        deadline=None,
        database=None,
        derandomize="FUZZ_CASES" not in os.environ,
        suppress_health_check=[
            HealthCheck.too_slow,
            HealthCheck.data_too_large,
            HealthCheck.function_scoped_fixture,
        ],
    )


@dataclass(frozen=True, slots=True)
class Ran:
    """How a command left, and what it told."""

    status: int
    out: str
    told: str


def run(*words: str | Path) -> Ran:
    """Run a command in this process; whatever it raises beyond leaving is a fault of ours."""
    result = CliRunner().invoke(app, [str(word) for word in words])
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    ran = Ran(result.exit_code, result.stdout, result.stderr)
    assert ran.status in _STATUSES, ran
    assert "Traceback" not in ran.told + ran.out
    if ran.status == 2 and not ran.out:
        assert_problems(ran.told)
    return ran


def assert_problems(told: str) -> None:
    """Problems are told one by one, each with its place, what is wrong, and what to do."""
    assert told.strip()
    assert not _STEERS.search(told), f"steers the screen: {told!r}"
    for one in told.rstrip("\n").split("\n\n"):
        if re.fullmatch(r"\d+ problems in all\.", one):
            continue
        place, _, title = one.split("\n", 1)[0].rpartition(": ")
        assert place, one
        assert title in _TITLES, one
        assert one.count("\n  What to do: ") == 1, one
        assert len(one) < _SHOWN_MOST


def assert_whole(plan: Path) -> None:
    """A season is there, of one run, and no leavings beside it."""
    assert {path.name for path in (plan / "season").iterdir() if path.is_file()} == SEASON_FILES
    record = json.loads((plan / "season" / "season.json").read_bytes())
    assert record["format"] == 1
    for name in ("calendar.ics", "calendar-update.ics"):
        assert (plan / "season" / name).read_bytes().endswith(b"END:VCALENDAR\r\n")
    assert not list(plan.glob("season.*"))
    assert (plan / "season" / "season.html").read_bytes().rstrip().endswith(b"</html>")


def broken_in(plan: Path) -> list[str]:
    """The rules a season breaks, by the independent verifier."""
    names = ("garden.toml", "crops.toml", "season/season.json", "season/harvest.csv")
    held = contents(plan)
    files = {name: held[name].decode("utf-8-sig") for name in names if name in held}
    garden, record = files["garden.toml"], json.loads(files["season/season.json"])
    harvest = files["season/harvest.csv"]
    on_record = not {"station", "last_spring_freeze"} & set(tomllib.loads(garden)["site"])
    return [
        words
        for words in broken_rules_of(garden, files.get("crops.toml", ""), record, harvest)
        if not (on_record and words.startswith(_NOT_BY_RECORD))
    ]


def assert_checked_and_scheduled(plan: Path) -> Ran:
    """What `check` passes, `schedule` makes into a whole and right season; the rest it refuses.

    What was there before is either whole afterwards or gone for the new season.
    """
    before = contents(plan)
    checked = run("check", plan)
    assert contents(plan) == before
    as_json = run("check", plan, "--json")
    assert as_json.status == checked.status
    problems = json.loads(as_json.out)
    assert bool(problems) == (checked.status == 2)
    assert all(one["file"] and one["wrong"] and one["remedy"] for one in problems)
    made = run("schedule", plan, *DRAFT)
    assert made.status == checked.status, made.told
    if made.status:
        assert contents(plan) == before
        return made
    assert_whole(plan)
    kept = {name: content for name, content in contents(plan).items() if "season" not in name}
    assert kept == {name: content for name, content in before.items() if "season" not in name}
    assert broken_in(plan) == []
    return made


def assert_shown_and_remade(plan: Path) -> None:
    """What a season holds can be shown, tried in past years, and made again to the same bytes."""
    written = contents(plan)
    record = json.loads(written["season/season.json"])
    assert run("week", plan, "--of", "2027-05-12").status == 0
    assert run("outlook", plan).status == 0
    assert run("bedwork", plan).status == 0
    for sowing in record["sowings"][:1]:
        assert run("why", plan, sowing["id"]).status == 0
    assert run("schedule", plan, *DRAFT).status == 0
    assert contents(plan) == written
