"""Kept ground in the text: what already stands in a bed, where, and until when (§29)."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.garden import Bed, KeptGround, SeasonWish
from planner.reading.bed_part import read_bed_name
from planner.reading.crops_file import CropShelf
from planner.reading.toml_table import TomlTable
from planner.terms import Dimension, length_words

_EXAMPLE = "3 ft"
# What stands for good does so from well before the season until well after it.
_BEYOND = timedelta(days=731)


@dataclass(frozen=True, slots=True)
class _Known:
    """What kept ground is read against; `told` holds each piece told so far."""

    shelf: CropShelf
    wish: SeasonWish | None
    beds: Sequence[Bed]
    told: list[KeptGround] = field(default_factory=list)


def read_kept(
    plan: TomlTable, shelf: CropShelf, wish: SeasonWish | None, beds: Sequence[Bed]
) -> tuple[KeptGround, ...]:
    """All kept ground that can stand; problems for the rest.

    What is gone long before the season, or comes long after it, holds no ground of it.
    """
    known = _Known(shelf, wish, beds)
    for table in plan.parts_if_any("kept", "Kept ground"):
        kept = _read_one(table, known)
        table.refuse_unknown()
        if kept is not None and kept.first < kept.last and _is_free(kept, table, known):
            known.told.append(kept)
    return tuple(known.told)


def _read_one(table: TomlTable, known: _Known) -> KeptGround | None:
    bed = read_bed_name(table, known.beds)
    what = table.text("what") if table.need("what", 'what = "rhubarb"') else None
    family = _read_family(table, what, known)
    stretch = _read_stretch(table, bed)
    days = _read_days(table, known.wish)
    if bed is None or what is None or family is None or stretch is None or days is None:
        return None
    return KeptGround(bed.name, what, family, *stretch, *days, table.place("what"))


def _read_family(table: TomlTable, what: str | None, known: _Known) -> str | None:
    if "family" in table:
        written = table.text("family")
        return written.capitalize() if written else None
    return known.shelf.family(what) if what else ""


def _read_stretch(table: TomlTable, bed: Bed | None) -> tuple[int, int] | None:
    """From and to along the bed's line, micrometres; the whole of it when neither is stated."""
    stated = [key for key in ("from", "to") if key in table]
    if not stated:
        return (0, bed.line_um) if bed else None
    ends = [table.quantity_from_zero(key, Dimension.LENGTH, _EXAMPLE) for key in stated]
    if len(stated) == 1:
        other = "to" if stated == ["from"] else "from"
        table.report(
            "missing-key",
            stated[0],
            f'"{stated[0]}" stands alone.',
            f'add "{other}", or take this line out if the whole bed is kept.',
        )
        return None
    first, last = ends
    if first is None or last is None:
        return None
    from_um, to_um = round(first.si * 1e6), round(last.si * 1e6)
    if from_um >= to_um:
        wrong = f"It ends at {last}, not beyond {first}, where it begins."
        table.report("out-of-range", "to", wrong, "both are counted from the bed's marked end.")
        return None
    if bed is not None and to_um > bed.line_um:
        long = length_words(bed.line_um, bed.note.unit)
        table.report(
            "out-of-range",
            "to",
            f'It ends at {last}; the line of the bed "{bed.name}" is {long} long.',
            "let it end within the bed.",
        )
        return None
    return from_um, to_um


def _read_days(table: TomlTable, wish: SeasonWish | None) -> tuple[date, date] | None:
    stated = [table.day(key) if key in table else None for key in ("since", "until")]
    since, until = stated
    if since is not None and until is not None and until <= since:
        table.report(
            "date-order",
            "until",
            f"Its ground is free on {until}, before it stands there from {since}.",
            "check the year of both dates.",
        )
        return None
    if wish is None:
        return None
    first, last = wish.first - _BEYOND, wish.last + _BEYOND
    return max(first, since or first), min(last, until or last)


def _is_free(kept: KeptGround, table: TomlTable, known: _Known) -> bool:
    clash = next((one for one in known.told if one.overlaps(kept)), None)
    if clash is None:
        return True
    table.report(
        "kept-twice",
        "what",
        f"Some of this ground is kept for {clash.what} already, on line {clash.place.line}.",
        "let one end where, or on the day on which, the other begins.",
    )
    return False
