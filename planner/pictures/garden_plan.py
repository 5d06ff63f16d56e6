"""The garden's beds from above, to scale with each other, on one day or on any."""

from collections.abc import Iterable, Iterator
from datetime import date

from planner.garden import Bed
from planner.pictures.bed_cell import BedCell, bed_cell
from planner.pictures.bed_shape import BAR_SWATCH
from planner.pictures.block_marks import block_marks
from planner.pictures.frame import MARGIN, framed, heading
from planner.pictures.key import SWATCH_WIDTH, Foot, key
from planner.pictures.lettering import BOLD, LARGE, fitted, text_width
from planner.pictures.stands import Stand, stands_in
from planner.pictures.svg import line
from planner.pictures.tape import Tape, scale_bar, tape
from planner.season import Season
from planner.terms import date_words

_WIDTH = 1080.0
_TOP = 62.0
_APART_PX = 26.0
_ROWS_APART_PX = 14.0
_LEAST_BLOCK_PX = 19.0
_LEAST_METRE_PX = 70.0
_MOST_METRE_PX = 150.0
_LONGEST_PX = 880.0
_SCALE_PX = 34.0


def garden_plan(season: Season) -> str:
    """All beds with every block of the season, as SVG; on view are those of the as-of day.

    The beds stand in the order of the garden file, not where they lie. Whatever has `data-from`
    and `data-to` is to be shown while data-from <= day < data-to and else has display="none"; a
    block has `data-sowing` or, on kept ground, `data-kept`.
    """
    stands = [stands_in(season, bed) for bed in season.garden.beds]
    return _drawn(season, season.as_of, "plan", stands)


def garden_day(season: Season, day: date) -> str:
    """All beds with only what stands in them on a day, as SVG."""
    stands = [
        tuple(one for one in stands_in(season, bed) if one.enter_on <= day < one.leave_on)
        for bed in season.garden.beds
    ]
    return _drawn(season, day, f"day-{day}", stands)


def _drawn(season: Season, day: date, prefix: str, stands: list[tuple[Stand, ...]]) -> str:
    beds = season.garden.beds
    marks = block_marks(prefix, season)
    scale = _scale(season)
    cells = [bed_cell(bed, its, scale, marks) for bed, its in zip(beds, stands, strict=True)]
    corners, bottom = _laid_out(cells)
    placed = list(zip(cells, corners, strict=True))
    width = max(_WIDTH, *(x + cell.width + MARGIN for cell, (x, _) in placed))
    signs = (
        *marks.key_items((one for its in stands for one in its), BAR_SWATCH),
        *_bed_signs(beds),
    )
    foot = _foot(scale, signs, bottom, width)
    name, on_day = season.garden.site.name, f": the beds on {date_words(day)}"
    return framed(
        prefix,
        (name + on_day, _told(beds, stands, day)),
        (width, bottom + foot.height),
        marks.definitions,
        _heading(name, on_day, width),
        *(cell.drawn(x, y, day) for cell, (x, y) in placed),
        foot.drawn,
    )


def _heading(name: str, on_day: str, width: float) -> str:
    """The title, in which a long name gives way to the day, and what the picture is."""
    room = width - 2 * MARGIN - text_width(on_day, LARGE * BOLD)
    return heading(
        fitted(name, LARGE * BOLD, room) + on_day,
        "Beds to scale with each other, in the order of the garden file, not where they lie.",
        width,
    )


def _foot(scale: Tape, signs: Iterable[tuple[str, str]], bottom: float, width: float) -> Foot:
    """The scale and the key, below beds that end at `bottom`."""
    under_scale = key(signs, MARGIN, bottom + _SCALE_PX, width - MARGIN)
    drawn = scale_bar(scale, MARGIN, bottom + 12) + under_scale.drawn
    return Foot(drawn, _SCALE_PX + under_scale.height + 8)


def _scale(season: Season) -> Tape:
    """The scale: words fit into the smallest block if the beds then fit on the picture."""
    beds = season.garden.beds
    blocks = [block.to_um - block.from_um for sowing in season.sowings for block in sowing.blocks]
    wanted = _LEAST_BLOCK_PX / (min(blocks, default=1e6) / 1e6)
    longest = max(bed.width_um * 4 if bed.is_round else bed.line_um for bed in beds) / 1e6
    metre_px = min(_MOST_METRE_PX, max(_LEAST_METRE_PX, wanted), _LONGEST_PX / longest)
    return tape(beds[0].note.unit, metre_px)


def _laid_out(cells: Iterable[BedCell]) -> tuple[list[tuple[float, float]], float]:
    """A corner for each cell, row by row, and where the last row ends."""
    places = []
    x, y, tallest = MARGIN, _TOP, 0.0
    for cell in cells:
        if x > MARGIN and x + cell.width > _WIDTH - MARGIN:
            x, y, tallest = MARGIN, y + tallest + _ROWS_APART_PX, 0.0
        places.append((x, y))
        x += cell.width + _APART_PX
        tallest = max(tallest, cell.height)
    return places, y + tallest


def _bed_signs(beds: tuple[Bed, ...]) -> Iterator[tuple[str, str]]:
    if not all(bed.is_round for bed in beds):
        yield line(0, 6, SWATCH_WIDTH, 6, stroke_width=4), "marked end, where lengths begin"
    if any(bed.is_round for bed in beds):
        mark = line(SWATCH_WIDTH / 2, 0, SWATCH_WIDTH / 2, 13, stroke_width=4)
        yield mark, "mark of a round bed, where its rim begins, clockwise"


def _told(beds: tuple[Bed, ...], stands: list[tuple[Stand, ...]], day: date) -> str:
    """The picture of that day in words."""
    said = []
    for bed, its in zip(beds, stands, strict=True):
        there = [one.said for one in its if one.enter_on <= day < one.leave_on]
        said.append(f"{bed.name}: {'; '.join(there) or 'nothing'}.")
    return " ".join(said)
