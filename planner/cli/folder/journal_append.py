"""Adding a line to the journal, whole or not at all, while others may be adding theirs.

Who adds a line holds the plan folder until it is written, so that two lines never mix and none
is lost. The line goes to the end of the file in one piece and is forced to disk; where there is
no room for all of it, what was written of it is taken back.
"""

import contextlib
import errno
import os
import sys
from collections.abc import Iterator
from pathlib import Path

from planner.cli.folder.disk import sync, unwritable
from planner.terms import Problem

_LOCK = ".journal.lock"  # only where a folder itself cannot be held


@contextlib.contextmanager
def journal_held(folder: Path) -> Iterator[None]:
    """Keep others from adding to the journal meanwhile; where no lock is to be had, go on."""
    descriptor = _hold(folder)
    try:
        yield
    finally:
        # To close what is held, or to be killed, lets it go.
        if descriptor is not None:
            os.close(descriptor)


if sys.platform == "win32":
    import msvcrt

    def _hold(folder: Path) -> int | None:
        with contextlib.suppress(OSError):
            descriptor = os.open(folder / _LOCK, os.O_CREAT | os.O_RDWR)
            with contextlib.suppress(OSError):
                msvcrt.locking(descriptor, msvcrt.LK_LOCK, 1)
            return descriptor
        return None

else:
    import fcntl

    def _hold(folder: Path) -> int | None:
        with contextlib.suppress(OSError):
            descriptor = os.open(folder, os.O_RDONLY)
            with contextlib.suppress(OSError):
                fcntl.flock(descriptor, fcntl.LOCK_EX)
            return descriptor
        return None


def append_line(path: Path, line: bytes) -> Problem | None:
    """Put bytes at the end of a journal, all or none of them; the file is made if need be."""
    is_new = not path.exists()
    try:
        _append(path, line)
    except OSError as error:
        if is_new:
            _take_back_file(path)
        return unwritable(path, error)
    if is_new:
        sync(path.parent)
    return None


def _append(path: Path, line: bytes) -> None:
    binary = getattr(os, "O_BINARY", 0)
    descriptor = os.open(path, os.O_WRONLY | os.O_APPEND | os.O_CREAT | binary, 0o666)
    try:
        length = os.fstat(descriptor).st_size
        try:
            if os.write(descriptor, line) < len(line):
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            os.fsync(descriptor)
        except OSError:
            os.ftruncate(descriptor, length)
            raise
    finally:
        os.close(descriptor)


def _take_back_file(path: Path) -> None:
    """Take away a new file that nothing could be written into."""
    with contextlib.suppress(OSError):
        if path.stat().st_size == 0:
            path.unlink()
