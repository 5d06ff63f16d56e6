"""The story of each sowing: its days, its ground, its harvest, and why."""

from collections.abc import Iterator
from datetime import date
from itertools import groupby

from planner.page.element import Html, el, joined
from planner.page.table import Row, table
from planner.page.weeks_part import sowing_fragment
from planner.page.wording import day_element, day_words, stretch_words
from planner.scheduling import Block, Sowing, SowingState
from planner.season import Season
from planner.terms import amount_words, count_words

_STATES = {
    SowingState.PLANNED: "",
    SowingState.BEGUN: "begun",
    SowingState.CLEARED: "cleared",
    SowingState.LOST: "lost",
}


def stories_part(season: Season) -> Html:
    """Every sowing, crop by crop, each to be opened."""
    by_crop = sorted(season.sowings, key=lambda one: (one.crop.name, one.sow_on, one.id))
    return joined(
        joined([el("h3", crop.capitalize()), *(_story(season, one) for one in sowings)])
        for crop, sowings in groupby(by_crop, key=lambda one: one.crop.name)
    )


def _story(season: Season, sowing: Sowing) -> Html:
    beds = " + ".join(dict.fromkeys(block.bed for block in sowing.blocks))
    begins = "start indoors" if sowing.set_out_on else "sow"
    state = _STATES[sowing.state]
    return el(
        "details",
        el(
            "summary",
            el("span", sowing.id, class_="which"),
            el("span", f"{begins} {day_words(sowing.sow_on)}, {beds}", class_="when"),
            el("span", state, class_="many") if state else Html(),
        ),
        table(f"Days of {sowing.id}", ("what", "when"), _days(sowing)),
        el("p", _amounts(season, sowing)),
        el("h4", "Why"),
        el("ul", *(el("li", sentence) for sentence in sowing.why)),
        class_="story",
        id=sowing_fragment(sowing.id),
    )


def _days(sowing: Sowing) -> Iterator[Row]:
    yield _row("Start indoors" if sowing.set_out_on else "Sow", sowing.sow_on)
    yield _row("First green shows about", sowing.emerges_on)
    if sowing.set_out_on:
        yield _row("Set out", sowing.set_out_on)
    ripe = sowing.ripe
    yield _row("Ripe at the earliest about", ripe.early)
    yield _row("Ripe most likely about", ripe.likely)
    yield _row("Ripe at the latest about", ripe.late)
    for number, taken in enumerate(sowing.harvest, 1):
        what = "Harvest" if len(sowing.harvest) == 1 else f"Harvest {number}"
        yield (
            f"{what}, about {amount_words(taken.amount, sowing.crop.unit)}",
            day_element(taken.day),
        )
    yield _row("Clear", sowing.clear_on)


def _row(what: str, day: date) -> Row:
    return what, day_element(day)


def _amounts(season: Season, sowing: Sowing) -> str:
    seed = count_words(sowing.seeds, sowing.crop.start_from.value.removesuffix("s"))
    ground = "; ".join(_ground(season, block) for block in sowing.blocks)
    return f"{count_words(sowing.plants, 'plant')} from {seed}. {ground}."


def _ground(season: Season, block: Block) -> str:
    days = f"from {day_words(block.enter_on)} to {day_words(block.leave_on)}"
    return f"{block.bed}: {stretch_words(season.garden, block)}, {days}"
