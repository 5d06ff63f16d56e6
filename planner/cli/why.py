"""`planner why`: the reasons behind the dates of a sowing."""

import textwrap
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
    name = sowing.strip().casefold()
    found = sowings.get(name) or sowings.get(_under_one_name(name))
    if found is None:
        near = nearest_word(sowing, sowings)
        refuse(
            Problem(
                "nothing-found",
                Place(str(folder)),
                f'No sowing is named "{sowing}".',
                f'try "{near}".' if near else "planner week shows the names.",
            )
        )
    if json:
        print_json(found["why"])
        return
    print(f"{found['id']}:")
    width = columns()
    for sentence in found["why"]:
        print(textwrap.fill(sentence, width, initial_indent="- ", subsequent_indent="  "))


def _under_one_name(sowing: str) -> str:
    """The name of a sowing with its crop's one name in place of another the almanac knows."""
    crop, _, number = sowing.rpartition(" ")
    page = crop_page(crop)
    return f"{page.name} {number}" if page else sowing
