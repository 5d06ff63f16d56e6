"""The benchmarks run and measure what they say; how fast or how good it is they do not judge."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling.thumb.rule_of_thumb import Room, Thumb, rule_of_thumb
from planner.writing import write_calendars
from tests.benchmarks.calendar_load import joined_by_hand, rows, season_to_write
from tests.benchmarks.harvest_intervals import days_on_record, spreads
from tests.benchmarks.outlook_load import HEAD, Case, judged, lines_of, means_of
from tests.benchmarks.run import BASELINE_NAME, sample_plans
from tests.benchmarks.schedule_load import pieces_of
from tests.benchmarks.synthetic_gardens import garden_of, load_of, synthetic_garden
from tests.benchmarks.versions import differing, made, plans

_RUN = Path(__file__).with_name("run.py")
_LOAD = (sys.executable, "-m", "tests.benchmarks.schedule_load")
_REPOSITORY = Path(__file__).resolve().parents[2]


@pytest.mark.skipif(not hasattr(os, "wait4"), reason="needs the cost of a single process")
def test_the_benchmark_completes_and_names_every_row() -> None:
    done = subprocess.run(
        [sys.executable, str(_RUN), "--repeat", "1"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    expected = [BASELINE_NAME, "planner --help"]
    for plan in sample_plans():
        expected += [f"planner {verb} {plan}" for verb in ("check", "schedule", "week")]
    assert len(expected) > 2
    lines = done.stdout.splitlines()
    rows = lines[1 : 1 + len(expected)]
    for name, row in zip(expected, rows, strict=True):
        assert row.startswith(f"{name} "), row
        cpu_s, ratio, peak_mb = map(float, row.removeprefix(name).split())
        assert min(cpu_s, ratio, peak_mb) >= 0
    # Everything is aligned on the right.
    assert len({len(line) for line in lines[: 1 + len(expected)]}) == 1


@pytest.mark.skipif(not hasattr(os, "wait4"), reason="needs the cost of a single process")
def test_schedules_of_made_up_gardens_stand_beside_the_rule_of_thumb() -> None:
    wanted = ["--size", "2x3", "--load", "0.5", "--load", "1.1"]
    done = subprocess.run(
        [*_LOAD, *wanted], capture_output=True, text=True, check=False, cwd=_REPOSITORY
    )
    assert done.returncode == 0, done.stderr
    head, *rows = done.stdout.splitlines()
    assert [row[:22].rstrip() for row in rows] == ["2x3 0.5 seed 1", "2x3 1.1 seed 1"]
    assert {len(row) for row in rows} == {len(head)}


def test_calendars_stand_beside_strings_joined_by_hand() -> None:
    season = season_to_write()
    by_hand, *ways = rows(season, 3)
    assert by_hand.ratio == 1
    assert [row.name for row in ways] == ["write_calendars, first", "write_calendars, again"]
    live = write_calendars(season, None).live
    for line in (b"UID:", b"BEGIN:VALARM", b"DTSTART;VALUE=DATE:"):
        assert joined_by_hand(season).count(line) == live.count(line) > 400


@pytest.mark.parametrize("load", [0.5, 0.75, 1.1])
@pytest.mark.parametrize(("beds", "crops"), [(1, 2), (3, 10), (14, 15)])
def test_a_made_up_garden_asks_for_its_load_of_ground(beds: int, crops: int, load: float) -> None:
    garden = garden_of(synthetic_garden(beds, crops, load, seed=7))
    assert len(garden.beds) == beds
    assert len(garden.crops) == crops
    # Amounts are written with three figures, and less is known of weeks at a window's end.
    assert load_of(garden) == pytest.approx(load, rel=0.1)


def test_a_made_up_garden_is_the_same_for_the_same_seed_only() -> None:
    texts = [synthetic_garden(3, 5, 0.75, seed) for seed in (1, 1, 2)]
    assert texts[0] == texts[1] != texts[2]


@pytest.mark.parametrize("seed", range(1, 5))
def test_every_crop_of_a_made_up_garden_fits_a_bed(seed: int) -> None:
    garden = garden_of(synthetic_garden(3, 10, 0.75, seed))
    assert all(any(map(crop.fits, garden.beds)) for crop in garden.crops.values())


def test_blocks_of_a_sowing_that_touch_in_a_bed_are_one_piece() -> None:
    blocks = [
        {"bed": "North", "from_m": 0.0, "to_m": 1.0},
        {"bed": "North", "from_m": 1.0, "to_m": 1.5},
        {"bed": "North", "from_m": 2.0, "to_m": 2.5},
        {"bed": "South", "from_m": 2.5, "to_m": 3.0},
    ]
    assert pieces_of({"sowings": [{"blocks": blocks}, {"blocks": blocks[:1]}]}) == 4


@pytest.mark.parametrize("thumb", list(Thumb))
@pytest.mark.parametrize("seed", range(1, 4))
def test_endless_ground_never_feeds_less(thumb: Thumb, seed: int) -> None:
    garden: Garden = garden_of(synthetic_garden(3, 8, 1.1, seed))
    limited, unlimited = (
        rule_of_thumb(garden, Climate(garden.site), garden.wish.first, thumb, room)
        for room in (Room.LIMITED, Room.UNLIMITED)
    )
    assert limited.fill <= unlimited.fill + 1e-9
    assert limited.sowings <= unlimited.sowings
    assert all(limited.shares[crop] <= unlimited.shares[crop] + 1e-9 for crop in limited.shares)


@pytest.mark.skipif(not hasattr(os, "wait4"), reason="needs the cost of a single process")
def test_a_revision_stands_beside_planning_anew() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.benchmarks.revision_load", "--size", "2x3", "--seed", "1"],
        capture_output=True,
        text=True,
        check=False,
        cwd=_REPOSITORY,
    )
    assert done.returncode == 0, done.stderr
    head, row = done.stdout.splitlines()
    assert row.startswith("2x3 seed 1 ")
    assert len(row) == len(head)


def test_harvest_intervals_of_a_real_year_are_taken_kept_and_revised() -> None:
    days = days_on_record()
    as_planned, as_revised = spreads(days, days[-1][0].year)
    assert 0 < as_planned < 7
    assert 0 < as_revised < 7


@pytest.mark.parametrize("garden", ["sample", "0.4"])
def test_a_season_is_judged_by_years_it_was_not_planned_from(garden: str) -> None:
    case = Case("brussels", garden, seed=1, half=0)
    judgement = judged(case, effort=0, beds=3, crops=4)
    season, packet, knows = judgement.plans
    assert (season.inside.years, season.outside.years) == (15, 15)
    for one in judgement.plans:
        assert 0 < one.outside.fill < one.likely < 1
        # No plan has what no sowing on any day reaches.
        assert one.outside.fill <= judgement.reach <= 1
    assert max(packet.likely, knows.likely) < season.likely
    # The shortfall of what could be had is the smaller part of it.
    assert judgement.mend(knows) < judgement.short(knows) < 1
    assert {len(line) for line in lines_of(case.name, judgement)} == {len(HEAD)}
    assert f"{season.outside.fill:.3f} outside" in means_of(garden, [judgement])


def test_versions_of_python_are_held_together_file_by_file() -> None:
    assert differing({"a": b"1", "b": b"2"}, {"a": b"1", "b": b"3", "c": b""}) == ["b", "c"]
    plan = plans()["stony_ridge"]
    files = made(sys.executable, plan, 1)
    assert {"garden.toml", "season/season.json", "season/sheets.pdf"} <= files.keys()
    assert differing(files, made(sys.executable, plan, 3)) == []
