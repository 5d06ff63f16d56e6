"""`planner log`: note in the journal what has happened to a sowing."""

import sys
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import JOURNAL, journal_held, names_of, need_record, note_entry
from planner.cli.shell import FolderArgument, command_line, need, today
from planner.journal import Entry, Event
from planner.reading import NotedEntry

# What these tell moves nothing by itself.
_MOVE_NOTHING = {Event.PICKED}


def log(
    folder: FolderArgument,
    event: Annotated[str, typer.Argument(help=f"One of: {', '.join(Event)}.", show_default=False)],
    sowing: Annotated[str, typer.Argument(help='The name of a sowing, such as "radish 3".')],
    on: Annotated[
        str | None,
        typer.Option("--on", metavar="DAY", help="The day it happened, if not today (2027-05-01)."),
    ] = None,
    amount: Annotated[
        str | None,
        typer.Option(
            "--amount",
            metavar="AMOUNT",
            help='"25 roots" picked, "6 plants" lost (else all), "10 days" late.',
        ),
    ] = None,
    note: Annotated[
        str | None, typer.Option("--note", metavar="WORDS", help="Words of your own.")
    ] = None,
) -> None:
    """Note in journal.csv what has happened to a sowing.

    The entry is added at the end; nothing else in the file changes. "set out" may be written
    set-out. "undone" takes back the last entry of the sowing.

    Example: planner log my-garden picked "radish 3" --amount "25 roots"
    """
    path = Path(folder)
    names = need(names_of(need_record(path)))
    cells = (on if on is not None else today().isoformat(), event, sowing, amount or "", note or "")
    with journal_held(path):
        noted = need(note_entry(path, cells, names))
    if noted.damaged:
        print("\n\n".join(str(problem) for problem in noted.damaged), file=sys.stderr)
        print("\nThese lines were left as they are; the new one is noted.", file=sys.stderr)
    print(_told(noted, path))


def _told(noted: NotedEntry, folder: Path) -> str:
    entry, before = noted.entry, noted.takes_back
    words = f"Noted in {JOURNAL}: {_words(entry)}."
    if before is not None:
        words = f"Noted in {JOURNAL}: no longer counts that {_words(before)}."
    if entry.event in _MOVE_NOTHING:
        return words
    return f"{words}\n{command_line('schedule', folder)} makes the plan follow."


def _words(entry: Entry) -> str:
    amount = f", {entry.amount}" if entry.amount is not None else ""
    return f"{entry.sowing} {entry.event} on {entry.day}{amount}"
