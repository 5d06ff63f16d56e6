"""`planner crops`: what the almanac knows of crops."""

from dataclasses import asdict
from typing import Annotated

import typer

from planner.almanac import (
    CropPage,
    EmergenceTable,
    PublishedRow,
    bibliography,
    canopies,
    crop_page,
    crop_pages,
    emergence_tables,
    sharing_pairs,
)
from planner.cli.crop_names import what_to_write
from planner.cli.shell import JsonOption, print_json, refuse
from planner.garden import SharedGround, SharingPattern
from planner.terms import ONE_OF, Place, Problem


def crops(
    name: Annotated[str | None, typer.Argument(help="A crop; all are listed without one.")] = None,
    json: JsonOption = False,
) -> None:
    """List the crops, or show one with every figure and its source.

    Example: planner crops radish
    """
    page = _page(name) if name is not None else None
    if json:
        print_json(asdict(page) if page else _names_json())
    elif page:
        _show(page)
    else:
        _list_names()


def _page(name: str) -> CropPage:
    page = crop_page(name)
    if page is not None:
        return page
    refuse(
        Problem(
            "nothing-found",
            Place("planner crops"),
            f'The almanac has no crop "{name}".',
            what_to_write(name, "planner crops lists them all."),
        )
    )


def _names_json() -> list[dict[str, object]]:
    return [{"crop": page.name, "other_names": page.other_names} for page in crop_pages().values()]


def _list_names() -> None:
    for page in crop_pages().values():
        others = f" ({', '.join(page.other_names)})" if page.other_names else ""
        print(f"{page.name}{others}")


def _show(page: CropPage) -> None:
    others = f" (also {', '.join(page.other_names)})" if page.other_names else ""
    print(f"{page.label}{others}\n\nThe planner counts with:")
    for row in page.used.values():
        print(f"  {_line(row)}")
    table = emergence_tables().get(page.name)
    if table is not None:
        print(f"  {_emergence_line(table)}")
    pairs = _show_sharing(page.name)
    print("\nAlso published (kept for comparison):")
    for row in page.rows:
        if not row.used:
            print(f"  {_line(row)}")
    print("\nSources:")
    keys = {row.source for row in page.rows} | ({table.source.key} if table else set())
    keys |= {canopies()[page.name].source.key, *(pair.source.key for pair in pairs)}
    for key in sorted(keys):
        entry = bibliography()[key]
        print(f"  {key}: {', '.join(filter(None, (entry.title, entry.publisher, entry.year)))}")


def _show_sharing(crop: str) -> list[SharedGround]:
    """Show when its canopy closes and with which crops it goes; the pairs shown."""
    canopy = canopies()[crop]
    closes = f"{canopy.closes_at:.0%} of its time in the ground"
    print(f"  canopy closed at: {closes} [{canopy.source.key}]")
    pairs = [pair for pair in sharing_pairs() if crop in {pair.host, pair.guest}]
    if pairs:
        print("\nShares ground (docs/rules.md §30):")
    for pair in pairs:
        print(f"  {_PATTERN_WORDS[pair.pattern].format(pair=pair)} [{pair.source.key}]")
    return pairs


def _line(row: PublishedRow) -> str:
    span = row.low if row.high in {"", row.low} else f"{row.low} to {row.high}"
    unit = _UNITS.get(row.unit, row.unit)
    unit = ONE_OF.get(unit, unit) if span == "1" else unit
    words = f"{row.figure.replace('_', ' ')}: {span} {unit}".rstrip()
    basis = f", {row.basis}" if row.basis else ""
    return f"{words} [{row.source}{basis}]"


def _emergence_line(table: EmergenceTable) -> str:
    """Days to emerge in soil of each temperature, and the temperatures at which nothing came up."""
    steps = [(degc, f"{days:g} days") for degc, days in table.points]
    steps += [(degc, "none comes up") for degc in (*table.too_cold_degc, *table.too_hot_degc)]
    words = ", ".join(f"{degc:g} degC {what}" for degc, what in sorted(steps))
    basis = "; ".join((str(table.source), *table.notes))
    return f"Emergence by soil temperature: {words} [{basis}]"


_PATTERN_WORDS = {
    SharingPattern.BETWEEN: "{pair.guest} between young {pair.host}",
    SharingPattern.BENEATH: "{pair.guest} beneath {pair.host}, or on its shade side",
    SharingPattern.RELAY: "{pair.guest} under {pair.host} in its last weeks, and after it",
}
_UNITS = {"d": "days", "n": "", "text": "", "class": ""}
