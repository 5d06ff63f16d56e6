"""Targets in the text: each week, for a number of people, or once by a day."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from planner.garden import (
    USUAL_PRIORITY,
    Bed,
    Crop,
    OnceTarget,
    SeasonWish,
    Target,
    WeeklyTarget,
)
from planner.reading.crops_file import CropShelf
from planner.reading.near_miss import nearest_word
from planner.reading.season_part import read_span
from planner.reading.toml_table import TomlTable
from planner.terms import UNITS, Figure, Unit, Week, conversion

_AMOUNTS = ("each_week", "for_people", "once")
_LARGEST_AMOUNT = 100_000.0
_PRIORITIES = (0.1, 10.0)
_METRIC_BEDS = {"mm", "cm", "m"}
_METRIC_WEIGHTS = {"oz": "g", "lb": "kg"}


@dataclass(frozen=True, slots=True)
class _Known:
    """What targets are read against; `units` holds the unit of each crop told so far."""

    shelf: CropShelf
    wish: SeasonWish | None
    is_metric: bool
    units: dict[str, Unit] = field(default_factory=dict)


def read_targets(
    plan: TomlTable, shelf: CropShelf, wish: SeasonWish | None, beds: Sequence[Bed]
) -> list[Target]:
    """Every target that can stand; problems for the others.

    Where the first bed is measured in centimetres or metres, portions are weighed in grams.
    """
    targets: list[Target] = []
    known = _Known(shelf, wish, bool(beds) and beds[0].note.unit.name in _METRIC_BEDS)
    taken: dict[tuple[str, Week], int] = {}
    remedy = 'add [[target]] with a crop and each_week = "25 roots".'
    for table in plan.parts("target", "A target", remedy):
        target = _read_target(table, known)
        priority = _read_priority(table)
        table.refuse_unknown()
        if target is None or not _is_free(target, table, taken) or priority is None:
            continue
        targets.append(replace(target, priority=priority))
    return targets


def _read_target(table: TomlTable, known: _Known) -> Target | None:
    crop = _read_crop(table, known.shelf)
    stated = [key for key in _AMOUNTS if key in table]
    wish = known.wish
    usual = (wish.first, wish.last) if wish else None
    if len(stated) != 1:
        read_span(table, usual or (date.min, date.max))
        table.report(
            "missing-key" if not stated else "unknown-key",
            stated[1] if stated else "",
            "A target says how much in one way: each_week, for_people or once.",
            'add each_week = "25 roots".' if not stated else f"keep {stated[0]} or {stated[1]}.",
        )
        return None
    if stated[0] == "once":
        return _read_once(table, crop, known)
    amount = _read_amount(table, stated[0], crop, known)
    span = read_span(table, usual or (date.min, date.max))
    if crop is None or amount is None or span is None or wish is None:
        return None
    if not _inside(table, "to" if "to" in table else "from", span, wish):
        return None
    counted, each_week = amount
    return WeeklyTarget(counted, each_week, *span, table.place("crop"))


def _read_priority(table: TomlTable) -> float | None:
    return table.number("priority", *_PRIORITIES) if "priority" in table else USUAL_PRIORITY


def _read_once(table: TomlTable, crop: Crop | None, known: _Known) -> OnceTarget | None:
    wish = known.wish
    for key in ("from", "to"):
        if key in table:
            table.report(
                "unknown-key",
                key,
                f'A target with once has no "{key}".',
                "say with by = 2027-09-30 when all of it is wanted.",
            )
    amount = _read_amount(table, "once", crop, known)
    by = table.day("by") if table.need("by", "by = 2027-09-30") else None
    if amount is None or by is None or wish is None or not _inside(table, "by", (by, by), wish):
        return None
    return OnceTarget(*amount, by, table.place("crop"))


def _inside(table: TomlTable, key: str, span: tuple[date, date], wish: SeasonWish) -> bool:
    if wish.first <= span[0] and span[1] <= wish.last:
        return True
    table.report(
        "target-outside-season",
        key,
        f"It wants from {span[0]} to {span[1]}; the season is {wish.first} to {wish.last}.",
        "move the target's dates or the season's.",
    )
    return False


def _read_crop(table: TomlTable, shelf: CropShelf) -> Crop | None:
    name = table.text("crop") if table.need("crop", 'crop = "radish"') else None
    if name is None:
        return None
    found = shelf.find(name)
    if isinstance(found, Crop):
        return found
    if shelf.is_doubtful(name):
        return None
    if found is None:
        near = nearest_word(name, shelf.names)
        table.report(
            "unknown-crop",
            "crop",
            f'Neither the almanac nor crops.toml has a crop "{name}".',
            f'write "{near}".' if near else "list crops with: planner crops.",
        )
    else:
        table.report(
            "crop-incomplete",
            "crop",
            f'The crop "{name}" in crops.toml lacks: {", ".join(found)}.',
            'state them there, or begin from a known crop with like = "radish".',
        )
    return None


def _read_amount(
    table: TomlTable, key: str, crop: Crop | None, known: _Known
) -> tuple[Crop, float] | None:
    if key == "for_people":
        return _for_people(table, crop, known)
    example = f"25 {crop.unit.name}" if crop else "25 roots"
    amount = table.quantity(key, None, example)
    if crop is None or amount is None:
        return None
    if amount.value > _LARGEST_AMOUNT:
        table.report("out-of-range", key, f"{amount} is more than any garden.", "check it.")
        return None
    counted = _in_unit(crop, known.units.get(crop.name, amount.unit))
    factor = conversion(amount.unit, counted.unit) if counted else None
    if counted is None or factor is None:
        table.report(
            "wrong-unit",
            key,
            f'{crop.label} is counted in {crop.unit.name}, not in "{amount.unit.name}".',
            f'write it like "{example}".',
        )
        return None
    known.units.setdefault(crop.name, counted.unit)
    return counted, amount.value * factor


def _for_people(table: TomlTable, crop: Crop | None, known: _Known) -> tuple[Crop, float] | None:
    people = table.number("for_people", 0.5, 5000)
    if crop is None or people is None:
        return None
    portion = known.shelf.portion(crop.name)
    if portion is None:
        table.report(
            "missing-key",
            "for_people",
            f"Neither the almanac nor crops.toml has a weekly portion of {crop.label}.",
            f'state the amount: each_week = "10 {crop.unit.name}".',
        )
        return None
    counted = _in_unit(crop, known.units.get(crop.name, _portion_unit(portion, known)))
    factor = conversion(UNITS[portion.unit], counted.unit) if counted else None
    if counted is None or factor is None:
        _report_portion(table, crop, portion)
        return None
    known.units.setdefault(crop.name, counted.unit)
    return counted, people * portion.middle * factor


def _portion_unit(portion: Figure, known: _Known) -> Unit:
    """The unit a portion is counted in, of the system the beds are measured in."""
    if known.is_metric:
        return UNITS[_METRIC_WEIGHTS.get(portion.unit, portion.unit)]
    return UNITS[portion.unit]


def _report_portion(table: TomlTable, crop: Crop, portion: Figure) -> None:
    table.report(
        "wrong-unit",
        "for_people",
        f"{crop.label} is counted in {crop.unit.name}; its weekly portion is {portion} "
        f"({portion.source}).",
        f'state the amount: each_week = "10 {crop.unit.name}", or a portion in {crop.unit.name} '
        "in crops.toml.",
    )


def _in_unit(crop: Crop, unit: Unit) -> Crop | None:
    """The crop counted in another unit of harvest; None when it cannot be."""
    factor = conversion(crop.unit, unit)
    if factor is None:
        return None
    return replace(crop, gives=crop.gives.times(factor, unit.name), unit=unit)


def _is_free(target: Target, table: TomlTable, taken: dict[tuple[str, Week], int]) -> bool:
    if isinstance(target, OnceTarget):
        return True
    weeks = list(_weeks(target))
    clash = next((taken[week] for week in weeks if week in taken), None)
    if clash is not None:
        table.report(
            "targets-overlap",
            "crop",
            f"{target.crop.label} already has a target for some of these weeks, on line {clash}.",
            "let one end before the other begins, or add them up into one.",
        )
        return False
    taken.update(dict.fromkeys(weeks, table.place("crop").line))
    return True


def _weeks(target: WeeklyTarget) -> Iterator[tuple[str, Week]]:
    for week in target.wants():
        yield target.crop.name, week
