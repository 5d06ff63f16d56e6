"""Seed in the text: how sure to be of enough plants, and what packets and seed box hold (§51)."""

from collections.abc import Sequence
from dataclasses import replace

from planner.almanac import seed_life, usual_figures
from planner.garden import SeedKind, SeedWish, Target
from planner.reading.crops_file import CropShelf
from planner.reading.near_miss import folded, nearest_word
from planner.reading.own_figures import own_or_usual, own_or_usual_count
from planner.reading.toml_table import TomlTable
from planner.terms import FIRST_YEAR, LAST_YEAR

_MOST_SEEDS = 1_000_000


def read_seed(plan: TomlTable, shelf: CropShelf, targets: Sequence[Target]) -> SeedWish:
    """What seeds are counted with: the plan's own figures over the usual ones."""
    table = plan.table("seed", "The seed part") if "seed" in plan else None
    usual = usual_figures("seed")
    any_kind = SeedKind(usual["comes_up"], usual["life_years"], packet=0)
    kinds = {
        name: replace(any_kind, life_years=seed_life(shelf.model(name)))
        for name in dict.fromkeys(target.crop.name for target in targets)
    }
    _read_packets(plan, shelf, kinds, any_kind)
    wish = SeedWish(
        confidence=own_or_usual(table, "confidence", (0.5, 0.999), usual["confidence"]).middle,
        kept=own_or_usual(table, "kept", (0.05, 1.0), usual["kept"]),
        lead_weeks=own_or_usual(table, "lead_weeks", (0.0, 52.0), usual["lead_weeks"]).middle,
        tray_cells=int(
            own_or_usual_count(table, "tray_cells", (1, 1000), usual["tray_cells"]).middle
        ),
        kinds=kinds,
    )
    if table is not None:
        table.refuse_unknown()
    return wish


def _read_packets(
    plan: TomlTable, shelf: CropShelf, kinds: dict[str, SeedKind], any_kind: SeedKind
) -> None:
    """Put what is told of packets to the crops wanted; `any_kind` is what others are read over."""
    told: dict[str, TomlTable] = {}
    for table in plan.parts_if_any("packet", "A packet of seed"):
        name = _read_crop(table, shelf, kinds)
        usual = kinds.get(name or "", any_kind)
        kind = replace(
            usual,
            comes_up=own_or_usual(table, "germination", (0.01, 1.0), usual.comes_up),
            life_years=own_or_usual(table, "keeps_years", (0.5, 50.0), usual.life_years),
            packet=_whole(table, "seeds", (1, _MOST_SEEDS)),
            packed_in=_whole(table, "packed", (FIRST_YEAR, LAST_YEAR)),
            in_box=_whole(table, "left", (0, _MOST_SEEDS)),
        )
        _need_year(table)
        table.refuse_unknown()
        if name is not None and _is_new(name, table, told):
            kinds[name] = kind


def _whole(table: TomlTable, key: str, within: tuple[int, int]) -> int:
    """A whole number of a packet; 0 where it is not told."""
    number = table.whole_number(key, *within) if key in table else None
    return number or 0


def _read_crop(table: TomlTable, shelf: CropShelf, kinds: dict[str, SeedKind]) -> str | None:
    """The name of a crop wanted; a packet of a crop that is not wanted helps nobody."""
    written = table.text("crop") if table.need("crop", 'crop = "radish"') else None
    if written is None:
        return None
    name = folded(written) if folded(written) in kinds else shelf.model(written)
    # Without targets that can stand, one of them has a problem of its own.
    if name in kinds or not kinds:
        return name if name in kinds else None
    near = nearest_word(written, kinds)
    table.report(
        "unknown-crop",
        "crop",
        f'No target wants "{written}".',
        f'write "{near}".' if near else f"name one of: {', '.join(kinds)}; or take it out.",
    )
    return None


def _need_year(table: TomlTable) -> None:
    if "left" in table and "packed" not in table:
        table.report(
            "missing-key",
            "left",
            "How well old seed comes up hangs on its age.",
            "add the year on the packet: packed = 2025",
        )


def _is_new(name: str, table: TomlTable, told: dict[str, TomlTable]) -> bool:
    if name in told:
        table.report(
            "name-taken",
            "crop",
            f"Line {told[name].place('crop').line} already tells of seed of {name}.",
            "tell all of it in one place.",
        )
        return False
    told[name] = table
    return True
