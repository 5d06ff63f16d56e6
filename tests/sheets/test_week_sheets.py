"""The weeks' sheets, as the grower has them in hand."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from functools import cache

import pytest

from planner.garden import Paper
from planner.reading import NotedEntry, PlanFile, named_sowings, read_new_entry
from planner.scheduling import Block, Sowing
from planner.sheets import Work, write_season_sheets, write_week_sheet
from planner.tasks import Task, TaskKind
from planner.terms import UNITS, Week, length_words, week_of
from planner.writing import WeekBedwork
from tests.sheets.paper_read import (
    POINTS_PER_MM,
    SIZES_MM,
    ReadPdf,
    faults_of,
    joined,
    tick_boxes,
    told,
)
from tests.sheets.works import PLANS, draft, on_paper, picked_safely

# Where the drawings end and the words begin.
_WORDS_FROM_MM = 60
_SMALLEST_PT = 11
# So many tasks go on one page, whatever they are; more may.
_NORMAL_WEEK = 10
_LEAST_BOX_MM = 5
_INDOORS = {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF}
_CASES = [(plan, paper) for plan in PLANS for paper in Paper]
# A week as it is written in the language's own library, apart from the sheets' words.
_TITLE = (
    "Week {week:%V} {first:%a} {first.day} {first:%b} to {last:%a} {last.day} {last:%b} {last:%Y}"
)


@cache
def _sheets(plan: str, paper: Paper) -> ReadPdf:
    return ReadPdf(write_season_sheets(on_paper(draft(plan), paper), {}))


def _title(week: Week) -> str:
    first, last = week.monday, week.monday + timedelta(days=6)
    return _TITLE.format(week=first, first=first, last=last).replace("Week 0", "Week ")


def _weeks(plan: str, paper: Paper) -> Iterator[tuple[tuple[Task, ...], list[str]]]:
    """Each week's tasks, with the words right of the drawings on each of its pages."""
    tasks = {_title(week): tasks for week, tasks in draft(plan).weeks.items()}
    for title, pages in _sheets(plan, paper).weeks():
        yield tasks[title], [told(page, _WORDS_FROM_MM) for page in pages]


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_the_paper_has_its_size(plan: str, paper: Paper) -> None:
    width, height = SIZES_MM[paper.value]
    for page in _sheets(plan, paper).pages:
        assert page.width / POINTS_PER_MM == pytest.approx(width, abs=0.01)
        assert page.height / POINTS_PER_MM == pytest.approx(height, abs=0.01)


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_each_page_is_black_large_within_its_margins_and_nothing_lies_on_anything(
    plan: str, paper: Paper
) -> None:
    for page in _sheets(plan, paper).pages:
        assert faults_of(page, _SMALLEST_PT) == []


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_each_task_stands_once_on_its_weeks_sheet_and_whole_on_one_page(
    plan: str, paper: Paper
) -> None:
    seen = 0
    for tasks, pages in _weeks(plan, paper):
        sentences = [joined(one.text) for one in tasks]
        for sentence in set(sentences):
            wanted = sum(one.count(sentence) for one in sentences)
            assert sum(page.count(sentence) for page in pages) == wanted, sentence
        seen += len(tasks)
    assert seen == len(draft(plan).tasks)


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_what_is_done_in_a_bed_has_the_name_of_the_sowing_and_its_place(
    plan: str, paper: Paper
) -> None:
    for tasks, pages in _weeks(plan, paper):
        rows = {(one.on, one.sowing, _place(one)) for one in tasks if one.kind not in _INDOORS}
        for (sowing, place), days in Counter(row[1:] for row in rows).items():
            assert sum(page.count(f"{sowing} {place}") for page in pages) >= days


def _place(task: Task) -> str:
    """A place without what the foot of each page says of all, and the name left of the drawing."""
    place = task.place.replace(" from the marked end", "").replace(
        " clockwise along the rim from the mark", ""
    )
    return place if " + " in task.bed else place.replace(f"{task.bed}: ", "")


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_each_task_has_a_box_that_a_cold_hand_can_tick(plan: str, paper: Paper) -> None:
    for (tasks, _), (_, pages) in zip(
        _weeks(plan, paper), _sheets(plan, paper).weeks(), strict=True
    ):
        boxes = [box for page in pages for box in tick_boxes(page)]
        assert len(boxes) == len(tasks)
        inside = min((box["width"] - box["linewidth"]) / POINTS_PER_MM for box in boxes)
        assert inside >= _LEAST_BOX_MM


@pytest.mark.parametrize(("plan", "paper"), _CASES)
def test_a_normal_week_is_one_page_and_a_busy_one_runs_on_under_its_head(
    plan: str, paper: Paper
) -> None:
    for tasks, pages in _weeks(plan, paper):
        if len(tasks) <= _NORMAL_WEEK:
            assert len(pages) == 1
        assert len(pages) <= 1 + (len(tasks) + 3) // 12
    for _, pages in _sheets(plan, paper).weeks():
        assert ["(continued)" in told(page) for page in pages] == [
            number > 0 for number in range(len(pages))
        ]


@pytest.mark.parametrize("plan", PLANS)
def test_the_outline_leads_to_every_week_with_tasks(plan: str) -> None:
    weeks = [_title(week) for week in draft(plan).weeks]
    assert _sheets(plan, Paper.A4).bookmarks == weeks


@pytest.mark.parametrize("plan", PLANS)
def test_a_week_without_tasks_is_a_line_and_no_page(plan: str) -> None:
    work = draft(plan)
    first, last = min(work.weeks), max(work.weeks)
    idle = [week for week in first.until(last) if week not in work.weeks]
    text = " ".join(_sheets(plan, Paper.A4).texts)
    assert text.count(": nothing to do. ") == len(idle)
    for week in idle:
        assert f"{_title(week).replace(' Mon', ', Mon')}: nothing to do." in text


def test_only_weeks_from_the_day_of_planning_on_are_printed() -> None:
    later = date(2027, 6, 16)
    work = replace(draft("stony_ridge"), as_of=later)
    weeks = [_title(week) for week in work.weeks if week >= week_of(later)]
    assert ReadPdf(write_season_sheets(work, {})).bookmarks == weeks


def test_a_season_without_tasks_is_one_line() -> None:
    work = replace(draft("stony_ridge"), sowings=(), tasks=())
    pdf = ReadPdf(write_season_sheets(work, {}))
    assert len(pdf.pages) == 1
    assert pdf.texts[0].startswith("Nothing to do No week has a task from Fri 15 Jan 2027 on.")


def test_next_week_tells_what_to_be_ready_for() -> None:
    work = draft("stony_ridge")
    pages = dict(_sheets("stony_ridge", Paper.A4).weeks())
    told_kinds = {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF, TaskKind.SET_OUT, TaskKind.SOW}
    warned = 0
    for week in work.weeks:
        _, _, ahead = told(pages[_title(week)][-1]).partition("Next week, ")
        ahead, _, _ = ahead.partition("Notes for the journal")
        for task in work.weeks.get(week.after(1), ()):
            if task.kind in told_kinds:
                _, _, named = ahead.partition(f"{task.kind}: ")
                assert f"{task.sowing} (" in named.partition(".")[0]
                warned += 1
    assert warned


def test_what_is_to_be_picked_is_summed_by_crop() -> None:
    """12 roots of one sowing and 13 of another are 25 roots of the week."""
    work = draft("stony_ridge")
    pages = dict(_sheets("stony_ridge", Paper.A4).weeks())
    summed = 0
    for week in work.weeks:
        roots = sum(
            taken.amount
            for one in work.sowings
            if one.crop.name == "ridge radish"
            for taken in one.harvest
            if week_of(taken.day) == week and taken.day in picked_safely("stony_ridge", one)
        )
        if roots:
            assert f"ridge radish {round(roots, 1):g} roots" in told(pages[_title(week)][0])
            summed += 1
    assert summed


def test_what_lies_too_soon_after_raw_manure_is_nowhere_to_be_picked() -> None:
    """7 CFR 205.203(c)(1): the box beside the task is where a cold hand looks, not the head."""
    work = draft("stony_ridge")
    pages = dict(_sheets("stony_ridge", Paper.A4).weeks())
    told_not_to = 0
    for sowing in work.sowings:
        safe = picked_safely("stony_ridge", sowing)
        for day in [one.day for one in sowing.harvest if one.day not in safe]:
            text = " ".join(told(page) for page in pages[_title(week_of(day))])
            until = "before 15 August 2027: raw manure on South bed."
            assert f"Do not harvest {sowing.crop.name} {until}" in text
            assert f"{sowing.id} {_place_of(sowing)} Pick" not in text
            told_not_to += 1
    assert told_not_to


def _place_of(sowing: Sowing) -> str:
    (block,) = sowing.blocks
    unit = UNITS["ft"]
    return f"{length_words(block.from_um, unit)} to {length_words(block.to_um, unit)}"


def test_the_stretch_in_a_drawing_is_to_scale_along_the_bed() -> None:
    """A block from 2 ft to 4 ft of an 8 ft bed is black from a quarter to a half."""
    work = draft("stony_ridge")
    sowing = next(one for one in work.sowings if one.blocks[0].bed == "South bed")
    block = Block("South bed", 609_600, 1_219_200, sowing.enters_on, sowing.clear_on)
    task = next(one for one in work.tasks if one.sowing == sowing.id and one.kind is TaskKind.CLEAR)
    moved = replace(sowing, blocks=(block,))
    alone = Work(work.garden, work.as_of, (moved,), (task,))
    (page,) = ReadPdf(write_week_sheet(alone, week_of(task.on), {})).pages
    (mark,) = [one for one in page.rects if one["fill"]]
    (bed,) = [
        one
        for one in page.rects
        if not one["fill"] and one["x0"] <= mark["x0"] and one["top"] <= mark["top"] + 0.1
        if one["bottom"] >= mark["bottom"] - 0.1 and one["width"] < 50 * POINTS_PER_MM
    ]
    length = bed["x1"] - bed["x0"]
    assert (mark["x0"] - bed["x0"]) / length == pytest.approx(0.25, abs=0.01)
    assert (mark["x1"] - bed["x0"]) / length == pytest.approx(0.5, abs=0.01)


def test_lines_of_bed_work_are_printed_with_a_box_each() -> None:
    work = draft("stony_ridge")
    week, tasks = next(iter(work.weeks.items()))
    lines = ("Salad box: 20 L of compost", "Long bed: 35 L of water on Wed and Sat")
    (page,) = ReadPdf(write_week_sheet(work, week, {week: WeekBedwork((), lines)})).pages
    text = told(page)
    assert "Bed work" in text
    assert all(text.count(line) == 1 for line in lines)
    assert len(tick_boxes(page)) == len(tasks) + len(lines)


def test_what_must_not_be_picked_stands_above_the_days_and_has_no_box() -> None:
    work = draft("stony_ridge")
    week, tasks = next(iter(work.weeks.items()))
    line = "Do not pick radish 1 before 18 July 2027: raw manure on Long bed."
    (page,) = ReadPdf(write_week_sheet(work, week, {week: WeekBedwork((line,), ())})).pages
    text = told(page)
    assert text.index(line) < text.index(
        f"{tasks[0].on:%a} {tasks[0].on.day} {tasks[0].on:%b} ", 40
    )
    assert len(tick_boxes(page)) == len(tasks)


def test_a_week_with_bed_work_alone_has_a_sheet() -> None:
    """A new bed is filled before anything enters it, often before anything else is to do."""
    work = draft("stony_ridge")
    week = min(work.weeks).after(-1)
    line = "Fill Long bed with 32 cu ft by 1 May 2027."
    pdf = ReadPdf(write_season_sheets(work, {week: WeekBedwork((), (line,))}))
    assert pdf.bookmarks[0] == _title(week)
    assert line in pdf.texts[0]
    assert "Nothing to do" not in pdf.texts[0]


def test_notes_in_the_form_of_the_sheet_are_what_the_journal_reads() -> None:
    """Columns, events and the beginning of a date are taken from the paper and written down."""
    work = draft("stony_ridge")
    sowing = next(one for one in work.sowings if one.set_out_on)
    week = week_of(sowing.sow_on)
    text = told(ReadPdf(write_week_sheet(work, week, {})).pages[0])
    _, _, notes = text.partition("Notes for the journal ")
    listed, _, rest = notes.removeprefix("Events: ").partition(". Amounts: ")
    amounts, _, table = rest.partition(". ")
    columns, begun = table.split()[:5], table.split()[5]
    assert sowing.sow_on.isoformat().startswith(begun)
    picked, late = amounts.split(", ")
    amount = {"picked": picked, "late": late}
    known = named_sowings(_record_of(work), {sowing.crop.name: sowing.crop})
    day = f"{begun}{sowing.sow_on.isoformat().removeprefix(begun)}"
    journal = ",".join(columns)
    for event in listed.split(", "):
        before = f"\n{day},sown,{sowing.id},,\n" if event == "undone" else "\n"
        cells = (day, event, sowing.id, _in_its_unit(amount.get(event, ""), work, sowing.id), "")
        read = read_new_entry(PlanFile("journal.csv", (journal + before).encode()), cells, known)
        assert isinstance(read, NotedEntry), (event, read)
    assert {"sown", "emerged", "set out", "picked"} <= set(listed.split(", "))


def _in_its_unit(amount: str, work: Work, sowing: str) -> str:
    unit = work.named[sowing].crop.unit.name
    return amount.replace("roots", unit)


def _record_of(work: Work) -> dict[str, object]:
    """What season.json tells of the names of sowings."""
    return {
        "names_given": {},
        "sowings": [
            {
                "id": one.id,
                "crop": one.crop.name,
                "method": one.method.value,
                "sow_on": one.sow_on.isoformat(),
                "set_out_on": one.set_out_on and one.set_out_on.isoformat(),
                "unit": one.crop.unit.name,
            }
            for one in work.sowings
        ],
    }


@pytest.mark.parametrize("plan", PLANS)
def test_the_same_season_gives_the_same_bytes(plan: str) -> None:
    work = draft(plan)
    assert write_season_sheets(work, {}) == write_season_sheets(work, {})


def test_a_sheet_can_be_read_out() -> None:
    """PDF/UA-1 (ISO 14289-1, 5): the file says what it conforms to, is tagged, has title and
    language."""
    work = draft("stony_ridge")
    content = write_season_sheets(work, {})
    pdf = ReadPdf(content).pdf
    assert b"<pdfuaid:part>1</pdfuaid:part>" in content
    assert pdf.doc.catalog["MarkInfo"]["Marked"]
    assert "StructTreeRoot" in pdf.doc.catalog
    assert pdf.doc.catalog["Lang"] == b"en"
    assert pdf.metadata["Title"] == "Stony Ridge family garden: what to do, week by week"
