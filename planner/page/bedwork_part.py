"""Bed work: what the beds take, and the cautions where they matter; only what the plan asks for."""

import math
from collections.abc import Iterator

from planner.bedwork import (
    cautions_of,
    fillings_of,
    manure_checks,
    order_of,
    seed_of,
    tight_depths,
    turnovers_of,
)
from planner.page.care import Cautions, careful_fold
from planner.page.element import Html, el, joined
from planner.page.fold import fold
from planner.page.soil_part import filling_content, manure_content, turnover_content
from planner.page.water_part import away_parts, water_part
from planner.season import Season
from planner.terms import count_words, volume_words
from planner.writing import in_the_box, seed_grounds, seed_months


def bedwork_part(season: Season) -> Html:
    """What the plan asks for of soil, compost, manure, water and seed, each to be opened."""
    cautions = _cautions(season)
    parts = [
        *_filling(season, cautions["filling"]),
        *_turnover(season, cautions["turnover"]),
        *_manure(season, cautions["manure"]),
        *water_part(season, cautions["water"]),
        *away_parts(season),
        *_seed(season),
    ]
    return joined(parts or [el("p", "The plan asks for no bed work.")])


def _cautions(season: Season) -> dict[str, Cautions]:
    """The cautions of each part; a hazard is told with the first part of those that are shown."""
    parts = {
        "filling": any(bed.is_new for bed in season.garden.beds),
        "turnover": bool(season.sowings),
        "manure": bool(season.garden.soil.manure),
        "water": bool(season.sowings),
    }
    told = cautions_of(season.garden, [part for part, is_shown in parts.items() if is_shown])
    return {part: told.get(part, ()) for part in parts}


def _filling(season: Season, cautions: Cautions) -> Iterator[Html]:
    garden, sowings = season.garden, season.sowings
    fillings = fillings_of(garden, sowings)
    if not fillings:
        return
    content = filling_content(
        garden, fillings, order_of(garden.soil, fillings), tight_depths(garden, sowings)
    )
    volume_l = math.fsum(one.volume_l for one in fillings)
    amount = volume_words(volume_l, garden.beds[0].note.unit)
    when = f"{count_words(len(fillings), 'bed')}, {amount}"
    yield careful_fold("Filling new beds", content, when, cautions)


def _turnover(season: Season, cautions: Cautions) -> Iterator[Html]:
    turnovers = turnovers_of(season.garden, season.sowings)
    if turnovers:
        volume_l = math.fsum(one.volume_l for one in turnovers)
        when = f"{volume_words(volume_l, season.garden.beds[0].note.unit)} of compost"
        content = turnover_content(season.garden, turnovers)
        yield careful_fold("Turnover", content, when, cautions)


def _manure(season: Season, cautions: Cautions) -> Iterator[Html]:
    checks = manure_checks(season.garden, season.sowings)
    if checks:
        early = sum(len(one.too_early) for one in checks)
        when = f"{count_words(early, 'sowing')} picked too early" if early else "all in time"
        content = manure_content(season.garden, checks)
        yield careful_fold("Raw manure", content, when, cautions)


def _seed(season: Season) -> Iterator[Html]:
    seed = seed_of(season.garden, season.sowings, season.as_of)
    if not seed.needs:
        return
    buys = sum(one.to_buy > 0 for one in seed.needs)
    months = (
        joined([el("h3", head), el("ul", *(el("li", line) for line in lines))])
        for head, lines in seed_months(seed)
    )
    box = in_the_box(seed)
    yield fold(
        "Seed to order",
        *months,
        el("p", box) if box else Html(),
        *(el("p", ground) for ground in seed_grounds(seed)),
        when=f"{count_words(buys, 'crop')} to buy",
        class_="bedwork",
    )
