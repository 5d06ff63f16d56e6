"""The garden from above: beds to scale with each other, blocks where they lie, day by day."""

import math
import re
from collections import Counter
from dataclasses import replace
from datetime import date
from xml.etree.ElementTree import Element

import pytest

from planner.garden import Bed
from planner.pictures import garden_day, garden_plan
from planner.season import Season
from tests.pictures.drawing import (
    Box,
    Drawing,
    box_of,
    numbers,
    rectangle_of,
    title_of,
    words_of,
)
from tests.pictures.gardens import MANY_BEDS, SEASONS, days_of_change, season_named
from tests.pictures.test_a_bed_through_the_year import season_with_a_guest

_NEAR = 0.03  # px: numbers are written to hundredths
_POINT = re.compile(r"(-?[\d.]+),(-?[\d.]+)")


def beds_of(drawing: Drawing) -> dict[str, Element]:
    return {one.get("data-bed") or "": one for one in drawing.every("g") if one.get("data-bed")}


def outline_of(bed: Element) -> Box:
    """The bed itself."""
    one = next(one for one in bed if one.get("class") == "bed")
    if one.tag.endswith("rect"):
        return rectangle_of(one)
    x, y, radius = numbers(one, "cx", "cy", "r")
    return Box(x - radius, y - radius, x + radius, y + radius)


def scale_of(season: Season, drawing: Drawing) -> float:
    """Px a metre, by the first bed."""
    bed = season.garden.beds[0]
    outline = outline_of(beds_of(drawing)[bed.name])
    return (outline.bottom - outline.top) / (_length_um(bed) / 1e6)


def _length_um(bed: Bed) -> float:
    return bed.line_um / math.pi if bed.is_round else bed.line_um


def shown(drawing: Drawing, day: date) -> list[tuple[str, str]]:
    """What a script that follows data-from and data-to shows on a day, by bed and name."""
    return sorted(
        (name, one.get("data-sowing") or one.get("data-kept") or "")
        for name, bed in beds_of(drawing).items()
        for one in bed
        if one.get("class") == "block"
        and (one.get("data-from") or "") <= day.isoformat() < (one.get("data-to") or "")
    )


def standing(season: Season, day: date) -> list[tuple[str, str]]:
    """What stands on a day by the season itself."""
    planted = [
        (block.bed, one.id)
        for one in season.sowings
        for block in one.blocks
        if block.enter_on <= day < block.leave_on
    ]
    kept = [(one.bed, one.what) for one in season.garden.kept if one.first <= day < one.last]
    return sorted([*planted, *kept])


@pytest.mark.parametrize("name", SEASONS)
def test_all_beds_are_to_one_scale_and_apart(name: str) -> None:
    season = season_named(name)
    drawing = Drawing(garden_plan(season))
    scale = scale_of(season, drawing)
    outlines = {name: outline_of(one) for name, one in beds_of(drawing).items()}
    assert list(outlines) == [bed.name for bed in season.garden.beds]
    for bed in season.garden.beds:
        box = outlines[bed.name]
        width_um = bed.width_um * 4 if bed.is_round else bed.width_um
        assert box.bottom - box.top == pytest.approx(_length_um(bed) / 1e6 * scale, abs=_NEAR)
        assert box.right - box.left == pytest.approx(width_um / 1e6 * scale, abs=_NEAR)
        assert drawing.sheet.holds(box)
        assert not any(box.overlaps(one) for other, one in outlines.items() if other != bed.name)


@pytest.mark.parametrize("name", SEASONS)
def test_every_block_is_drawn_once(name: str) -> None:
    season = season_named(name)
    drawn = Counter(
        (name, one.get("data-sowing"), one.get("data-from"), one.get("data-to"))
        for name, bed in beds_of(Drawing(garden_plan(season))).items()
        for one in bed
        if one.get("data-sowing")
    )
    assert drawn == Counter(
        (block.bed, one.id, block.enter_on.isoformat(), block.leave_on.isoformat())
        for one in season.sowings
        for block in one.blocks
    )


@pytest.mark.parametrize("name", SEASONS)
def test_a_block_lies_on_its_stretch(name: str) -> None:
    season = season_named(name)
    drawing = Drawing(garden_plan(season))
    scale = scale_of(season, drawing)
    beds = {bed.name: bed for bed in season.garden.beds}
    blocks = {
        (one.id, block.bed): sorted((b.from_um, b.to_um) for b in one.blocks if b.bed == block.bed)
        for one in season.sowings
        for block in one.blocks
    }
    for bed_name, drawn in beds_of(drawing).items():
        box = outline_of(drawn)
        found: dict[tuple[str, str], list[tuple[float, float]]] = {}
        for one in drawn:
            if one.get("data-sowing"):
                edge = next(part for part in one if part.get("class") == "edge")
                stretch = _stretch_um(edge, box, beds[bed_name], scale)
                found.setdefault((one.get("data-sowing") or "", bed_name), []).append(stretch)
        for key, stretches in found.items():
            slack = _NEAR * 2 / scale * 1e6
            for got, wanted in zip(sorted(stretches), blocks[key], strict=True):
                assert got == pytest.approx(wanted, abs=slack), key


def _stretch_um(edge: Element, bed: Box, its: Bed, scale: float) -> tuple[float, float]:
    """From where to where on its bed's line an outline lies, read off the drawing."""
    if edge.tag.endswith("rect"):
        drawn = rectangle_of(edge)
        assert bed.holds(drawn)
        return (drawn.top - bed.top) / scale * 1e6, (drawn.bottom - bed.top) / scale * 1e6
    if edge.tag.endswith("circle"):
        return 0, its.line_um
    centre = (bed.left + bed.right) / 2, (bed.top + bed.bottom) / 2
    points = [(float(x), float(y)) for x, y in _POINT.findall(edge.get("d") or "")]
    radius = (bed.right - bed.left) / 2
    on_the_rim = [one for one in points if math.dist(one, centre) > radius * 0.9]
    # An arc's radii are written like a point, between its two ends.
    begin, end = (_along_um(one, centre, its) for one in (on_the_rim[0], on_the_rim[-1]))
    assert all(math.dist(one, centre) <= radius + _NEAR for one in (on_the_rim[0], on_the_rim[-1]))
    return begin % its.line_um, end or its.line_um


def _along_um(point: tuple[float, float], centre: tuple[float, float], bed: Bed) -> float:
    """How far along the rim a point lies, clockwise from the top."""
    turn = math.atan2(point[0] - centre[0], centre[1] - point[1]) / (2 * math.pi) % 1
    near_the_top = 1 - turn < 1e-4
    return 0.0 if near_the_top else turn * bed.line_um


@pytest.mark.parametrize("name", SEASONS)
def test_a_script_shows_exactly_what_stands_on_a_day(name: str) -> None:
    season = season_named(name)
    drawing = Drawing(garden_plan(season))
    for day in days_of_change(season):
        assert shown(drawing, day) == standing(season, day), day


@pytest.mark.parametrize("name", SEASONS)
def test_without_a_script_the_as_of_day_is_on_view(name: str) -> None:
    season = season_named(name)
    drawing = Drawing(garden_plan(season))
    day = season.as_of.isoformat()
    for one in drawing.every("g"):
        begin, end = one.get("data-from"), one.get("data-to")
        if begin and end:
            assert (one.get("display") != "none") == (begin <= day < end)


@pytest.mark.parametrize("name", SEASONS)
def test_the_picture_of_a_day_is_the_plan_on_that_day(name: str) -> None:
    season = season_named(name)
    for day in days_of_change(season)[::9]:
        drawing = Drawing(garden_day(season, day))
        blocks = drawing.blocks()
        assert len(blocks) == len(standing(season, day))
        assert not any(one.get("display") for one in blocks)
        assert shown(drawing, day) == standing(season, day)
        assert str(day.year) in drawing.text_of("title")


@pytest.mark.parametrize("name", SEASONS)
def test_what_stands_on_a_day_is_named_on_it_or_below_its_bed(name: str) -> None:
    season = season_named(name)
    for day in days_of_change(season)[::9]:
        drawing = Drawing(garden_day(season, day))
        for bed in beds_of(drawing).values():
            for block in (one for one in bed if one.get("class") == "block"):
                said = " ".join(words_of(one) for one in block.iter() if one.tag.endswith("text"))
                name_of_it = block.get("data-sowing") or (block.get("data-kept") or "")[:3]
                assert name_of_it in said
                assert name_of_it in title_of(block)


def test_what_is_harvested_has_a_bar_on_those_days_only() -> None:
    season = season_named("ferry_street")
    harvests = {one.id: one.harvest for one in season.sowings}
    for block in Drawing(garden_plan(season)).blocks():
        bars = [one for one in block if one.get("class") == "harvest"]
        taken = harvests[block.get("data-sowing") or ""]
        assert len(bars) == bool(taken)
        for bar in bars:
            leaves = block.get("data-to") or ""
            assert (bar.get("data-from") or "") <= taken[0].day.isoformat()
            assert (block.get("data-from") or "") <= (bar.get("data-from") or "")
            assert (bar.get("data-to") or "") <= leaves


def test_a_guest_lies_within_its_host_and_leaves_room_for_its_name() -> None:
    season, host, guest = season_with_a_guest()
    drawing = Drawing(garden_day(season, guest.blocks[0].enter_on))
    blocks = {one.get("data-sowing"): one for one in drawing.blocks()}
    edges = {
        name: next(rectangle_of(part) for part in one if part.get("class") == "edge")
        for name, one in blocks.items()
        if name in {host.id, guest.id}
    }
    assert edges[host.id].holds(edges[guest.id])
    name = next(one for one in drawing.words() if words_of(one) == host.id)
    assert edges[host.id].holds(box_of(name), 1)
    assert not box_of(name).overlaps(edges[guest.id])


@pytest.mark.parametrize(("name", "unit", "metres"), [
    ("ferry_street", "ft", 0.3048),
    ("tern_bay", "m", 1.0),
])  # fmt: skip
def test_the_scale_bar_is_true_and_in_the_growers_unit(name: str, unit: str, metres: float) -> None:
    season = season_named(name)
    drawing = Drawing(garden_plan(season))
    bar = next(drawing.every("line", class_="scale"))
    left, right = numbers(bar, "x1", "x2")
    told = [words_of(one) for one in drawing.words()]
    units = next(int(one.split()[0]) for one in told if re.fullmatch(rf"\d+ {unit}", one))
    assert right - left == pytest.approx(units * metres * scale_of(season, drawing), abs=0.1)


def test_the_title_ends_with_the_day_however_long_the_gardens_name() -> None:
    season = replace(season_named(MANY_BEDS), as_of=date(2027, 6, 1))
    drawing = Drawing(garden_plan(season))
    assert drawing.text_of("title").endswith("the beds on 1 June 2027")
    assert any(words_of(one).endswith("the beds on 1 June 2027") for one in drawing.words())
