"""Turnover in words: what comes out, what is spread, what follows; and what feeds how much."""

import math
from collections.abc import Iterator, Sequence
from itertools import groupby

from planner.bedwork import CompostYear, Turnover, compost_years, whole_parcels
from planner.garden import CropSoil, Feeding, Garden
from planner.terms import (
    M2_PER_SQ_FT,
    UNITS,
    Unit,
    count_words,
    date_words,
    length_words,
    volume_words,
)
from planner.writing.filling_text import parcel_words
from planner.writing.paragraph import paragraph
from planner.writing.place_words import short_stretch_words
from planner.writing.source_words import in_brackets

_HUNGRIEST_FIRST = tuple(reversed(Feeding))
_IMPERIAL = {"ft", "in"}


def turnover_text(garden: Garden, turnovers: Sequence[Turnover], width: int) -> str:
    """Turnovers by day, the compost of each bed and year, and how hungry the crops are."""
    unit = garden.unit
    parts = [
        paragraph(turnover_rule(garden), width),
        *_days(turnovers, width),
        "\n".join(_years(garden, turnovers, width)),
        "\n".join(_hunger(garden, unit, width)),
    ]
    return "\n\n".join(part for part in parts if part)


def dressing_words(alike: Sequence[Turnover]) -> str:
    """What is spread on ground of one bed to one depth, such as "0.6 cu ft of compost (1/2 in)"."""
    one, unit = alike[0], alike[0].bed.note.unit
    if one.depth_mm <= 0:
        return "no more compost this year" if one.held_back else "no compost"
    depth = length_words(one.depth_mm * 1000, unit)
    return f"{volume_words(math.fsum(each.volume_l for each in alike), unit)} of compost ({depth})"


def turnover_rule(garden: Garden) -> str:
    """What is done to cleared ground, and how deep compost goes on it (§45)."""
    figures, unit = garden.soil.figures, garden.unit
    usual, most = figures["top_dress"], figures["compost_a_year"]
    depth = f"{length_words(usual.low * 1000, unit)} of compost {in_brackets(usual.source)}"
    ceiling = f"{length_words(most.middle * 1000, unit)} in twelve months"
    return (
        "Cut what is cleared off at the soil line and leave its roots; pull what is eaten with its "
        f"root. Then spread {depth}, at most {ceiling} {in_brackets(most.source)}. "
        "Places are counted from the marked end; on a rim from the mark."
    )


def _days(turnovers: Sequence[Turnover], width: int) -> Iterator[str]:
    for day, found in groupby(turnovers, key=lambda one: one.on):
        lines = [paragraph(turnover_words(one), width, "  ") for one in found]
        yield "\n".join([date_words(day), *lines])


def turnover_words(one: Turnover) -> str:
    """A block's turnover, such as "North 1, 0 in to 2 ft: pull radish 1, ...; then beet 2"."""
    done = "pull" if one.pulled else "cut"
    place = short_stretch_words(one.bed, one.from_um, one.to_um)
    after = f"; then {', '.join(one.followers)}" if one.followers else ""
    return f"{one.bed.name}, {place}: {done} {one.sowing}, {dressing_words([one])}{after}"


def _years(garden: Garden, turnovers: Sequence[Turnover], width: int) -> Iterator[str]:
    if not turnovers:
        yield "Nothing is cleared in this season."
        return
    unit, bag = garden.unit, garden.soil.bag
    volume_l = math.fsum(one.volume_l for one in turnovers)
    bags = count_words(whole_parcels(volume_l, bag.size.middle), "bag")
    size = parcel_words(bag.size.middle, unit)
    all_of_it = (
        f"Compost in all: {volume_words(volume_l, unit)}, {bags} of {size}. By bed and year:"
    )
    yield paragraph(all_of_it, width)
    years = compost_years(garden, turnovers)
    names = max(len(one.bed.name) for one in years)
    for year in years:
        depth = length_words(year.deepest_mm * 1000, unit)
        volume = volume_words(year.volume_l, unit)
        words = f"{year.bed.name:<{names}}  {year.year}  {volume}, {depth} at its fullest spot"
        yield paragraph(words, width, "  ")
    full = [one for one in years if one.full_on is not None]
    if full:
        yield paragraph(ceiling_words(full), width)


def ceiling_words(full: Sequence[CompostYear]) -> str:
    """Beds that have had all the compost of a year, and what to do before they get more."""
    reached = ", ".join(
        f"{one.bed.name} on {date_words(one.full_on)}" for one in full if one.full_on is not None
    )
    return (
        f"The year's ceiling is reached: {reached}. Have the soil of these beds tested before you "
        "give more: phosphorus from compost stays for years. A crop that is hungry until then is "
        "fed with what has nitrogen alone, as the test says."
    )


def _hunger(garden: Garden, unit: Unit, width: int) -> Iterator[str]:
    yield paragraph("How hungry the crops are (change it in crops.toml):", width)
    for feeding in _HUNGRIEST_FIRST:
        crops = {name: soil for name, soil in garden.soil.crops.items() if soil.feeding is feeding}
        if crops:
            told = ", ".join(_crop_words(name, soil) for name, soil in crops.items())
            yield paragraph(f"{feeding}: {told}", width, "  ")
    again = [
        f"{name} {soil.side_dressing}"
        for name, soil in garden.soil.crops.items()
        if soil.side_dressing
    ]
    if again:
        yield paragraph(f"Fed again: {'; '.join(again)}.", width)
    yield paragraph(_nitrogen_words(garden, unit), width)


def _crop_words(name: str, soil: CropSoil) -> str:
    if soil.feeding is Feeding.UNKNOWN:
        return name
    if soil.feeding_source.place is not None:
        return f"{name} (your own)"
    if soil.feeding_source.key == "memory":
        return f"{name} (from memory)"
    return f"{name} (others: {soil.disputed})" if soil.disputed else name


def _nitrogen_words(garden: Garden, unit: Unit) -> str:
    usual, heavy = (garden.soil.figures[one] for one in ("nitrogen", "nitrogen_heavy"))
    if unit.name in _IMPERIAL:
        factor, words = 100 * M2_PER_SQ_FT / UNITS["lb"].factor, "lb on 100 sq ft"
    else:
        factor, words = 1000.0, "g on a square metre"
    return (
        f"Nitrogen in a year: about {usual.middle * factor:.2g} {words}, for heavy feeders "
        f"{heavy.middle * factor:.2g} {in_brackets(usual.source)}. A soil test knows "
        "better; what compost brings is part of it."
    )
