"""A crop's harvest by week: what is wanted, what can be expected, and between which bounds."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH, key
from planner.pictures.lettering import SMALL, USUAL, text_width
from planner.pictures.sheet import MARGIN, heading, sheet
from planner.pictures.stands import month_word
from planner.pictures.svg import FAINT_INK, INK, PAPER, label, line, named, rectangle, tag
from planner.season import CropOutlook, Season
from planner.terms import Week, amount_words, count_words

_LEFT = 72.0
_TOP = 66.0
_HEIGHT = 220.0
_USUAL_WIDTH = 940.0
_LEAST_WEEK_PX = 9.0
_MOST_WEEK_PX = 34.0
_LEAST_WIDTH = 420.0
_EXPECTED = "#77AADD"  # light blue of the scheme named in family_marks
_SHORT = 1e-6


@dataclass(frozen=True, slots=True)
class _Plot:
    """The weeks of a crop on paper."""

    outlook: CropOutlook
    weeks: tuple[Week, ...]
    bounds: str
    prefix: str

    @property
    def week_px(self) -> float:
        usual = _USUAL_WIDTH / len(self.weeks)
        return min(_MOST_WEEK_PX, max(_LEAST_WEEK_PX, usual))

    @property
    def unmet_fill(self) -> str:
        return f"url(#{self.prefix}-unmet)"

    @property
    def right(self) -> float:
        return _LEFT + self.week_px * len(self.weeks)

    @property
    def step(self) -> float:
        """How much lies between two lines: 1, 2 or 5 of some power of ten, about five lines."""
        supply = self.outlook.supply
        most = max([*self.outlook.wants.values(), *supply.high.values(), *supply.expected.values()])
        rough = max(most, 1e-3) / 5
        power = 10.0 ** math.floor(math.log10(rough))
        return next(few * power for few in (1, 2, 5, 10) if few * power >= rough - 1e-12)

    def at(self, amount: float) -> float:
        """How high an amount stands: px from the top of the sheet."""
        return _TOP + _HEIGHT * (1 - amount / (5 * self.step))

    def unmet(self, week: Week) -> float:
        """What a week lacks, 0 where it lacks nothing."""
        wanted = self.outlook.wants.get(week, 0.0)
        lacks = wanted - self.outlook.supply.expected.get(week, 0.0)
        return lacks if lacks > wanted * _SHORT else 0.0


def harvest_weeks(season: Season, crop_name: str) -> str:
    """A crop's weeks as SVG, wanted against expected; KeyError for a crop that is not wanted."""
    outlooks = {one.crop.name: one for one in season.outlooks}
    outlook = outlooks[crop_name]
    plot = _plot(season, outlook, f"harvest-{list(outlooks).index(crop_name) + 1}")
    width = max(_LEAST_WIDTH, plot.right + MARGIN)
    foot = key(_signs(plot), MARGIN, _TOP + _HEIGHT + 58, width - MARGIN)
    title = f"{crop_name}: harvest by week"
    met = sum(not plot.unmet(week) for week in outlook.wants)
    below = (
        f"{outlook.crop.unit.name} a week; {met} of {count_words(len(outlook.wants), 'week')} "
        f"have all that is wanted"
    )
    return sheet(
        plot.prefix,
        (title, _told(plot, below)),
        (width, _TOP + _HEIGHT + 58 + foot.height + 4),
        (_unmet_hatch(plot.prefix),),
        heading(title, below, width),
        *_scale(plot),
        *(_week(plot, place) for place in range(len(plot.weeks))),
        *_week_names(plot),
        foot.drawn,
    )


def _plot(season: Season, outlook: CropOutlook, prefix: str) -> _Plot:
    supply = outlook.supply
    every = [*outlook.wants, *(week for week, amount in supply.high.items() if amount)]
    bounds = (
        "one and nine past years in ten have less"
        if season.tried_fills
        else "by the early and the late dates"
    )
    return _Plot(outlook, tuple(min(every).until(max(every))), bounds, prefix)


def _told(plot: _Plot, below: str) -> str:
    """The picture in words, week by week."""
    unit, supply = plot.outlook.crop.unit, plot.outlook.supply
    reasons = {one.week: one.reason.why for one in plot.outlook.unmet}
    said = [f"{below}. Low and high: {plot.bounds}."]
    for week in plot.weeks:
        wanted, expected = plot.outlook.wants.get(week, 0.0), supply.expected.get(week, 0.0)
        if not wanted and not expected:
            continue
        words = (
            f"{week}: {amount_words(wanted, unit)} wanted, {amount_words(expected, unit)} "
            f"expected ({amount_words(supply.low.get(week, 0.0), unit)} to "
            f"{amount_words(supply.high.get(week, 0.0), unit)})"
        )
        said.append(f"{words}, unmet. {reasons.get(week, '')}" if plot.unmet(week) else f"{words}.")
    return " ".join(said)


def _scale(plot: _Plot) -> Iterator[str]:
    """Lines across with their amounts."""
    for place in range(6):
        amount = place * plot.step
        y = plot.at(amount)
        yield line(_LEFT, y, plot.right, y, stroke=INK if place == 0 else FAINT_INK,
                   stroke_width=1 if place == 0 else 0.4)  # fmt: skip
        yield label(_LEFT - 7, y + 3.5, f"{amount:.6g}", SMALL, text_anchor="end")


def _week(plot: _Plot, place: int) -> str:
    """A week: a bar of what is expected, its bounds, and the box of what is wanted around it."""
    week = plot.weeks[place]
    supply = plot.outlook.supply
    wanted, expected = plot.outlook.wants.get(week, 0.0), supply.expected.get(week, 0.0)
    x, wide = _LEFT + place * plot.week_px, plot.week_px
    box, spot = (x + 2, wide - 4), (x + wide * 0.22, wide * 0.56)
    foot, reached, full = plot.at(0), plot.at(expected), plot.at(wanted)
    parts = []
    if expected:
        parts.append(_bar("expected", spot, (reached, foot), _EXPECTED))
    if plot.unmet(week):
        below = foot + 23
        parts.append(_bar("unmet", box, (full, reached), plot.unmet_fill))
        parts.append(line(x + 2, below, x + wide - 2, below, stroke_width=3, class_="short"))
    if wanted:
        parts.append(_bar("wanted", box, (full, foot), "none"))
    parts.append(_bounds(plot, week, x + wide / 2))
    said = f"{week}: {_said(plot, week)}"
    return tag("g", named("title", said), *parts, class_="week", data_week=str(week))


def _bar(kind: str, across: tuple[float, float], down: tuple[float, float], fill: str) -> str:
    """A bar from x, so wide, and from its top to its foot."""
    (x, width), (top, foot) = across, down
    return rectangle(x, top, width, foot - top, fill=fill, stroke=INK, stroke_width=1, class_=kind)


def _bounds(plot: _Plot, week: Week, x: float) -> str:
    """A line from the low to the high of a week, with a stroke at each end."""
    low, high = (
        kind.get(week, 0.0) for kind in (plot.outlook.supply.low, plot.outlook.supply.high)
    )
    if high - low < _SHORT:
        return ""
    half = min(4.0, plot.week_px * 0.22)
    return "".join(
        (
            line(x, plot.at(low), x, plot.at(high), stroke_width=1.5, class_="bounds"),
            *(line(x - half, at, x + half, at, stroke_width=1.5)
              for at in (plot.at(low), plot.at(high))),
        )
    )  # fmt: skip


def _said(plot: _Plot, week: Week) -> str:
    unit = plot.outlook.crop.unit
    wanted = plot.outlook.wants.get(week, 0.0)
    expected = plot.outlook.supply.expected.get(week, 0.0)
    lacking = plot.unmet(week)
    short = f", short of {amount_words(lacking, unit)}" if lacking else ""
    return f"{amount_words(wanted, unit)} wanted, {amount_words(expected, unit)} expected{short}"


def _week_names(plot: _Plot) -> Iterator[str]:
    """The number of each week, or of every few, and the months in which they begin."""
    foot = _TOP + _HEIGHT
    every = next(few for few in (1, 2, 4) if few * plot.week_px >= text_width("52", SMALL) + 3)
    yield label(_LEFT - 7, foot + 17, "week", SMALL, text_anchor="end")
    for place, week in enumerate(plot.weeks):
        if place % every == 0:
            middle = _LEFT + (place + 0.5) * plot.week_px
            yield label(middle, foot + 17, f"{week.number}", SMALL, text_anchor="middle")
    yield from _months(plot, foot)


def _months(plot: _Plot, foot: float) -> Iterator[str]:
    """Each month under the weeks that end in it, as long as there is room."""
    months = [(week.sunday.year, week.sunday.month) for week in plot.weeks]
    begins = [place for place, month in enumerate(months) if months[:place].count(month) == 0]
    for begin, after in zip(begins, [*begins[1:], len(months)], strict=True):
        x, room = _LEFT + begin * plot.week_px, (after - begin) * plot.week_px
        year, month = months[begin]
        short = month_word(month)
        yield line(x, foot, x, foot + 41, stroke=FAINT_INK, stroke_width=0.6)
        fitting = (one for one in (f"{short} {year}", short) if text_width(one, USUAL) + 4 <= room)
        yield from (label(x + 3, foot + 39, one, USUAL) for one in list(fitting)[:1])


def _signs(plot: _Plot) -> Iterator[tuple[str, str]]:
    across, down = (4.0, SWATCH_WIDTH - 8), (0.0, SWATCH_HEIGHT)
    yield _bar("swatch", across, down, "none"), "wanted"
    yield _bar("swatch", across, down, _EXPECTED), "expected"
    if any(plot.unmet(week) for week in plot.weeks):
        yield _bar("swatch", across, down, plot.unmet_fill), "unmet"
        below = line(4, SWATCH_HEIGHT, SWATCH_WIDTH - 4, SWATCH_HEIGHT, stroke_width=3)
        yield below, "week that has less than is wanted"
    middle = SWATCH_WIDTH / 2
    ends = (line(middle - 4, y, middle + 4, y, stroke_width=1.5) for y in (1, SWATCH_HEIGHT - 1))
    bounds = line(middle, 1, middle, SWATCH_HEIGHT - 1, stroke_width=1.5) + "".join(ends)
    yield bounds, f"low to high: {plot.bounds}"


def _unmet_hatch(prefix: str) -> str:
    return tag(
        "pattern",
        rectangle(0, 0, 6, 6, fill=PAPER),
        tag("path", d="M-1,1L1,-1M0,6L6,0M5,7L7,5", stroke=INK, stroke_width=1.2),
        id=f"{prefix}-unmet",
        patternUnits="userSpaceOnUse",
        width=6,
        height=6,
    )
