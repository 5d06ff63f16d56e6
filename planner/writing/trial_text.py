"""The trial in a terminal: what past years would have given, beside what was promised."""

import math
import textwrap
from collections.abc import Iterator
from statistics import fmean

from planner.season import Beside, Revised
from planner.terms import Week, count_words
from planner.trial import Basis, CropTrial, TooFewPicks, Trial, WeakWeek
from planner.writing.paragraph import paragraph
from planner.writing.share_words import share_words, whole_per_cent
from planner.writing.week_picture import LEAST_WEEKS, Marks, marks_of, month_line

_LEAST_WIDTH = 40
_FULL = 1e-6
_CASES = ("poor", "usual", "good")
_COLUMNS = f"{'fill':>7}{'weeks met':>11}{'with nothing':>14}{'interval spread':>17}"


def trial_text(beside: Beside, width: int, encoding: str) -> str:
    """The picture of poor, usual and good years, the shares, and the weakest weeks."""
    wide = max(_LEAST_WIDTH, width)
    marks = marks_of(encoding)
    parts = [
        textwrap.fill(_how_tried(beside.trial), wide),
        "\n".join(_picture(beside.trial, wide, marks)),
        "\n".join(_shares(beside)),
        "\n".join(_totals(beside, wide)),
        "\n".join(_weakest(beside.trial, wide)),
    ]
    return "\n\n".join(part for part in parts if part)


def trial_weeks(trial: Trial) -> str:
    """Every wanted week of every crop, its harvest in poor, usual and good years in its unit."""
    names = max(len(one.crop.name) for one in trial.crops)
    lines = [
        f"{'week':<8}  {'crop':<{names}}{'wanted':>9}{'poor':>9}{'usual':>9}{'good':>9}  holds"
    ]
    rows = [(week, number) for number, one in enumerate(trial.crops) for week in one.wants]
    for week, number in sorted(rows):
        one = trial.crops[number]
        amounts = (one.wants[week], one.poor[week], one.usual[week], one.good[week])
        numbers = "".join(f"{round(amount, 2):>9g}" for amount in amounts)
        holds = f"{whole_per_cent(one.share_holding(week)):>5}% {one.crop.unit.name}"
        lines.append(f"{week!s:<8}  {one.crop.name:<{names}}{numbers} {holds}")
    return "\n".join([*lines, "holds: the share of years that have nine tenths of what is wanted"])


def _how_tried(trial: Trial) -> str:
    if trial.basis is Basis.PAST_YEARS:
        return (
            f"The season as it is planned, tried in {count_words(trial.years, 'past year')} of the "
            "weather record: poor is what one year in ten does not pass, usual the middle, good "
            "what nine in ten do not pass."
        )
    return (
        "There is no daily weather record, so no past year can be tried. Poor, usual and good are "
        "a stated spread only: all sowings at their early, their likely or their late dates. "
        "Freezes and hot spells of single years are not in it."
    )


def _picture(trial: Trial, width: int, marks: Marks) -> Iterator[str]:
    wanted = [week for one in trial.crops for week in one.wants]
    weeks = list(min(wanted).until(max(wanted)))
    names = max(len(one.crop.name) for one in trial.crops)
    per_part = max(LEAST_WEEKS, width - names - 9)
    for begin in range(0, len(weeks), per_part):
        part = weeks[begin : begin + per_part]
        yield f"{'':{names + 8}}{month_line(part)}".rstrip()
        for one in trial.crops:
            for case, amounts in zip(_CASES, (one.poor, one.usual, one.good), strict=True):
                name = one.crop.name if case == _CASES[0] else ""
                row = "".join(_mark(one, week, amounts, marks) for week in part)
                yield f"{name:<{names}} {case:<5} |{row}|"
    full, low = marks.eighths[-1], marks.eighths[2]
    yield f"{full} all that is wanted, {low} a part of it, {marks.nothing} nothing"


def _mark(one: CropTrial, week: Week, amounts: dict[Week, float], marks: Marks) -> str:
    if week not in one.wants:
        return marks.unwanted
    met = min(1.0, amounts[week] / one.wants[week])
    if met <= 0:
        return marks.nothing
    return marks.eighths[max(0, int(met * 8 + _FULL) - 1)]


def _shares(beside: Beside) -> Iterator[str]:
    """Each crop's shares over all years, then those of the season and the rule of thumb."""
    trial, thumb = beside.trial, beside.thumb_trial
    names = max(len("rule of thumb"), *(len(one.crop.name) for one in trial.crops))
    yield f"{'':<{names}}{_COLUMNS}"
    for one in trial.crops:
        spreads = one.interval_spreads
        spread = math.fsum(spreads) / len(spreads) if spreads else TooFewPicks()
        row = _row(one.fill, one.weeks_met, one.weeks_with_nothing, spread)
        yield f"{one.crop.name:<{names}}{row}"
    for name, each in (("all crops", trial), ("rule of thumb", thumb)):
        row = _row(each.fill, each.weeks_met, each.weeks_with_nothing, each.interval_spread_days)
        yield f"{name:<{names}}{row}"


def _row(
    fill: float, weeks_met: float, weeks_with_nothing: float, spread: float | TooFewPicks
) -> str:
    days = "-" if isinstance(spread, TooFewPicks) else f"{spread:.1f} days"
    shares = f"{whole_per_cent(fill):>6}%{whole_per_cent(weeks_met):>10}%"
    return f"{shares}{weeks_with_nothing:>14.1f}{days:>17}"


def _totals(beside: Beside, width: int) -> Iterator[str]:
    trial, thumb = beside.trial, beside.thumb_trial
    average, worst, best = map(share_words, (trial.fill, min(trial.fills), max(trial.fills)))
    ours = (
        f"Promised {share_words(beside.promised)} of all that is wanted; tried, {average} on "
        f"average, {worst} in the worst and {best} in the best."
    )
    promised, given = map(share_words, (beside.thumb_promised, thumb.fill))
    theirs = (
        f"Sown at fixed intervals the same beds promise {promised} and, tried, give {given} "
        "(rule of thumb)."
    )
    for one in (ours, *_revised(beside.revised), theirs):
        yield paragraph(one, width)


def _revised(revised: Revised) -> Iterator[str]:
    if revised.revised:
        years = count_words(len(revised.revised), "year")
        average, worst = map(share_words, (fmean(revised.revised), min(revised.revised)))
        kept, kept_worst = map(share_words, (fmean(revised.kept), min(revised.kept)))
        yield (
            f"Revised each fortnight in {years} from poor to good it gives {average} on average, "
            f"{worst} at worst; kept as planned {kept} and {kept_worst} in the same years."
        )


def _weakest(trial: Trial, width: int) -> Iterator[str]:
    if not trial.weakest:
        yield "Every week holds in nine years of ten."
        return
    yield "The weakest weeks:"
    for one in trial.weakest:
        yield textwrap.fill(_weak(one, trial), width, initial_indent="- ", subsequent_indent="  ")


def _weak(one: WeakWeek, trial: Trial) -> str:
    holding = round(one.share * trial.years)
    what = "years" if trial.basis is Basis.PAST_YEARS else "cases"
    return (
        f"{one.crop} in {one.week} has nine tenths of what is wanted in {holding} of "
        f"{trial.years} {what}; else mostly {one.failing.value}. {one.remedy}"
    )
