"""Beds in the text: rectangular or round, with depth of soil and sun."""

from collections.abc import Sequence

from planner.garden import Bed, BedNote, Sun, SunnyEnd, rectangular_bed_line, round_bed_line
from planner.reading.near_miss import folded, nearest_word
from planner.reading.toml_table import TomlTable
from planner.reading.water_part import read_drip, read_timer
from planner.terms import Dimension, Quantity

_LARGEST_M = 200.0
_SMALLEST_M = 0.05
_SIZES = "between 5 cm (2 in) and 200 m (650 ft)"
_ENDS = (SunnyEnd.MARKED, SunnyEnd.FAR)


def read_beds(plan: TomlTable) -> list[Bed]:
    """All beds, if every one can stand; else none, and problems."""
    beds: list[Bed | None] = []
    names: dict[str, TomlTable] = {}
    remedy = "add [[bed]] with a name, length, width, soil_depth and sun."
    tables = plan.parts("bed", "A bed", remedy)
    for table in tables:
        name = table.text("name") if table.need("name", 'name = "North 1"') else None
        is_new = name is None or _is_new(name, table, names)
        bed = _read_bed(name or "", table)
        beds.append(bed if name and is_new else None)
    right = [bed for bed in beds if bed is not None]
    return right if len(right) == len(tables) else []


def read_bed_name(table: TomlTable, beds: Sequence[Bed]) -> Bed | None:
    """The bed that a table names; a problem when the plan has none of that name."""
    name = table.text("bed") if table.need("bed", 'bed = "North 1"') else None
    # Without beds one of them has a problem of its own, and may be the one meant.
    if name is None or not beds:
        return None
    named = {folded(bed.name): bed for bed in beds}
    if folded(name) in named:
        return named[folded(name)]
    near = nearest_word(name, [bed.name for bed in beds])
    names = ", ".join(bed.name for bed in beds)
    table.report(
        "unknown-bed",
        "bed",
        f'The plan has no bed "{name}".',
        f'write "{near}".' if near else f"name one of the beds: {names}.",
    )
    return None


def _is_new(name: str, table: TomlTable, names: dict[str, TomlTable]) -> bool:
    known = names.setdefault(folded(name), table)
    if known is not table:
        table.report(
            "name-taken",
            "name",
            f'Line {known.place("name").line} already names the bed "{known.text("name")}".',
            "give this bed another name.",
        )
    return known is table


def _read_bed(name: str, table: TomlTable) -> Bed | None:
    line = _read_round(table) if "diameter" in table else _read_rectangle(table)
    depth = None
    if table.need("soil_depth", 'soil_depth = "12 in"'):
        depth = table.quantity("soil_depth", Dimension.LENGTH, "12 in")
    sun = None
    if table.need("sun", 'sun = "full"'):
        sun = table.choice("sun", [one.word for one in reversed(Sun)])
    sunny_end = _read_sunny_end(table)
    is_new = table.yes_or_no("new") if "new" in table else False
    drip, timer = read_drip(table), read_timer(table)
    table.refuse_unknown()
    if line is None or depth is None or sun is None:
        return None
    if sunny_end is None or is_new is None or drip is None or timer is None:
        return None
    (line_um, width_um), size = line
    return Bed(
        name=name,
        line_um=line_um,
        width_um=width_um,
        is_round="diameter" in table,
        soil_depth_m=depth.si,
        sun=Sun[sun.upper()],
        note=BedNote(size.unit, table.place()),
        sunny_end=sunny_end,
        is_new=is_new,
        drip=drip,
        timer=timer,
    )


def _read_round(table: TomlTable) -> tuple[tuple[int, float], Quantity] | None:
    for key in ("length", "width", "sunny_end"):
        if key in table:
            table.report(
                "unknown-key", key, f'A round bed has no "{key}".', "keep diameter, or take it out."
            )
    diameter = _size(table, "diameter")
    return (round_bed_line(diameter.si), diameter) if diameter else None


def _read_rectangle(table: TomlTable) -> tuple[tuple[int, float], Quantity] | None:
    known = [table.need("length", 'length = "8 ft"'), table.need("width", 'width = "4 ft"')]
    if not all(known):
        return None
    length, width = _size(table, "length"), _size(table, "width")
    if length is None or width is None:
        return None
    return rectangular_bed_line(length.si, width.si), length


def _read_sunny_end(table: TomlTable) -> SunnyEnd | None:
    if "sunny_end" not in table or "diameter" in table:
        return SunnyEnd.UNKNOWN
    word = table.choice("sunny_end", _ENDS)
    return None if word is None else SunnyEnd(word)


def _size(table: TomlTable, key: str) -> Quantity | None:
    size = table.quantity(key, Dimension.LENGTH, "8 ft")
    if size is not None and not _SMALLEST_M <= size.si <= _LARGEST_M:
        table.report(
            "out-of-range",
            key,
            f'"{key}" is {size}; a bed has {_SIZES}.',
            "check the number and its unit.",
        )
        return None
    return size
