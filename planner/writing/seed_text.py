"""Seed in words: a shopping list by month, and what it rests on."""

import textwrap
from collections.abc import Iterator
from itertools import groupby

from planner.bedwork import NoTrays, Seed, SeedNeed
from planner.terms import count_words, day_words
from planner.writing.paragraph import paragraph, paragraphs


def seed_text(seed: Seed, width: int) -> str:
    """The shopping list by month of ordering, what the box has, trays, and how seed is counted."""
    if not seed.needs:
        return "Nothing is still to be sown."
    months = [
        "\n".join([head, *(_item(f"[ ] {line}", width) for line in lines)])
        for head, lines in seed_months(seed)
    ]
    parts = [*(months or ["Nothing is to be bought."]), paragraph(in_the_box(seed), width)]
    parts += [paragraphs(seed_grounds(seed), width)]
    return "\n\n".join(filter(None, parts))


def _item(text: str, width: int) -> str:
    return textwrap.fill(text, width, initial_indent="  ", subsequent_indent="      ")


def seed_months(seed: Seed) -> Iterator[tuple[str, list[str]]]:
    """What to buy, by the month in which to order it; first what to order now."""
    buys = [one for one in seed.needs if one.to_buy]
    late = [one for one in buys if one.order_by <= seed.as_of]
    if late:
        yield "Order now", [_line(one) for one in late]
    rest = (one for one in buys if one.order_by > seed.as_of)
    for _, needs in groupby(rest, key=lambda one: (one.order_by.year, one.order_by.month)):
        listed = list(needs)
        yield f"{listed[0].order_by:%B %Y}", [_line(one) for one in listed]


def in_the_box(seed: Seed) -> str:
    """Crops whose seed the box has already; empty where there are none."""
    has = [one for one in seed.needs if not one.to_buy]
    names = ", ".join(f"{one.crop.name} ({_count(one, one.seeds)})" for one in has)
    return f"In the box already: {names}." if has else ""


def _line(one: SeedNeed) -> str:
    packets = f", {count_words(one.packets, 'packet')} of {one.kind.packet}" if one.packets else ""
    box = f" beside {one.in_box} in the box" if one.in_box else ""
    old = f" (the {one.too_old} in the box are too old)" if one.too_old else ""
    return (
        f"{one.crop.name}: {_count(one, one.to_buy)}{packets}{box}{old}, "
        f"for {count_words(one.plants, 'plant')}; by {day_words(one.order_by)}, "
        f"first used {day_words(one.first_on)}."
    )


def _count(one: SeedNeed, number: int) -> str:
    thing = one.crop.start_from.value.removesuffix("s")
    return count_words(number, thing)


def seed_grounds(seed: Seed) -> Iterator[str]:
    """What the count of seeds rests on, trays, and how to tell of packets and the box."""
    wish = seed.garden.seed
    yield (
        f"Seeds are counted so that {wish.confidence:.0%} of times enough plants remain, where "
        f"{wish.kept.middle:.0%} of seedlings are kept ({wish.kept.source}). "
        f"{_comes_up(seed)} Sets, cloves, tubers and slips are one for each plant."
    )
    if isinstance(seed.trays, NoTrays):
        yield "Nothing is to be started indoors."
    else:
        yield (
            f"Trays: most are in use from {day_words(seed.trays.on)}: "
            f"{count_words(seed.trays.cells, 'cell')} with a seed in each, "
            f"{count_words(seed.trays.trays, 'tray')} of {wish.tray_cells}."
        )
    if not all(one.kind.packet for one in seed.needs):
        yield (
            "For packets, and to use what is in the seed box, add a part for each crop to "
            'garden.toml: [[packet]] with crop = "radish", seeds = 300, and if you like packed = '
            f"{seed.as_of.year - 1}, left = 120, germination = 0.85."
        )


def _comes_up(seed: Seed) -> str:
    shares: dict[float, list[str]] = {}
    for one in seed.needs:
        if one.is_seed:
            shares.setdefault(round(one.comes_up, 2), []).append(one.crop.name)
    if not shares:
        return ""
    usual = max(shares, key=lambda share: len(shares[share]))
    others = [
        f"{share:.0%} of {', '.join(names)}" for share, names in shares.items() if share != usual
    ]
    also = f", but {'; '.join(others)}" if others else ""
    source = next(
        one.kind.comes_up.source
        for one in seed.needs
        if one.is_seed and round(one.comes_up, 2) == usual
    )
    return f"{usual:.0%} come up{also} ({source}); old seed less, by its age and seed life."
