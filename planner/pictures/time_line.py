"""A line of time: days as px, with its months and weeks."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from planner.pictures.lettering import SMALL, USUAL, text_width
from planner.pictures.stands import month_word
from planner.pictures.svg import FAINT_INK, line, text_line
from planner.terms import Week, week_of

_USUAL_PX = 980.0
_LEAST_PX_A_DAY = 2.0
_MOST_PX_A_DAY = 9.0


@dataclass(frozen=True, slots=True)
class TimeLine:
    """Days from `first` up to `end`, which is not shown itself, beginning at `left` px."""

    first: date
    end: date
    left: float

    @property
    def day_px(self) -> float:
        """The width of a day."""
        usual = _USUAL_PX / (self.end - self.first).days
        return min(_MOST_PX_A_DAY, max(_LEAST_PX_A_DAY, usual))

    @property
    def right(self) -> float:
        """Where it ends, px."""
        return self.at(self.end)

    def at(self, day: date) -> float:
        """Where a day begins, px; days beyond either end lie on that end."""
        shown = min(max(day, self.first), self.end)
        return self.left + (shown - self.first).days * self.day_px

    def shows(self, day: date) -> bool:
        """Whether a day is on the line."""
        return self.first <= day < self.end


def time_line(first: date, last: date, left: float) -> TimeLine:
    """The whole months that hold two days."""
    begin = first.replace(day=1)
    return TimeLine(begin, _next_month(last), left)


def _next_month(day: date) -> date:
    return (day.replace(day=1) + timedelta(days=32)).replace(day=1)


def months_and_weeks(time: TimeLine, top: float, bottom: float) -> Iterator[str]:
    """Months and week numbers above `top`, and a line for each month down to `bottom`."""
    month = time.first
    while month < time.end:
        after = _next_month(month)
        x = time.at(month)
        for begin, end in ((top - 33, top - 19), (top, bottom)):  # clear of the numbers of weeks
            yield line(x, begin, x, end, stroke=FAINT_INK, stroke_width=0.6)
        named = f"{month_word(month.month)} {month.year}"
        if text_width(named, USUAL) > time.at(after) - time.at(month) - 4:
            named = month_word(month.month)
        yield text_line(time.at(month) + 4, top - 22, named, USUAL)
        month = after
    yield text_line(time.left - 6, top - 9, "week", SMALL, text_anchor="end")
    yield from _weeks(time, top)


def _weeks(time: TimeLine, top: float) -> Iterator[str]:
    """The number of each week, or of every few, over its middle."""
    week_px = 7 * time.day_px
    every = next(few for few in (1, 2, 4) if few * week_px >= text_width("52", SMALL) + 4)
    week: Week = week_of(time.first + timedelta(days=6))
    while week.sunday < time.end:
        if week.number % every == 0 or every == 1:
            middle = (time.at(week.monday) + time.at(week.sunday) + time.day_px) / 2
            yield text_line(middle, top - 9, f"{week.number}", SMALL, text_anchor="middle")
        week = week.after(1)
