"""Soil in the text: [soil] says what beds are filled and fed with, [[manure]] where manure was."""

from collections.abc import Sequence
from datetime import timedelta

from planner.almanac import RICH_MIX, USUAL_MIX, soil_figures, soil_mixes
from planner.garden import Bed, Manure, NoPrice, Parcel, SeasonWish, SoilMix, SoilWish, Target
from planner.reading.bed_part import read_bed_name
from planner.reading.crops_file import CropShelf
from planner.reading.plan_soil import crop_soils
from planner.reading.toml_table import TomlTable
from planner.terms import Dimension, Figure

# A depth of more than this is not spread on a bed, nor does a bed settle by it.
_DEEPEST_M = 0.6
_SMALLEST_L, _LARGEST_L = 1.0, 100_000.0
_PARCELS = "between 1 L (a quarter of a gallon) and 100 m3 (130 cu yd)"
_DEAREST = 1e6
_MIX_EXAMPLE = "{ topsoil = 2, compost = 1 }"
_MOST_PARTS = 1000.0
_LONG_AGO = timedelta(days=731)
_DEPTHS = {"settling": "2 in", "top_dress": "0.5 in", "compost_a_year": "1 in"}


def read_soil(
    plan: TomlTable,
    shelf: CropShelf,
    wish: SeasonWish | None,
    beds: Sequence[Bed],
    targets: Sequence[Target],
) -> SoilWish:
    """All that soil work is counted with; problems for what cannot stand."""
    table = plan.table("soil", "The soil") if "soil" in plan else None
    figures = dict(soil_figures())
    mixes = soil_mixes()
    mix = mixes[USUAL_MIX]
    bag, bulk = (Parcel(figures[name], NoPrice()) for name in ("bag", "bulk"))
    if table is not None:
        figures |= {key: one for key in _DEPTHS if (one := _read_depth(table, key)) is not None}
        mix = _read_mix(table) or mix
        bag, bulk = _read_parcel(table, "bag", bag), _read_parcel(table, "bulk", bulk)
        table.refuse_unknown()
    return SoilWish(
        mix=mix,
        rich_mix=mixes[RICH_MIX],
        other_mixes=tuple(one for name, one in mixes.items() if name not in {USUAL_MIX, RICH_MIX}),
        bag=bag,
        bulk=bulk,
        figures=figures,
        manure=_read_manure(plan, wish, beds),
        crops=crop_soils(targets, shelf),
    )


def _read_depth(table: TomlTable, key: str) -> Figure | None:
    if key not in table:
        return None
    depth = table.quantity_from_zero(key, Dimension.LENGTH, _DEPTHS[key])
    if depth is None:
        return None
    if depth.si > _DEEPEST_M:
        table.report(
            "out-of-range",
            key,
            f'"{key}" is {depth}; it is at most 60 cm (24 in).',
            f'check the number and its unit; it is written like "{_DEPTHS[key]}".',
        )
        return None
    return Figure(depth.si * 1000, depth.si * 1000, "mm", table.source(key))


def _read_mix(table: TomlTable) -> SoilMix | None:
    if "mix" not in table:
        return None
    parts = table.table("mix", "The mix", _MIX_EXAMPLE)
    if parts is None:
        return None
    if not parts.keys or not all(name.strip() for name in parts.keys):
        table.report(
            "missing-key",
            "mix",
            "A mix is made of parts that have names.",
            f"write it like: mix = {_MIX_EXAMPLE}",
        )
        return None
    counts = {name: parts.number(name, 0.01, _MOST_PARTS) for name in parts.keys}
    read = {name: count for name, count in counts.items() if count is not None}
    return SoilMix(read, table.source("mix")) if len(read) == len(counts) else None


def _read_parcel(table: TomlTable, key: str, usual: Parcel) -> Parcel:
    size = table.quantity(key, Dimension.VOLUME, "0.75 cu ft") if key in table else None
    if size is not None and not _SMALLEST_L <= size.si <= _LARGEST_L:
        table.report(
            "out-of-range",
            key,
            f'"{key}" is {size}; it is {_PARCELS}.',
            'check the number and its unit; it is written like "0.75 cu ft".',
        )
        size = None
    price_key = f"{key}_price"
    price = table.number(price_key, 0, _DEAREST) if price_key in table else None
    figure = usual.size
    if size is not None:
        figure = Figure(size.si, size.si, "L", table.source(key))
    return Parcel(figure, NoPrice() if price is None else price)


def _read_manure(
    plan: TomlTable, wish: SeasonWish | None, beds: Sequence[Bed]
) -> tuple[Manure, ...]:
    found = [_read_one(table, wish, beds) for table in plan.parts_if_any("manure", "Manure")]
    return tuple(one for one in found if one is not None)


def _read_one(table: TomlTable, wish: SeasonWish | None, beds: Sequence[Bed]) -> Manure | None:
    bed = read_bed_name(table, beds)
    on = table.day("on") if table.need("on", "on = 2026-11-01") else None
    table.refuse_unknown()
    if bed is None or on is None or wish is None:
        return None
    if not wish.first - _LONG_AGO <= on <= wish.last:
        table.report(
            "out-of-range",
            "on",
            f"{on} is not within two years before the season, nor in it.",
            "check the year, or take this manure out: it no longer matters.",
        )
        return None
    return Manure(bed.name, on, table.place("on"))
