"""The shell: commands that open files, call the engine, print, and exit.

The only room with a clock, a disk and a screen.
"""

import signal
import sys

from planner.cli.status import INTERRUPTED

__all__ = ["run"]


def run() -> None:
    """Enter from the command line; Ctrl-C leaves at any time, without a word."""
    try:
        from planner.cli.app import run_app  # noqa: PLC0415 - Ctrl-C may come while it loads

        run_app()
    except BaseException as error:
        if not _was_interrupted(error):
            raise
        sys.exit(INTERRUPTED)
    finally:
        # What is done is done: while Python takes itself apart Ctrl-C would only be complained of.
        signal.signal(signal.SIGINT, signal.SIG_IGN)


def _was_interrupted(error: BaseException | None) -> bool:
    """Whether Ctrl-C is at the bottom of it; a library may report it as a failure to load."""
    while error is not None and not isinstance(error, KeyboardInterrupt):
        error = error.__cause__ or error.__context__
    return error is not None
