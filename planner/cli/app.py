"""The commands and what they share."""

import errno
import sys
from collections.abc import Callable
from typing import Annotated

import typer

from planner import __version__
from planner.cli.bedwork import bedwork
from planner.cli.check import check
from planner.cli.completion import mend_completion
from planner.cli.crops import crops
from planner.cli.log import log
from planner.cli.outlook import outlook
from planner.cli.publish import publish
from planner.cli.schedule import schedule
from planner.cli.screen import close_screens, help_columns, no_room_for_output, open_screens
from planner.cli.share import share
from planner.cli.start import start
from planner.cli.stations import stations
from planner.cli.week import week
from planner.cli.why import why

app = typer.Typer(
    help="Plan raised beds so that there is something to pick every week.",
    epilog="First steps: planner start my-garden, then planner schedule my-garden.",
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _first_sentence(command: Callable[..., None]) -> str:
    """What a command does, in full; more than a line of it is folded, not cut off."""
    return (command.__doc__ or "").split("\n\n", maxsplit=1)[0]


for command in (
    start,
    check,
    schedule,
    week,
    outlook,
    bedwork,
    log,
    publish,
    share,
    why,
    crops,
):
    app.command(short_help=_first_sentence(command))(command)
# West is negative: -82.8 is no option.
app.command(
    short_help=_first_sentence(stations), context_settings={"ignore_unknown_options": True}
)(stations)


def _version(wanted: bool) -> None:
    if wanted:
        print(f"planner {__version__}")
        raise typer.Exit


@app.callback()
def options(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Plan raised beds so that there is something to pick every week."""
    del version


def run_app() -> None:
    """Run the command that was typed, and leave with its status."""
    open_screens()
    mend_completion()
    try:
        app(terminal_width=help_columns())
    except OSError as error:
        if error.errno != errno.ENOSPC:
            raise
        sys.exit(no_room_for_output(error))
    except SystemExit as leaving:
        status = leaving.code if isinstance(leaving.code, int) else 0
        sys.exit(close_screens(status))
