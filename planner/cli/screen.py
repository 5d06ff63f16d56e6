"""The terminal: what is shown on it, folded at words to its width, and words that vanish again.

What goes into a file or another program stays as it is, line for line.
"""

import os
import re
import shutil
import sys
import textwrap
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import TextIO

from planner.cli.status import INTERRUPTED, OUTPUT_LOST

_NARROWEST = 20
_WIDEST_HELP = 80
_ERASE = "\r\x1b[K"
_LONG_S = 5
# The first column of a table row, with the gap behind it.
_FIRST_COLUMN = re.compile(r"\s*\S+(?: \S+)*\s{2,}")


def columns() -> int:
    """How many signs the terminal shows on a line."""
    return max(_NARROWEST, shutil.get_terminal_size().columns)


def help_columns() -> int:
    """How wide help is written."""
    return min(_WIDEST_HELP, columns())


class FoldingScreen:
    """A terminal that gets each line folded at words; whatever else is asked of it, it is.

    Words after which no line ends, such as a question, wait until they are flushed.
    """

    def __init__(self, terminal: TextIO) -> None:
        self.unfolded = terminal
        self._waiting = ""

    def __getattr__(self, name: str) -> object:
        """What the terminal itself offers."""
        return getattr(self.unfolded, name)

    def write(self, text: str) -> int:
        """Take text, and show the lines that end in it."""
        *lines, self._waiting = (self._waiting + text).split("\n")
        for line in lines:
            self.unfolded.write(f"{folded(line, columns())}\n")
        return len(text)

    def flush(self) -> None:
        """Show what waits, too."""
        waiting, self._waiting = self._waiting, ""
        self.unfolded.write(waiting)
        self.unfolded.flush()


def folded(line: str, width: int) -> str:
    """A line folded at words, the rest of it under its second column or a little further in."""
    if len(line) <= width:
        return line
    column = _FIRST_COLUMN.match(line)
    hanging = len(column[0]) if column and column.end() <= width // 2 else _indent(line) + 2
    return textwrap.fill(
        line,
        width,
        subsequent_indent=" " * hanging,
        replace_whitespace=False,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip())


def open_screens() -> None:
    """Make standard output and error fit to be written to, whatever they are."""
    sys.stdout = _fit(sys.stdout)
    sys.stderr = _fit(sys.stderr)


def _fit(stream: TextIO | None) -> TextIO:
    if stream is None:
        return open(os.devnull, "w", encoding="utf-8")  # noqa: PTH123 - as long as we run
    with suppress(AttributeError):
        # A name the terminal cannot show must not end a run.
        stream.reconfigure(errors="replace")  # type: ignore[attr-defined]
    if stream.isatty():
        return FoldingScreen(stream)  # type: ignore[return-value]
    return stream


def close_screens(status: int) -> int:
    """Bring out all that was said; the status to leave with.

    Who reads no further, as head does, is not disturbed.
    """
    try:
        sys.stdout.flush()
    except BrokenPipeError:
        _let_output_go()
    except OSError as error:
        status = no_room_for_output(error) or status
    if status == INTERRUPTED and sys.stderr.isatty():
        print(file=sys.stderr)
    return status


def no_room_for_output(error: OSError) -> int:
    """Tell that what was to be shown could not be; the status to leave with."""
    _let_output_go()
    print(f"What was to be shown could not be written: {error.strerror}.", file=sys.stderr)
    return OUTPUT_LOST


def _let_output_go() -> None:
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)


@contextmanager
def telling(what: str) -> Iterator[None]:
    """Tell on a terminal what is being done until it is done, and how long when it takes long."""
    if not sys.stderr.isatty():
        yield
        return
    can_erase = os.environ.get("TERM", "dumb") != "dumb"
    _show(f"{what} ..." if can_erase else f"{what} ...\n")
    if not can_erase:
        yield
        return
    done = threading.Event()
    counting = threading.Thread(target=_count_seconds, args=(what, done), daemon=True)
    counting.start()
    try:
        yield
    finally:
        done.set()
        counting.join()
        _show(_ERASE)


def _count_seconds(what: str, done: threading.Event) -> None:
    """Show beside what is being done for how many seconds it has been, once that is long."""
    seconds = _LONG_S
    if done.wait(_LONG_S):
        return
    while not done.wait(1):
        seconds += 1
        _show(f"\r{what} ... {seconds} s")


def _show(text: str) -> None:
    sys.stderr.write(text)
    sys.stderr.flush()
