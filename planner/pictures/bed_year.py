"""One bed through the year: time along, the bed's length down, every block where it stands."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from planner.garden import Bed
from planner.pictures.block_marks import HARVEST_PX, BlockMarks, block_marks, harvest_bar
from planner.pictures.field import Field, lettered, lettered_short
from planner.pictures.frame import MARGIN, framed, heading
from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH, Foot, key
from planner.pictures.lettering import SMALL, USUAL, fitted, text_width
from planner.pictures.stands import (
    Stand,
    bed_named,
    guests_of,
    size_words,
    span_words,
    stands_in,
)
from planner.pictures.svg import INK, PAPER, line, named, rectangle, tag, text_line
from planner.pictures.tape import Tape, tape, tape_down
from planner.pictures.time_line import TimeLine, months_and_weeks, time_line
from planner.season import Season
from planner.terms import date_words

_LEFT = 72.0
_TOP = 96.0
_LEAST_BLOCK_PX = 19.0
_SHORTEST_PX = 120.0
_TALLEST_PX = 800.0


@dataclass(frozen=True, slots=True)
class _Year:
    """The bed's year on paper."""

    bed: Bed
    stands: tuple[Stand, ...]
    time: TimeLine
    tape: Tape
    marks: BlockMarks

    @property
    def bottom(self) -> float:
        return _TOP + self.tape.px(self.bed.line_um)

    def field(self, stand: Stand) -> Field:
        """Where a stand is drawn: from enter to leave, from one end of its stretch to the other."""
        left, right = self.time.at(stand.enter_on), self.time.at(stand.leave_on)
        top, bottom = (_TOP + self.tape.px(um) for um in (stand.from_um, stand.to_um))
        return Field(left, top, right - left, bottom - top)

    def words(self, stand: Stand) -> str:
        """The name of a stand on its plate, clear of its harvest bar and its guests."""
        whole = self.field(stand)
        free = Field(whole.x, whole.y, whole.width, whole.height - HARVEST_PX)
        guests = [self.field(one) for one in guests_of(stand, self.stands)]
        rooms, ground = free.beside(guests), self.marks.mark(stand).pale
        return lettered(rooms, stand.name, ground) or lettered_short(rooms, stand.name, ground)


def bed_year(season: Season, bed_name: str) -> str:
    """A bed from the season's first month to its last, as SVG; KeyError for no such bed.

    A block is as wide as the days from entering to leaving and as tall as its stretch. A round
    bed's line is its rim, unrolled. Shown narrower than its natural size, words get too small:
    let it scroll.
    """
    bed = bed_named(season.garden, bed_name)
    year = _year(season, bed, f"year-{season.garden.beds.index(bed) + 1}")
    drawn = [_drawn(year, one) for one in year.stands]
    words = [year.words(one) for one in year.stands]
    nameless = [one for one, its in zip(year.stands, words, strict=True) if not its]
    foot = _foot(year, nameless)
    title = f"{bed.name} through the year"
    width = year.time.right + MARGIN
    below = f"{size_words(bed)}; {_line(bed)} downwards, as of {date_words(season.as_of)}"
    return framed(
        year.marks.prefix,
        (title, _told(year)),
        (width, year.bottom + foot.height),
        year.marks.definitions,
        heading(title, below, width),
        *_ground(year),
        *drawn,
        _as_of(year, season.as_of),
        *words,
        foot.drawn,
    )


def _year(season: Season, bed: Bed, prefix: str) -> _Year:
    stands = stands_in(season, bed)
    wish = season.garden.wish
    planted = [one for one in stands if not one.is_kept]
    time = time_line(
        min([wish.first, *(one.enter_on for one in planted)]),
        max([wish.last, *(one.leave_on - timedelta(days=1) for one in planted)]),
        _LEFT,
    )
    shown = tuple(one for one in stands if one.leave_on > time.first and one.enter_on < time.end)
    metres = bed.line_um / 1e6
    smallest = min((one.to_um - one.from_um for one in shown), default=bed.line_um) / 1e6
    wanted = max(_SHORTEST_PX / metres, _LEAST_BLOCK_PX / smallest)
    scale = tape(season.garden.beds[0].note.unit, min(_TALLEST_PX / metres, wanted))
    return _Year(bed, shown, time, scale, block_marks(prefix, season))


def _told(year: _Year) -> str:
    """The picture in words."""
    time = year.time
    whole = span_words(time.first, time.end - timedelta(days=1))
    stands = (f"{one.said}." for one in year.stands) if year.stands else ("Nothing stands in it.",)
    return " ".join(
        (f"{size_words(year.bed)}, {whole}. Time along, {_line(year.bed)} downwards.", *stands)
    )


def _line(bed: Bed) -> str:
    return "the rim from the mark" if bed.is_round else "the length from the marked end"


def _ground(year: _Year) -> Iterator[str]:
    """The empty bed with its tape and its months."""
    width, height = year.time.right - _LEFT, year.bottom - _TOP
    days = {"data_first": year.time.first.isoformat(), "data_end": year.time.end.isoformat()}
    yield rectangle(_LEFT, _TOP, width, height, fill=PAPER, stroke=INK, stroke_width=1, **days)
    yield from months_and_weeks(year.time, _TOP, year.bottom)
    yield from tape_down(year.tape, year.bed.line_um, _LEFT, _TOP)


def _drawn(year: _Year, stand: Stand) -> str:
    """A stand: pale while it grows, darker and with a bar while it is harvested."""
    field, marks = year.field(stand), year.marks
    parts = [rectangle(field.x, field.y, field.width, field.height, fill=marks.growing(stand))]
    if stand.is_picked:
        begin, end = year.time.at(stand.picked_from), year.time.at(stand.picked_until)
        full = marks.harvested(stand)
        parts.append(rectangle(begin, field.y, end - begin, field.height, fill=full))
        parts.append(harvest_bar(begin, field.bottom, end - begin))
    parts.append(
        rectangle(
            field.x, field.y, field.width, field.height, class_="edge", **marks.outline(stand)
        )
    )
    what = {"data_kept": stand.holder} if stand.is_kept else {"data_sowing": stand.holder}
    return tag(
        "g",
        named("title", stand.said),
        *parts,
        class_="block",
        data_from=stand.enter_on.isoformat(),
        data_to=stand.leave_on.isoformat(),
        **what,
    )


def _as_of(year: _Year, day: date) -> str:
    """The line of the day the season is made on, with its words below the bed."""
    if not year.time.shows(day):
        return ""
    x = year.time.at(day)
    words = f"as of {date_words(day)}"
    half = text_width(words, SMALL) / 2
    middle = min(max(x, _LEFT + half), year.time.right - half)
    return line(x, _TOP - 2, x, year.bottom + 6, stroke_width=2, class_="as-of") + text_line(
        middle, year.bottom + 17, words, SMALL, text_anchor="middle"
    )


def _foot(year: _Year, nameless: list[Stand]) -> Foot:
    """The key, and under it what was too small to bear its name."""
    top = year.bottom + 28
    right = year.time.right
    signs = key(
        year.marks.key_items(year.stands, harvest_bar(0, SWATCH_HEIGHT, SWATCH_WIDTH)),
        MARGIN,
        top,
        right,
    )
    lines = [fitted(f"Not named above: {one.said}", USUAL, right - MARGIN) for one in nameless]
    foot = top + signs.height
    drawn = [text_line(MARGIN, foot + 12 + 16 * n, one, USUAL) for n, one in enumerate(lines)]
    return Foot(signs.drawn + "".join(drawn), 28 + signs.height + 16 * len(lines) + 12)
