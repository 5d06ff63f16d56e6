"""What fills new beds, and what to buy for them, in words."""

import textwrap
from collections.abc import Iterator, Sequence
from itertools import groupby

from planner.bedwork import Doubt, Filling, Layer, LayerKind, Order, TightDepth
from planner.garden import Garden, NoPrice, SoilMix
from planner.terms import (
    UNITS,
    Unit,
    count_words,
    date_words,
    length_words,
    volume_words,
    weight_words,
)
from planner.writing.paragraph import headed, paragraph
from planner.writing.source_words import in_brackets

_DOUBTS = {
    Doubt.TOO_SHALLOW: "Less than 6 in (15 cm) of soil carries no crop for long: build it deeper.",
    Doubt.ONLY_RICH: "So shallow it only carries shallow roots, and only with a rich mix.",
    Doubt.MUCH_COMPOST: "More than half of the mix is compost: plants may burn, and the soil gets "
    "too rich in phosphorus. Ask for an analysis, or take more topsoil.",
}
_TIGHT = (
    "Shallower than the crops planned there would like. They stand it, and root deeper where sound "
    "soil lies under an open bed:"
)


def filling_text(
    garden: Garden,
    fillings: Sequence[Filling],
    order: Order,
    tight: Sequence[TightDepth],
    width: int,
) -> str:
    """A part for each new bed, one for the order, and beds less deep than crops would have them."""
    parts = [headed(filling_lines(one, garden), width) for one in fillings]
    if fillings:
        parts.append("\n".join(_order_lines(garden, order, width)))
        parts.append(paragraph(_other_mixes(garden), width))
    else:
        parts.append(
            paragraph(
                "No bed is new. Write new = true below a [[bed]] that is still to be filled.", width
            )
        )
    if tight:
        parts.append(headed(tight_lines(tight), width))
    return "\n\n".join(parts)


def mix_words(mix: SoilMix) -> str:
    """A mix like "2 parts topsoil, 1 part compost"."""
    return ", ".join(
        f"{parts:g} {'part' if parts == 1 else 'parts'} {name}" for name, parts in mix.parts.items()
    )


def parcel_words(size_l: float, unit: Unit) -> str:
    """A bag or load as it is sold: "0.75 cu ft", "0.5 cu yd", "40 L"."""
    if unit.is_imperial and size_l >= UNITS["cu yd"].factor / 4:
        return f"{size_l / UNITS['cu yd'].factor:.3g} cu yd"
    return volume_words(size_l, unit)


def price_words(price: float) -> str:
    """A price in the grower's own money."""
    return f"{price:,.2f}"


def filling_lines(one: Filling, garden: Garden) -> list[str]:
    """A new bed: a head with its volume and depth, then layers from the bottom up, and notes."""
    unit = one.bed.note.unit
    by = f", by {date_words(one.first_in)}" if one.first_in else ""
    depth = _depth(one.bed.soil_depth_m, unit)
    lines = [f"{one.bed.name}{by}: {volume_words(one.volume_l, unit)}, {depth} deep"]
    if len(one.layers) > 1:
        lines.append("from the bottom up:")
    lines += [_layer_words(layer, one) for layer in one.layers]
    settling = garden.soil.figures["settling"]
    if one.settles_l > 0:
        by = f"{_depth(settling.middle / 1000, unit)} {in_brackets(settling.source)}"
        lines.append(
            f"Keep {volume_words(one.settles_l, unit)} of mix to top it up: in its first season it "
            f"may settle by {by}. Measure it."
        )
    lines.append(f"Full and wet it may weigh about {weight_words(one.wet_kg, unit)}.")
    if one.shallow_for:
        crops = ", ".join(one.shallow_for)
        lines.append(f"Settled it is too shallow for {crops} until it is topped up.")
    return [*lines, *(_DOUBTS[doubt] for doubt in one.doubts)]


def _layer_words(layer: Layer, one: Filling) -> str:
    unit = one.bed.note.unit
    made_of = f" ({mix_words(one.mix)})" if layer.kind is LayerKind.GOOD_MIX else ""
    depth = _depth(layer.depth_m, unit)
    return f"{depth} of {layer.kind}: {volume_words(layer.volume_l, unit)}{made_of}"


def _depth(depth_m: float, unit: Unit) -> str:
    return length_words(depth_m * 1e6, unit)


def _order_lines(garden: Garden, order: Order, width: int) -> Iterator[str]:
    unit = garden.unit
    yield "To buy, topping up included:"
    names = max(len(line.part) for line in order.lines)
    for line in order.lines:
        volume = volume_words(line.volume_l, unit)
        bags, loads = count_words(line.bags, "bag"), count_words(line.loads, "load")
        words = f"{line.part:<{names}}  {volume}: {bags}, or {loads}"
        yield paragraph(words, width, "  ")
    for note in order_notes(garden, order):
        yield textwrap.fill(note, width, initial_indent="  ", subsequent_indent="  ")


def order_notes(garden: Garden, order: Order) -> Iterator[str]:
    """What a bag and a load hold, a bag too heavy for one, and what either way costs."""
    soil, unit = garden.soil, garden.unit
    bag, load = (parcel_words(one.size.middle, unit) for one in (soil.bag, soil.bulk))
    weighs = weight_words(order.bag_kg, unit)
    bag += f" {in_brackets(soil.bag.size.source)}"
    load += f" {in_brackets(soil.bulk.size.source)}"
    yield f"A bag holds {bag} and weighs about {weighs}; a load is {load}."
    limit = soil.figures["lifting"]
    if order.bag_kg > limit.middle:
        most = f"{weight_words(limit.middle, unit)} {in_brackets(limit.source)}"
        yield f"A bag is heavier than {most}, too much for one person: split it or lift in two."
    cost = " ".join(_cost_words(order))
    if cost:
        yield cost


def _cost_words(order: Order) -> Iterator[str]:
    bags, loads = order.bags_cost, order.loads_cost
    if not isinstance(bags, NoPrice):
        yield f"In bags ({order.bags}): {price_words(bags)}."
    if not isinstance(loads, NoPrice):
        yield f"In loads ({order.loads}): {price_words(loads)}, without delivery."
    if not isinstance(bags, NoPrice) and not isinstance(loads, NoPrice) and bags != loads:
        yield f"{'Loads' if loads < bags else 'Bags'} cost less."


def _other_mixes(garden: Garden) -> str:
    soil = garden.soil
    known = [soil.mix, *soil.other_mixes]
    return (
        "Mixes by volume: "
        + "; ".join(f"{mix_words(one)} {in_brackets(one.source)}" for one in known)
        + "."
    )


def tight_lines(tight: Sequence[TightDepth]) -> list[str]:
    """What it is about, then a line for each bed less deep than crops would have it."""
    lines = [_TIGHT]
    for bed, found in groupby(tight, key=lambda one: one.bed):
        crops = ", ".join(f"{one.crop.name} {_likes(one)}" for one in found)
        lines.append(f"{bed.name}, {_depth(bed.soil_depth_m, bed.note.unit)}: {crops}")
    return lines


def _likes(one: TightDepth) -> str:
    depth = one.crop.ground.soil_depth
    return f"{length_words(depth.high * 1000, one.bed.note.unit)} {in_brackets(depth.source)}"
