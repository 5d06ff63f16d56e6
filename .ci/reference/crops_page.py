"""docs/crops.md: every crop of the almanac, the figures it is counted with, and their sources."""

import re
from collections.abc import Iterator
from functools import cache

from planner.almanac import (
    ANY_OTHER,
    CropPage,
    PublishedRow,
    bibliography,
    canopies,
    crop_pages,
    crop_waters,
    emergence_tables,
    seed_life,
    sharing_pairs,
)
from planner.garden import CropWater, SharingPattern
from reference.tables_of_text import rows, source_link

_HEAD = """\
# Crops

Every crop of the almanac with the figures it is counted with. Each names its source, a key of the
[bibliography](bibliography.md); `memory` means from memory, not seen in a source: correct it in
`crops.toml` if you know better ([how](how-to/own-crops.md)). What each figure means stands in
[figures.md](figures.md). More rows are published than counted with; `planner crops NAME` shows
all of a crop, and [rules.md](rules.md) how figures become days: freezes §5, heat §21, emergence
§24, shared ground §30, water §48, seed §51.
"""

_UNITS = {"d": "days", "n": "", "text": "", "class": ""}
_HEADINGS = ("figure", "counted with", "what for", "source", "note")
_PATTERNS = {
    SharingPattern.BETWEEN: "{guest} between young {host}",
    SharingPattern.BENEATH: "{guest} beneath {host}",
    SharingPattern.RELAY: "{guest} under {host} in its last weeks, and after it",
}
_Row = tuple[str, str, str, str, str]


def crop_anchor(name: str) -> str:
    """Where on the page a crop stands."""
    return re.sub(r"[^a-z0-9]+", "-", name.casefold())


def crops_text() -> str:
    """The page: a list to find a crop in, then crop by crop."""
    parts = [_HEAD]
    for page in crop_pages().values():
        others = f" ({', '.join(page.other_names)})" if page.other_names else ""
        parts.append(f"- [{page.name}](#{crop_anchor(page.name)}){others}")
    for page in crop_pages().values():
        parts += ["", f"## {page.name}", "", *rows(_HEADINGS, _figures(page))]
    other = crop_waters()[ANY_OTHER]
    parts += ["", "## any other crop", "", "Of a crop that is like none of these:", ""]
    parts += rows(_HEADINGS, [*_thirst(other), _seed("")])
    return "\n".join([*parts, ""])


def _figures(page: CropPage) -> Iterator[_Row]:
    for row in page.used.values():
        yield (_words(row.figure), _amount(row), row.basis, source_link(row.source),
               _linked(row.note))  # fmt: skip
    table = emergence_tables().get(page.name)
    if table is not None:
        steps = [f"{degc:g} degC {days:g} days" for degc, days in table.points]
        steps += [f"{degc:g} degC none" for degc in (*table.too_cold_degc, *table.too_hot_degc)]
        steps.sort(key=lambda step: float(step.split()[0]))
        yield ("emergence", ", ".join(steps), "soil at that temperature",
               source_link(table.source.key), _linked("; ".join(table.notes)))  # fmt: skip
    canopy = canopies()[page.name]
    yield ("canopy closes", f"{canopy.closes_at:.0%}", "of its time in the ground",
           source_link(canopy.source.key), _linked(canopy.note))  # fmt: skip
    yield from _thirst(crop_waters()[page.name])
    yield _seed(page.name)
    for pair in sharing_pairs():
        if page.name in {pair.host, pair.guest}:
            words = _PATTERNS[pair.pattern].format(guest=pair.guest, host=pair.host)
            yield ("shares ground", words, "", source_link(pair.source.key), "")


def _thirst(water: CropWater) -> Iterator[_Row]:
    source, note = source_link(water.source.key), _linked(water.note)
    coefficients = f"{water.initial:g}, {water.mid:g}, {water.end:g}"
    yield ("crop coefficient", coefficients, "first, middle and last stage", source, note)
    days = ", ".join(f"{one:g}" for one in water.stages)
    yield ("stages", f"{days} days", "first, growing, middle, last", source, "")


def _seed(crop: str) -> _Row:
    life = seed_life(crop)
    return (
        "seed keeps",
        str(life).replace("1 years", "1 year"),
        "in good storage",
        source_link(life.source.key),
        "",
    )


def _amount(row: PublishedRow) -> str:
    unit = _UNITS.get(row.unit, row.unit)
    told = _span(row.low, row.high, unit)
    if row.unit == "degC":
        low, high = (f"{float(one) * 9 / 5 + 32:.0f}" for one in (row.low, row.high or row.low))
        told += f" ({_span(low, high, 'degF')})"
    return told


def _span(low: str, high: str, unit: str) -> str:
    return f"{low if high in {'', low} else f'{low} to {high}'} {unit}".strip()


def _words(figure: str) -> str:
    return figure.replace("_", " ")


@cache
def _keys() -> re.Pattern[str]:
    keys = sorted((key for key in bibliography() if key.upper() == key), key=len, reverse=True)
    return re.compile(rf"(?<![\w/-])(?:{'|'.join(map(re.escape, keys))})(?![\w/-])")


def _linked(note: str) -> str:
    """A note in which each key leads to its work."""
    return _keys().sub(lambda found: source_link(found[0]), note)
