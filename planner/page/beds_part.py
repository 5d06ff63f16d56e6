"""The beds: how they stand on a chosen day, and through the year."""

from collections.abc import Iterator
from datetime import date
from itertools import chain

from planner.page.element import Html, el, joined
from planner.page.figure import figure
from planner.page.fold import fold
from planner.page.table import table
from planner.page.weeks_part import sowing_fragment
from planner.page.wording import day_element, full_day_words, stretch_words
from planner.pictures import bed_year, garden_day, garden_plan
from planner.scheduling import Block, Sowing
from planner.season import Season


def day_part(season: Season) -> Html:
    """The beds on a day: drawn for the day of planning, and for any day with the slider.

    The slider needs JavaScript, which shows it and takes the drawing of one day away.
    """
    first, last = _span(season)
    day = min(max(season.as_of, first), last)
    return joined(
        [
            el(
                "div",
                _slider(first, last, day),
                figure(garden_plan(season), "The beds to scale on the chosen day"),
                id="any-day",
                hidden="",
            ),
            el(
                "div",
                figure(garden_day(season, day), f"The beds to scale on {full_day_words(day)}"),
                id="one-day",
            ),
            fold("The same as a table", _table(season), id="standing"),
        ]
    )


def _span(season: Season) -> tuple[date, date]:
    blocks = [block for one in season.sowings for block in one.blocks]
    wish = season.garden.wish
    return (
        min([wish.first, *(block.enter_on for block in blocks)]),
        max([wish.last, *(block.leave_on for block in blocks)]),
    )


def _slider(first: date, last: date, day: date) -> Html:
    return el(
        "div",
        el("p", full_day_words(day), id="day-said", aria_live="polite"),
        el(
            "input",
            type="range",
            id="day",
            min=0,
            max=(last - first).days,
            step=1,
            value=(day - first).days,
            aria_label="Day",
            data_first=first.isoformat(),
        ),
        el(
            "p",
            el("button", "Week back", type="button", data_days=-7),
            el("button", "Week on", type="button", data_days=7),
            el("button", "Today", type="button", data_days=0),
            class_="steps",
        ),
        class_="slider",
    )


def _table(season: Season) -> Html:
    rows = (_cells(season, block, one) for block, one in _standing(season))
    return table("What stands where, and when", ("bed", "stretch", "sowing", "from", "to"), rows)


def _standing(season: Season) -> list[tuple[Block, Sowing]]:
    order = {bed.name: number for number, bed in enumerate(season.garden.beds)}
    every = chain.from_iterable(((block, one) for block in one.blocks) for one in season.sowings)
    return sorted(every, key=lambda both: _place(both[0], order))


def _place(block: Block, order: dict[str, int]) -> tuple[int, date, int]:
    return order[block.bed], block.enter_on, block.from_um


def _cells(season: Season, block: Block, sowing: Sowing) -> tuple[str, ...]:
    year = season.garden.wish.first.year
    return (
        block.bed,
        stretch_words(season.garden, block),
        el("a", sowing.id, href=f"#{sowing_fragment(sowing.id)}"),
        day_element(block.enter_on, year),
        day_element(block.leave_on, year),
    )


def year_part(season: Season) -> Html:
    """Each bed through the year."""
    return joined(_years(season))


def _years(season: Season) -> Iterator[Html]:
    for bed in season.garden.beds:
        drawn = figure(bed_year(season, bed.name), f"{bed.name} through the year")
        yield el("div", el("h3", bed.name), drawn, class_="together")
