"""Water on the page: bed by bed and week by week, and the sheet for whoever waters meanwhile."""

from collections.abc import Iterator

from planner.bedwork import AwayWork, BedWater, Runs, Water, WeekWater, away_work_of, water_of
from planner.climate import Climate
from planner.page.care import Cautions, careful_fold
from planner.page.element import Html, el, joined
from planner.page.fold import fold
from planner.page.table import table
from planner.page.wording import week_words, weeks_words
from planner.season import Season
from planner.terms import Unit, Week
from planner.writing import (
    away_days_words,
    away_lists,
    each_time_words,
    run_words,
    runs_in,
    times_words,
    water_advice,
    water_grounds,
    water_words,
    watering_words,
)


def water_part(season: Season, cautions: Cautions) -> Iterator[Html]:
    """What watering rests on, and for each bed how much in which weeks."""
    water = _water(season)
    thirstiest = water.thirstiest
    if thirstiest is None:
        return
    beds = (_bed(water, bed.name) for bed in season.garden.beds)
    content = joined(
        [
            *(el("p", one) for one in water_advice(water)),
            *beds,
            fold("How it is known", *(el("p", one) for one in water_grounds(water))),
        ]
    )
    when = f"most in the week of {week_words(thirstiest.week)}"
    yield careful_fold("Water, bed by bed", content, when, cautions)


def _water(season: Season) -> Water:
    return water_of(season.garden, Climate(season.garden.site), season.sowings)


def _bed(water: Water, bed: str) -> Html:
    """The weeks in which a bed is watered; weeks on end that are alike stand in one row."""
    unit = water.garden.beds[0].note.unit
    weeks = [
        (week.week, _amount(week, one, unit))
        for week in water.weeks
        for one in week.beds
        if one.bed.name == bed and one.volume_l > 0
    ]
    if not weeks:
        return Html()
    return fold(bed, table(f"Water for {bed}", ("weeks", "each week"), _rows(weeks)))


def _amount(week: WeekWater, one: BedWater, unit: Unit) -> str:
    runs = runs_in(week, one)
    if isinstance(runs, Runs):
        return f"{times_words(runs.times)}: {run_words(runs.minutes, runs.parts)}"
    return f"{water_words(one.volume_l, unit)} by hand"


def _rows(weeks: list[tuple[Week, str]]) -> Iterator[tuple[str, str]]:
    first, last, told = weeks[0][0], *weeks[0]
    for week, words in weeks[1:]:
        if words != told or week != last.after(1):
            yield weeks_words(first, last), told
            first, told = week, words
        last = week
    yield weeks_words(first, last), told


def away_parts(season: Season) -> Iterator[Html]:
    """For each time away: days and amounts, what to look at, what to pick, what to leave alone."""
    unit = season.garden.beds[0].note.unit
    for one in away_work_of(_water(season), season.sowings, season.as_of):
        yield fold(
            "For whoever waters",
            _away(one, unit),
            when=away_days_words(one),
            class_="bedwork",
        )


def _away(one: AwayWork, unit: Unit) -> Html:
    beds = (f"{bed.water.bed.name}: {each_time_words(bed, unit)}" for bed in one.beds)
    lists = (
        joined([el("h3", head), el("ul", *(el("li", line) for line in lines))])
        for head, lines in away_lists(one, unit)
    )
    told = el("ul", *(el("li", bed) for bed in beds)) if one.beds else Html()
    return joined([el("p", watering_words(one, unit)), told, *lists])
