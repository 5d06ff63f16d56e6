"""`planner why`: the reasons behind the dates of a sowing."""

import textwrap
from collections.abc import Container, Iterable
from pathlib import Path
from typing import Annotated

import typer

from planner.almanac import crop_page
from planner.cli.folder import need_record
from planner.cli.screen import columns
from planner.cli.shell import FolderArgument, JsonOption, print_json, refuse
from planner.reading import nearest_word
from planner.terms import Place, Problem


def why(
    folder: FolderArgument,
    sowing: Annotated[str, typer.Argument(help='The name of a sowing, such as "radish 3".')],
    json: JsonOption = False,
) -> None:
    """Explain every date of a sowing in a few sentences.

    Example: planner why my-garden "radish 3"
    """
    record = need_record(Path(folder))
    sowings = {one["id"]: one for one in record["sowings"]}
    name = _under_one_name(sowing.strip().casefold(), sowings)
    if name not in sowings:
        wrong = f'No sowing is named "{sowing}".'
        refuse(Problem("nothing-found", Place(folder), wrong, _what_to_name(name, sowings)))
    reasons = sowings[name]["why"]
    if json:
        print_json(reasons)
        return
    print(f"{name}:")
    width = columns()
    for sentence in reasons:
        print(textwrap.fill(sentence, width, initial_indent="- ", subsequent_indent="  "))


def _under_one_name(sowing: str, known: Container[str]) -> str:
    """The name of a sowing with its crop's one name in place of another the almanac knows."""
    if sowing in known:
        return sowing
    crop, _, number = sowing.rpartition(" ")
    page = crop_page(crop or sowing)
    if page is None:
        return sowing
    return f"{page.name} {number}" if crop else page.name


def _what_to_name(sowing: str, known: Iterable[str]) -> str:
    """Which sowing may be meant: of a crop alone, the first and the last."""
    names = list(known)
    of_crop = [one for one in names if one.rpartition(" ")[0] == sowing]
    if of_crop:
        by_number = sorted(of_crop, key=lambda one: (len(one), one))
        first, last = by_number[0], by_number[-1]
        return f'say which: "{first}"' + (f' to "{last}".' if first != last else ".")
    near = nearest_word(sowing, names)
    return f'try "{near}".' if near else "planner week shows the names."
