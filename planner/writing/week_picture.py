"""The weekly picture: one column a week, one line a crop, wanted against expected."""

from dataclasses import dataclass

from planner.season import CropOutlook, Season
from planner.terms import MONTHS, Week, amount_words, count_words
from planner.writing.share_words import share_words

_BARS = "▁▂▃▄▅▆▇█"
_DIGITS = "12345678"
LEAST_WEEKS = 10


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks for eighths of a week's want, for nothing at all, and for not wanted."""

    eighths: str
    nothing: str
    unwanted: str = " "


BLOCK_MARKS = Marks(_BARS, "x")
ASCII_MARKS = Marks(_DIGITS, "x")


def week_picture(season: Season, width: int, encoding: str) -> str:
    """The picture within `width` columns, in marks the terminal's encoding can show."""
    marks = marks_of(encoding)
    weeks = _weeks(season)
    names = max(len(one.crop.name) for one in season.outlooks)
    per_part = max(LEAST_WEEKS, width - names - 3)
    lines = []
    for begin in range(0, len(weeks), per_part):
        part = weeks[begin : begin + per_part]
        lines.append(f"{'':{names}}  {month_line(part)}".rstrip())
        lines += [
            f"{one.crop.name:<{names}} |{''.join(_mark(one, w, marks) for w in part)}|"
            for one in season.outlooks
        ]
    full, low = marks.eighths[-1], marks.eighths[2]
    lines.append(f"{full} all that is wanted, {low} a part of it, {marks.nothing} nothing")
    lines += ["", *(_summary(one, names) for one in season.outlooks)]
    return "\n".join(lines)


def marks_of(encoding: str) -> Marks:
    """Marks that the terminal's encoding can show."""
    try:
        _BARS.encode(encoding)
    except (UnicodeEncodeError, LookupError):
        return ASCII_MARKS
    return BLOCK_MARKS


def _weeks(season: Season) -> list[Week]:
    wanted = [week for one in season.outlooks for week in one.wants]
    return list(min(wanted).until(max(wanted)))


def _mark(outlook: CropOutlook, week: Week, marks: Marks) -> str:
    if week not in outlook.wants:
        return marks.unwanted
    met = outlook.met(week)
    if met <= 0:
        return marks.nothing
    return marks.eighths[max(0, int(met * 8 + 1e-6) - 1)]


def month_line(weeks: list[Week]) -> str:
    """Month names over the weeks in which they begin, where there is room."""
    months = [week.sunday.month for week in weeks]
    starts = [n for n, month in enumerate(months) if n == 0 or months[n - 1] != month]
    line = ""
    for start, following in zip(starts, [*starts[1:], len(weeks) + 4], strict=True):
        if following - start >= 4:
            line = f"{line:<{start}}{MONTHS[months[start] - 1][:3]}"
    return line


def _summary(outlook: CropOutlook, names: int) -> str:
    met = sum(outlook.is_met(week) for week in outlook.wants)
    amount = amount_words(outlook.wanted / len(outlook.wants), outlook.crop.unit)
    weeks = count_words(len(outlook.wants), "week")
    when = "a week" if len(outlook.wants) > 1 else f"in {min(outlook.wants)}"
    return (
        f"{outlook.crop.name:<{names}}  {amount} {when}: "
        f"{met} of {weeks} in full, {share_words(outlook.fill)} of the amount"
    )
