"""A bed through the year: every block is where, when and as long as the season says."""

import re
from dataclasses import replace
from datetime import date, timedelta
from xml.etree.ElementTree import Element

import pytest

from planner.garden import Bed
from planner.pictures import bed_year
from planner.scheduling import Block, Sowing, SowingState
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
from tests.pictures.gardens import MANY_BEDS, SAMPLES, SEASONS, season_named

_NEAR = 0.03  # px: numbers are written to hundredths


def blocks_in(season: Season, bed: Bed) -> list[tuple[Sowing, Block]]:
    return [(one, block) for one in season.sowings for block in one.blocks if block.bed == bed.name]


def edge_of(block: Element) -> Box:
    return next(rectangle_of(one) for one in block if one.get("class") == "edge")


@pytest.mark.parametrize("name", SEASONS)
def test_every_block_is_drawn_once_to_scale(name: str) -> None:
    season = season_named(name)
    for bed in season.garden.beds:
        drawing = Drawing(bed_year(season, bed.name))
        ground = _ground(drawing)
        first, days = _time(season, bed)
        day_px = (ground.right - ground.left) / days
        metre_px = (ground.bottom - ground.top) / (bed.line_um / 1e6)
        drawn = {_key_of(one): edge_of(one) for one in drawing.blocks() if one.get("data-sowing")}
        assert len(drawn) == len(blocks_in(season, bed))
        for sowing, block in blocks_in(season, bed):
            edge = drawn.pop(_key(sowing, block, ground, metre_px))
            assert ground.holds(edge)
            assert edge.left - ground.left == pytest.approx(
                (block.enter_on - first).days * day_px, abs=_NEAR
            )
            held = (block.leave_on - block.enter_on).days
            assert edge.right - edge.left == pytest.approx(held * day_px, abs=_NEAR)
            length = (block.to_um - block.from_um) / 1e6
            assert edge.bottom - edge.top == pytest.approx(length * metre_px, abs=_NEAR)
        assert not drawn


def _ground(drawing: Drawing) -> Box:
    """The empty bed: the first rectangle after the sheet's own."""
    return rectangle_of(list(drawing.root.findall("{http://www.w3.org/2000/svg}rect"))[1])


def _time(season: Season, bed: Bed) -> tuple[date, int]:
    """The first day of the first month on view, and how many days to the end of the last."""
    blocks = [block for _, block in blocks_in(season, bed)]
    first = min([season.garden.wish.first, *(one.enter_on for one in blocks)])
    last = max([season.garden.wish.last, *(one.leave_on - timedelta(days=1) for one in blocks)])
    begin, after = first.replace(day=1), last.replace(day=1) + timedelta(days=32)
    return begin, (after.replace(day=1) - begin).days


def _key_of(block: Element) -> tuple[str | None, str | None, str | None, int]:
    return (
        block.get("data-sowing"),
        block.get("data-from"),
        block.get("data-to"),
        round(edge_of(block).top),
    )


def _key(
    sowing: Sowing, block: Block, ground: Box, metre_px: float
) -> tuple[str | None, str | None, str | None, int]:
    top = round(round(ground.top + block.from_um / 1e6 * metre_px, 2))
    return sowing.id, block.enter_on.isoformat(), block.leave_on.isoformat(), top


@pytest.mark.parametrize("name", SEASONS)
def test_a_block_bears_its_name_or_is_told_below(name: str) -> None:
    season = season_named(name)
    for bed in season.garden.beds:
        drawing = Drawing(bed_year(season, bed.name))
        below = [words_of(one) for one in drawing.words()]
        for block in drawing.blocks():
            said = [one for one in block.iter() if one.tag.endswith("text")]
            assert not said, "names stand above all blocks"
            sowing = block.get("data-sowing") or block.get("data-kept") or ""
            edge = edge_of(block)
            inside = [one for one in drawing.words() if edge.holds(box_of(one), 1.5)]
            named = " ".join(words_of(one) for one in inside)
            start, number = sowing[:3], sowing.split()[-1]
            assert (start in named and number in named) or any(
                one.startswith("Not named above") and sowing[:40] in one for one in below
            ), sowing


def test_harvest_lies_where_it_is_expected() -> None:
    season = season_named("ferry_street")
    for bed in season.garden.beds:
        drawing = Drawing(bed_year(season, bed.name))
        first, days = _time(season, bed)
        ground = _ground(drawing)
        day_px = (ground.right - ground.left) / days
        harvests = {one.id: one.harvest for one in season.sowings}
        for block in drawing.blocks():
            bars = [rectangle_of(one) for one in block if one.get("class") == "harvest"]
            taken = harvests[block.get("data-sowing") or ""]
            assert len(bars) == bool(taken)
            if not taken:
                continue
            leaves = date.fromisoformat(block.get("data-to") or "")
            last_stood = leaves - timedelta(days=1)
            begin = min(taken[0].day, last_stood)
            end = min(taken[-1].day, last_stood) + timedelta(days=1)
            left = ground.left + (begin - first).days * day_px
            right = ground.left + (end - first).days * day_px
            assert bars[0].left == pytest.approx(left, abs=_NEAR)
            assert bars[0].right == pytest.approx(right, abs=_NEAR)
            assert edge_of(block).holds(bars[0])


# A guest, kept ground, the as-of day.


def season_with_a_guest() -> tuple[Season, Sowing, Sowing]:
    """A season in which the smallest sowing of a bed stands under the largest."""
    season = season_named("tern_bay")
    bed = next(bed for bed in season.garden.beds if bed.name == "Row A")
    by_size = sorted(
        (one for one in season.sowings if len(one.blocks) == 1 and one.blocks[0].bed == bed.name),
        key=lambda one: one.blocks[0].to_um - one.blocks[0].from_um,
    )
    guest, host = by_size[0], by_size[-1]
    ground = host.blocks[0]
    third = (ground.to_um - ground.from_um) // 3
    under = replace(
        ground,
        from_um=ground.from_um + third,
        to_um=ground.to_um - third,
        enter_on=ground.enter_on + timedelta(days=5),
        leave_on=ground.leave_on - timedelta(days=5),
        under=host.id,
    )
    guest = replace(guest, blocks=(under,))
    others = tuple(guest if one.id == guest.id else one for one in season.sowings)
    return replace(season, sowings=others), host, guest


def test_a_guest_is_drawn_within_its_host_and_above_it() -> None:
    season, host, guest = season_with_a_guest()
    drawing = Drawing(bed_year(season, "Row A"))
    blocks = drawing.blocks()
    names = [one.get("data-sowing") for one in blocks]
    assert names.index(host.id) < names.index(guest.id)
    inner, outer = (edge_of(blocks[names.index(one.id)]) for one in (guest, host))
    assert outer.holds(inner)
    edge = next(one for one in blocks[names.index(guest.id)] if one.get("class") == "edge")
    assert edge.get("stroke-dasharray")
    assert f"under {host.id}" in title_of(blocks[names.index(guest.id)])
    on_view = [words_of(one) for one in drawing.words()]
    assert {"guest, in its host's ground", host.id, guest.id} <= set(on_view)


def test_the_name_of_a_host_is_clear_of_its_guest() -> None:
    season, host, guest = season_with_a_guest()
    drawing = Drawing(bed_year(season, "Row A"))
    its_guest = next(one for one in drawing.blocks() if one.get("data-sowing") == guest.id)
    name = next(one for one in drawing.words() if words_of(one) == host.id)
    assert not box_of(name).overlaps(edge_of(its_guest))


def test_kept_ground_is_drawn_as_kept_from_end_to_end() -> None:
    season = season_named("stony_ridge")
    drawing = Drawing(bed_year(season, "Long bed"))
    kept = next(one for one in drawing.blocks() if one.get("data-kept"))
    ground, edge = _ground(drawing), edge_of(kept)
    assert kept.get("data-kept") == "rhubarb"
    assert (edge.left, edge.right, edge.top) == (ground.left, ground.right, ground.top)
    assert (edge.bottom - edge.top) / (ground.bottom - ground.top) == pytest.approx(2 / 10)
    assert "kept ground, not the planner's" in [words_of(one) for one in drawing.words()]


def test_the_as_of_day_is_marked_where_it_lies() -> None:
    season = season_named("ferry_street")
    bed = season.garden.beds[0]
    drawing = Drawing(bed_year(season, bed.name))
    first, days = _time(season, bed)
    ground = _ground(drawing)
    mark = next(drawing.every("line", class_="as-of"))
    day_px = (ground.right - ground.left) / days
    expected = ground.left + (season.as_of - first).days * day_px
    assert numbers(mark, "x1", "x2") == pytest.approx((expected, expected), abs=_NEAR)
    assert any(words_of(one).startswith("as of ") for one in drawing.words())


def test_a_day_beyond_the_months_on_view_is_not_marked() -> None:
    season = replace(season_named("ferry_street"), as_of=date(2031, 1, 1))
    drawing = Drawing(bed_year(season, "North 1"))
    assert not list(drawing.every("line", class_="as-of"))


def test_a_lost_sowing_says_so() -> None:
    season = season_named("ferry_street")
    lost = replace(season.sowings[0], state=SowingState.LOST)
    season = replace(season, sowings=(lost, *season.sowings[1:]))
    drawing = Drawing(bed_year(season, lost.blocks[0].bed))
    assert lost.id in [one.get("data-sowing") for one in drawing.blocks()]
    shown = " ".join(words_of(one) for one in drawing.words())
    assert re.search(rf"lost: .*{lost.id.split()[-1]}", shown), "shortened too, it keeps both"
    assert f"{lost.id}, lost: " in drawing.text_of("desc")


@pytest.mark.parametrize("name", [*SAMPLES, MANY_BEDS])
def test_the_description_tells_every_block(name: str) -> None:
    season = season_named(name)
    for bed in season.garden.beds:
        said = Drawing(bed_year(season, bed.name)).text_of("desc")
        assert all(sowing.id in said for sowing, _ in blocks_in(season, bed))


def test_a_bed_that_is_not_there_has_no_picture() -> None:
    with pytest.raises(KeyError):
        bed_year(season_named("ferry_street"), "North 99")
