"""Labels to cut out, and the list of what is raised indoors."""

import re
from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from planner.garden import Emergence, HeatNeeds, Paper
from planner.scheduling import SowingState
from planner.sheets import write_labels, write_seed_starting
from planner.tasks import TaskKind
from tests.sheets.paper_read import (
    POINTS_PER_MM,
    SIZES_MM,
    ReadPdf,
    faults_of,
    joined,
    tick_boxes,
    told,
)
from tests.sheets.works import PLANS, SAFE_FROM, draft, on_paper, picked_safely

_SMALLEST_PT = 11
_PICKED = re.compile("pick from about|do not pick before")
_CASES = [(plan, paper) for plan in PLANS for paper in Paper]


@cache
def _labels(plan: str, paper: Paper) -> ReadPdf:
    return ReadPdf(write_labels(on_paper(draft(plan), paper)))


@cache
def _seeds(plan: str, paper: Paper) -> ReadPdf:
    return ReadPdf(write_seed_starting(on_paper(draft(plan), paper)))


def _day(day: date) -> str:
    return f"{day:%a} {day.day} {day:%b}"


_UNTIL = _day(SAFE_FROM)


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_both_fit_their_paper_in_black_and_large(plan: str, paper: Paper) -> None:
    width, height = SIZES_MM[paper.value]
    for pdf, size in (
        (_labels(plan, paper), (width, height)),
        (_seeds(plan, paper), (height, width)),
    ):
        for page in pdf.pages:
            found = (page.width / POINTS_PER_MM, page.height / POINTS_PER_MM)
            assert found == pytest.approx(size, abs=0.01)
            assert faults_of(page, _SMALLEST_PT) == []


@pytest.mark.parametrize("plan", PLANS)
def test_each_block_of_each_sowing_has_its_label(plan: str) -> None:
    work = draft(plan)
    text = " ".join(
        joined(half.extract_text())
        for page in _labels(plan, Paper.A4).pages
        for half in (
            page.crop((0, 0, page.width / 2, page.height)),
            page.crop((page.width / 2, 0, page.width, page.height)),
        )
    )
    for sowing in work.sowings:
        begun = (
            f"indoors {_day(sowing.sow_on)}, out {_day(sowing.set_out_on)} {sowing.set_out_on.year}"
            if sowing.set_out_on
            else f"into the bed {_day(sowing.sow_on)} {sowing.sow_on.year}"
        )
        for block in sowing.blocks:
            label = rf"{re.escape(sowing.id)} (\d of \d )?{begun} {re.escape(block.bed)} "
            assert re.search(label, text), label
        safe = picked_safely(plan, sowing)
        assert (f"pick from about {_day(safe[0])}" if safe else f"not pick before {_UNTIL}") in text
    assert len(_PICKED.findall(text)) == sum(len(one.blocks) for one in work.sowings)


def test_a_label_is_of_one_size_and_its_words_stay_within_it() -> None:
    """Ten labels are on a sheet, two beside each other; cut lines cross no word."""
    for page in _labels("ferry_street", Paper.LETTER).pages:
        middle = page.width / 2
        for word in page.extract_words():
            inside = word["bottom"] < page.height - 20 * POINTS_PER_MM
            assert not inside or not word["x0"] < middle < word["x1"]


def test_what_is_cleared_or_lost_gets_no_label() -> None:
    work = draft("stony_ridge")
    lost, *others = work.sowings
    work = replace(work, sowings=(replace(lost, state=SowingState.LOST), *others))
    text = " ".join(ReadPdf(write_labels(work)).texts)
    assert len(_PICKED.findall(text)) == sum(len(one.blocks) for one in others)


@pytest.mark.parametrize("plan", PLANS)
def test_each_sowing_raised_indoors_has_a_row_with_a_box_and_its_days(plan: str) -> None:
    work = draft(plan)
    pdf = _seeds(plan, Paper.A4)
    raised = [one for one in work.sowings if one.set_out_on]
    assert sum(len(tick_boxes(page)) for page in pdf.pages) == len(raised)
    rows = [_row for page in pdf.pages for table in page.extract_tables() for _row in table]
    found = {joined(row[2]): [joined(cell or "") for cell in row] for row in rows}
    harden = {one.sowing: one.on for one in work.tasks if one.kind is TaskKind.HARDEN_OFF}
    for sowing in raised:
        _, start, _, amount, depth, _, up, _, harden_off, set_out = found[sowing.id]
        assert start == _day(sowing.sow_on)
        assert amount.startswith(f"{sowing.seeds} seed")
        assert f"for {sowing.plants} plant" in amount
        assert depth
        assert up.endswith(f"about {_day(sowing.emerges_on)}")
        assert harden_off == _day(harden[sowing.id])
        assert sowing.set_out_on
        assert set_out == _day(sowing.set_out_on)
    assert len(found) == len(raised) + 1  # the head


def test_warmth_is_that_of_the_crops_figures_in_the_growers_degrees() -> None:
    """tern_bay is metric: its tables of emergence are in degC as they were published."""
    work = draft("tern_bay")
    rows = [
        row
        for page in _seeds("tern_bay", Paper.A4).pages
        for table in page.extract_tables()
        for row in table
    ]
    warmth = {joined(row[2]): joined(row[5]) for row in rows}
    checked = 0
    for sowing in work.sowings:
        heat = sowing.crop.heat
        if sowing.set_out_on and isinstance(heat, HeatNeeds):
            low, high = heat.germinates_from.low, heat.germinates_to.high
            assert warmth[sowing.id].startswith(f"{low:.0f} to {high:.0f} degC")
            assert isinstance(heat.emergence, Emergence)
            quickest = min(days for _, days in heat.emergence.points)
            degc = int(warmth[sowing.id].rpartition(" ")[2])
            assert dict(heat.emergence.points)[degc] == quickest
            checked += 1
    assert checked


def test_fahrenheit_goes_with_feet() -> None:
    """35 to 86 degF are the 35 and 85 degF of the seed tables, kept in degC to a tenth."""
    text = told(_seeds("ferry_street", Paper.LETTER).pages[0])
    assert re.search(r"leaf lettuce 1 .*35 to 8[56] degF", text)


def test_nothing_to_start_or_to_label_is_said() -> None:
    work = replace(draft("stony_ridge"), sowings=(), tasks=())
    (labels,) = ReadPdf(write_labels(work)).texts
    (seeds,) = ReadPdf(write_seed_starting(work)).texts
    assert labels.startswith("Nothing to label from Fri 15 Jan 2027 on.")
    assert seeds.startswith(
        "To start indoors Nothing is in trays or to be started in them from Fri 15 Jan 2027 on."
    )


def test_both_are_the_same_bytes_each_time() -> None:
    work = draft("tern_bay")
    assert write_labels(work) == write_labels(work)
    assert write_seed_starting(work) == write_seed_starting(work)
