"""Bed work on the page: what the plan asks for and no more, as `planner bedwork` tells it."""

import re
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from planner.bedwork import BedWater, away_work_of, seed_of, turnovers_of, water_of
from planner.climate import Climate
from planner.garden import NoDrip
from planner.page import season_page
from planner.season import Season, make_season
from planner.terms import Unit
from planner.writing import bedwork_by_week, run_words, turnover_words, water_words
from tests.page.test_season_page import Reader
from tests.plan_text import garden_of
from tests.season_runs import SMALL_PLAN

_BED = 'soil_depth = "18 in"\nsun = "full"\n'
_ASKED = {
    "new": (_BED, f'{_BED}new = true\nflow = "3 gal in 15 min"\n'),
    "manure": ("[[target]]", '[[manure]]\nbed = "Barrel"\non = 2027-03-10\n\n[[target]]'),
}


def _plan(*asked: str) -> str:
    plan = SMALL_PLAN
    for one in asked:
        plan = plan.replace(*_ASKED[one], 1)
    return plan


@cache
def _season(*asked: str) -> Season:
    garden = garden_of(_plan(*asked))
    return make_season(garden, garden.wish.first, None, 0)


def _section(season: Season) -> str:
    page = season_page(season)
    return page[page.index('<section id="bedwork"') : page.index('<section id="sowings"')]


def _heads(season: Season) -> list[str]:
    """The parts that can be opened, without those within them."""
    pattern = r'class="bedwork"><summary><span class="which">([^<]*)<'
    return re.findall(pattern, _section(season))


def test_every_part_the_plan_asks_for_is_there_in_the_order_of_the_command() -> None:
    assert _heads(_season("new", "manure")) == [
        "Filling new beds",
        "Turnover",
        "Raw manure",
        "Water, bed by bed",
        "For whoever waters",
        "Seed to order",
    ]


@pytest.mark.parametrize(("asked", "head"), [("new", "Filling new beds"), ("manure", "Raw manure")])
def test_a_part_the_plan_does_not_ask_for_is_left_out(asked: str, head: str) -> None:
    assert head not in _heads(_season())
    assert head in _heads(_season(asked))


def test_a_season_in_which_nothing_is_sown_asks_for_nothing() -> None:
    empty = replace(_season(), sowings=(), tasks=())
    empty = replace(empty, garden=replace(empty.garden, wish=replace(empty.garden.wish, away=())))
    assert _heads(empty) == []
    assert "The plan asks for no bed work." in _section(empty)


def test_cautions_stand_with_the_part_they_belong_to_and_once() -> None:
    section = _section(_season("new", "manure"))
    filling, turnover = (section.index(f">{one}<") for one in ("Filling new beds", "Turnover"))
    manure, water = (section.index(f">{one}<") for one in ("Raw manure", "Water, bed by bed"))
    assert filling < section.index("<strong>Soil lead</strong>") < turnover
    assert turnover < section.index("<strong>Blades</strong>") < manure
    assert manure < section.index("<strong>Raw manure</strong>") < water
    assert section.count("<strong>Dust and soil germs</strong>") == 1
    assert "<strong>Soil lead</strong>" not in _section(_season())


def test_each_turnover_and_each_crop_to_buy_is_told() -> None:
    season = _season()
    text = Reader(season_page(season)).text
    for one in turnovers_of(season.garden, season.sowings):
        assert " ".join(turnover_words(one).split()) in text
    for need in seed_of(season.garden, season.sowings, season.as_of).needs:
        assert f"{need.crop.name}: {need.to_buy} seed" in text


def test_each_watered_week_of_each_bed_lies_in_a_row() -> None:
    """Weeks on end that are alike share a row, so rows are as many as the amount changes."""
    season = _season("new")
    water = water_of(season.garden, Climate(season.garden.site), season.sowings)
    section = _section(season)
    for bed, starts in (
        ("Barrel", "Water for Barrel"),
        (season.garden.beds[0].name, "Water for U"),
    ):
        table = section[section.index(f"<caption>{starts}") :].partition("</table>")[0]
        amounts = [
            _amount(one, season.garden.beds[0].note.unit)
            for week in water.weeks
            for one in week.beds
            if one.bed.name == bed and one.volume_l > 0
        ]
        changes = sum(one != other for one, other in pairwise(amounts))
        assert len(amounts) >= table.count("<tr>") - 1 >= changes + 1
        assert all(f"<td>{one}</td>" in table for one in amounts)


def _amount(one: BedWater, unit: Unit) -> str:
    if isinstance(one.runs, NoDrip):
        return f"{water_words(one.volume_l, unit)} by hand"
    return f"3 times: {run_words(one.runs.minutes, one.runs.parts)}"


def test_whoever_waters_finds_days_beds_and_what_to_leave_alone() -> None:
    season = _season()
    text = Reader(season_page(season)).text
    water = water_of(season.garden, Climate(season.garden.site), season.sowings)
    (away,) = away_work_of(water, season.sowings, season.as_of)
    assert "18 July 2027 to 26 July 2027" in text
    for day in away.days:
        assert f"{day:%a} {day.day} {day:%b}" in text
    assert "Do not feed, spray, prune, pull or move anything" in text


def test_every_week_has_its_bed_work_and_what_must_not_be_picked_yet() -> None:
    season = _season("new", "manure")
    page = season_page(season)
    told = bedwork_by_week(season.garden, season.sowings)
    assert any(one.not_yet for one in told.values())
    for week, bedwork in told.items():
        part = page[page.index(f'id="week-{week}"') :].partition("</details>")[0]
        text = Reader(f"<div {part}</div>").text
        for line in (*bedwork.not_yet, *bedwork.work):
            assert " ".join(line.split()) in text
