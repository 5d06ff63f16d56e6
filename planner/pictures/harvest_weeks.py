"""A crop's harvest by week: what is wanted, what can be expected, and between which bounds."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from planner.pictures.frame import MARGIN, framed, heading
from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH, key
from planner.pictures.lettering import SMALL, USUAL, text_width
from planner.pictures.stands import month_word
from planner.pictures.svg import FAINT_INK, INK, PAPER, line, named, rectangle, tag, text_line
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
# A low and a high no further apart are drawn as none.
_NO_SPREAD = 1e-6


@dataclass(frozen=True, slots=True)
class _CropWeeks:
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
        """How high an amount stands: px from the top of the picture."""
        return _TOP + _HEIGHT * (1 - amount / (5 * self.step))

    def unmet(self, week: Week) -> float:
        """What a week lacks, 0 where it lacks nothing."""
        if week not in self.outlook.wants or self.outlook.is_met(week):
            return 0.0
        one = self.outlook.at(week)
        return one.wanted - one.expected


def harvest_weeks(season: Season, crop_name: str) -> str:
    """A crop's weeks as SVG, wanted against expected; KeyError for a crop that is not wanted."""
    outlooks = {one.crop.name: one for one in season.outlooks}
    outlook = outlooks[crop_name]
    shown = _crop_weeks(season, outlook, f"harvest-{list(outlooks).index(crop_name) + 1}")
    width = max(_LEAST_WIDTH, shown.right + MARGIN)
    foot = key(_signs(shown), MARGIN, _TOP + _HEIGHT + 58, width - MARGIN)
    title = f"{crop_name}: harvest by week"
    met = sum(not shown.unmet(week) for week in outlook.wants)
    below = (
        f"{outlook.crop.unit.name} a week; {met} of {count_words(len(outlook.wants), 'week')} "
        f"have all that is wanted"
    )
    return framed(
        shown.prefix,
        (title, _told(shown, below)),
        (width, _TOP + _HEIGHT + 58 + foot.height + 4),
        (_unmet_hatch(shown.prefix),),
        heading(title, below, width),
        *_scale(shown),
        *(_week(shown, place) for place in range(len(shown.weeks))),
        *_week_names(shown),
        foot.drawn,
    )


def _crop_weeks(season: Season, outlook: CropOutlook, prefix: str) -> _CropWeeks:
    supply = outlook.supply
    every = [*outlook.wants, *(week for week, amount in supply.high.items() if amount)]
    bounds = (
        "one and nine past years in ten have less"
        if season.tried_fills
        else "by the early and the late dates"
    )
    return _CropWeeks(outlook, tuple(min(every).until(max(every))), bounds, prefix)


def _told(shown: _CropWeeks, below: str) -> str:
    """The picture in words, week by week."""
    unit = shown.outlook.crop.unit
    reasons = {one.week: one.reason.why for one in shown.outlook.unmet}
    said = [f"{below}. Low and high: {shown.bounds}."]
    for week in shown.weeks:
        _, wanted, expected, low, high = shown.outlook.at(week)
        if not wanted and not expected:
            continue
        words = (
            f"{week}: {amount_words(wanted, unit)} wanted, {amount_words(expected, unit)} "
            f"expected ({amount_words(low, unit)} to {amount_words(high, unit)})"
        )
        lacks = shown.unmet(week)
        said.append(f"{words}, unmet. {reasons.get(week, '')}" if lacks else f"{words}.")
    return " ".join(said)


def _scale(shown: _CropWeeks) -> Iterator[str]:
    """Lines across with their amounts."""
    for place in range(6):
        amount = place * shown.step
        y = shown.at(amount)
        yield line(_LEFT, y, shown.right, y, stroke=INK if place == 0 else FAINT_INK,
                   stroke_width=1 if place == 0 else 0.4)  # fmt: skip
        yield text_line(_LEFT - 7, y + 3.5, f"{amount:.6g}", SMALL, text_anchor="end")


def _week(shown: _CropWeeks, place: int) -> str:
    """A week: a bar of what is expected, its bounds, and the box of what is wanted around it."""
    week, wanted, expected, _, _ = shown.outlook.at(shown.weeks[place])
    x, wide = _LEFT + place * shown.week_px, shown.week_px
    box, spot = (x + 2, wide - 4), (x + wide * 0.22, wide * 0.56)
    foot, reached, full = shown.at(0), shown.at(expected), shown.at(wanted)
    parts = []
    if expected:
        parts.append(_bar("expected", spot, (reached, foot), _EXPECTED))
    if shown.unmet(week):
        below = foot + 23
        parts.append(_bar("unmet", box, (full, reached), shown.unmet_fill))
        parts.append(line(x + 2, below, x + wide - 2, below, stroke_width=3, class_="short"))
    if wanted:
        parts.append(_bar("wanted", box, (full, foot), "none"))
    parts.append(_bounds(shown, week, x + wide / 2))
    said = f"{week}: {_said(shown, week)}"
    return tag("g", named("title", said), *parts, class_="week", data_week=str(week))


def _bar(kind: str, across: tuple[float, float], down: tuple[float, float], fill: str) -> str:
    """A bar from x, so wide, and from its top to its foot."""
    (x, width), (top, foot) = across, down
    return rectangle(x, top, width, foot - top, fill=fill, stroke=INK, stroke_width=1, class_=kind)


def _bounds(shown: _CropWeeks, week: Week, x: float) -> str:
    """A line from the low to the high of a week, with a stroke at each end."""
    _, _, _, low, high = shown.outlook.at(week)
    if high - low < _NO_SPREAD:
        return ""
    half = min(4.0, shown.week_px * 0.22)
    return "".join(
        (
            line(x, shown.at(low), x, shown.at(high), stroke_width=1.5, class_="bounds"),
            *(line(x - half, at, x + half, at, stroke_width=1.5)
              for at in (shown.at(low), shown.at(high))),
        )
    )  # fmt: skip


def _said(shown: _CropWeeks, week: Week) -> str:
    unit = shown.outlook.crop.unit
    _, wanted, expected, _, _ = shown.outlook.at(week)
    lacking = shown.unmet(week)
    short = f", short of {amount_words(lacking, unit)}" if lacking else ""
    return f"{amount_words(wanted, unit)} wanted, {amount_words(expected, unit)} expected{short}"


def _week_names(shown: _CropWeeks) -> Iterator[str]:
    """The number of each week, or of every few, and the months in which they begin."""
    foot = _TOP + _HEIGHT
    every = next(few for few in (1, 2, 4) if few * shown.week_px >= text_width("52", SMALL) + 3)
    yield text_line(_LEFT - 7, foot + 17, "week", SMALL, text_anchor="end")
    for place, week in enumerate(shown.weeks):
        if place % every == 0:
            middle = _LEFT + (place + 0.5) * shown.week_px
            yield text_line(middle, foot + 17, f"{week.number}", SMALL, text_anchor="middle")
    yield from _months(shown, foot)


def _months(shown: _CropWeeks, foot: float) -> Iterator[str]:
    """Each month under the weeks that end in it, as long as there is room."""
    months = [(week.sunday.year, week.sunday.month) for week in shown.weeks]
    begins = [place for place, month in enumerate(months) if months[:place].count(month) == 0]
    for begin, after in zip(begins, [*begins[1:], len(months)], strict=True):
        x, room = _LEFT + begin * shown.week_px, (after - begin) * shown.week_px
        year, month = months[begin]
        short = month_word(month)
        yield line(x, foot, x, foot + 41, stroke=FAINT_INK, stroke_width=0.6)
        fitting = (one for one in (f"{short} {year}", short) if text_width(one, USUAL) + 4 <= room)
        yield from (text_line(x + 3, foot + 39, one, USUAL) for one in list(fitting)[:1])


def _signs(shown: _CropWeeks) -> Iterator[tuple[str, str]]:
    across, down = (4.0, SWATCH_WIDTH - 8), (0.0, SWATCH_HEIGHT)
    yield _bar("swatch", across, down, "none"), "wanted"
    yield _bar("swatch", across, down, _EXPECTED), "expected"
    if any(shown.unmet(week) for week in shown.weeks):
        yield _bar("swatch", across, down, shown.unmet_fill), "unmet"
        below = line(4, SWATCH_HEIGHT, SWATCH_WIDTH - 4, SWATCH_HEIGHT, stroke_width=3)
        yield below, "week that has less than is wanted"
    middle = SWATCH_WIDTH / 2
    ends = (line(middle - 4, y, middle + 4, y, stroke_width=1.5) for y in (1, SWATCH_HEIGHT - 1))
    bounds = line(middle, 1, middle, SWATCH_HEIGHT - 1, stroke_width=1.5) + "".join(ends)
    yield bounds, f"low to high: {shown.bounds}"


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
