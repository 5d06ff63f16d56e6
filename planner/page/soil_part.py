"""Soil work on the page: what fills new beds, compost on cleared ground, days of raw manure."""

import math
from collections.abc import Iterator, Sequence
from itertools import groupby

from planner.bedwork import (
    Filling,
    ManureCheck,
    Order,
    TightDepth,
    Turnover,
    compost_years,
)
from planner.garden import Garden
from planner.page.element import Html, el, joined
from planner.page.fold import fold
from planner.page.table import Row, table
from planner.page.wording import day_words
from planner.terms import count_words, length_words, volume_words
from planner.writing import (
    ceiling_words,
    filling_lines,
    manure_lines,
    manure_rule,
    order_notes,
    tight_lines,
    turnover_rule,
    turnover_words,
)


def filling_content(
    garden: Garden, fillings: Sequence[Filling], order: Order, tight: Sequence[TightDepth]
) -> Html:
    """Each new bed, what to buy for all, and beds less deep than crops would have them."""
    return joined(
        [
            *(headed(filling_lines(one, garden)) for one in fillings),
            table("To buy, topping up included", ("part", "volume", "bags", "or loads"),
                  _to_buy(garden, order), numbers=(2, 3)),
            *(el("p", note) for note in order_notes(garden, order)),
            _tight(tight),
        ]
    )  # fmt: skip


def headed(lines: Sequence[str]) -> Html:
    """A head and a list of what belongs to it."""
    head, *told = lines
    return joined([el("h3", head), el("ul", *(el("li", line) for line in told))])


def _to_buy(garden: Garden, order: Order) -> Iterator[Row]:
    unit = garden.beds[0].note.unit
    for line in order.lines:
        yield line.part, volume_words(line.volume_l, unit), str(line.bags), str(line.loads)


def _tight(tight: Sequence[TightDepth]) -> Html:
    if not tight:
        return Html()
    about, *beds = tight_lines(tight)
    return joined([el("p", about), el("ul", *(el("li", bed) for bed in beds))])


def turnover_content(garden: Garden, turnovers: Sequence[Turnover]) -> Html:
    """Month by month what is cleared and spread, then the compost of each bed and year."""
    years = compost_years(garden, turnovers)
    full = [one for one in years if one.full_on is not None]
    unit = garden.beds[0].note.unit
    rows = (
        (
            one.bed.name,
            str(one.year),
            volume_words(one.volume_l, unit),
            length_words(one.deepest_mm * 1000, unit),
        )
        for one in years
    )
    return joined(
        [
            el("p", turnover_rule(garden)),
            *_months(garden, turnovers),
            table("Compost of each bed", ("bed", "year", "in all", "fullest spot"), rows),
            el("p", ceiling_words(full)) if full else Html(),
        ]
    )


def _months(garden: Garden, turnovers: Sequence[Turnover]) -> Iterator[Html]:
    unit = garden.beds[0].note.unit
    for _, found in groupby(turnovers, key=lambda one: (one.on.year, one.on.month)):
        month = list(found)
        volume = volume_words(math.fsum(one.volume_l for one in month), unit)
        yield fold(
            f"{month[0].on:%B %Y}",
            *_days(month),
            when=f"{count_words(len(month), 'block')}, {volume}",
        )


def _days(turnovers: Sequence[Turnover]) -> Iterator[Html]:
    for day, found in groupby(turnovers, key=lambda one: one.on):
        yield headed([day_words(day), *map(turnover_words, found)])


def manure_content(garden: Garden, checks: Sequence[ManureCheck]) -> Html:
    """The days, then each time manure was spread: what would be picked too early, what in time."""
    return joined([el("p", manure_rule(garden)), *(headed(manure_lines(one)) for one in checks)])
