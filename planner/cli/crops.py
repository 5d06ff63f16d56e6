"""`planner crops`: what the almanac knows of crops."""

from dataclasses import asdict
from typing import Annotated

import typer

from planner.almanac import CropPage, PublishedRow, bibliography, crop_page, crop_pages
from planner.cli.shell import JsonOption, print_json, refuse
from planner.reading import nearest_word
from planner.terms import Place, Problem


def crops(
    name: Annotated[str | None, typer.Argument(help="A crop; all are listed without one.")] = None,
    json: JsonOption = False,
) -> None:
    """List the crops, or show one with every figure and its source.

    Example: planner crops radish
    """
    if name is None:
        _list(json)
        return
    page = crop_page(name)
    if page is None:
        others = [other for one in crop_pages().values() for other in one.other_names]
        near = nearest_word(name, [*crop_pages(), *others])
        refuse(
            [
                Problem(
                    "nothing-found",
                    Place("planner crops"),
                    f'The almanac has no crop "{name}".',
                    f'try "{near}".' if near else "planner crops lists them all.",
                )
            ]
        )
    if json:
        print_json(asdict(page))
    else:
        _show(page)


def _list(json: bool) -> None:
    pages = crop_pages().values()
    if json:
        print_json([{"crop": page.name, "other_names": page.other_names} for page in pages])
        return
    for page in pages:
        others = f" ({', '.join(page.other_names)})" if page.other_names else ""
        print(f"{page.name}{others}")


def _show(page: CropPage) -> None:
    others = f" (also {', '.join(page.other_names)})" if page.other_names else ""
    print(f"{page.label}{others}\n\nThe planner counts with:")
    for row in page.used.values():
        print(f"  {_line(row)}")
    print("\nAlso published (kept for comparison):")
    for row in page.rows:
        if not row.used:
            print(f"  {_line(row)}")
    print("\nSources:")
    for key in sorted({row.source for row in page.rows}):
        entry = bibliography()[key]
        print(f"  {key}: {', '.join(filter(None, (entry.title, entry.publisher, entry.year)))}")


def _line(row: PublishedRow) -> str:
    span = row.low if row.high in {"", row.low} else f"{row.low} to {row.high}"
    words = f"{row.figure.replace('_', ' ')}: {span} {_UNITS.get(row.unit, row.unit)}".rstrip()
    basis = f", {row.basis}" if row.basis else ""
    return f"{words} [{row.source}{basis}]"


_UNITS = {"d": "days", "n": "", "text": "", "class": ""}
