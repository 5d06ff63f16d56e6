"""Putting bytes on the disk, and what to tell where it will not."""

import contextlib
import errno
import os
from pathlib import Path
from typing import BinaryIO

from planner.terms import Place, Problem

_REMEDIES = {
    errno.ENOSPC: "free some space on this disk.",
    errno.EDQUOT: "free some space on this disk.",
    errno.EFBIG: "free some space, or raise the limit on the size of files.",
    errno.EROFS: "this disk is read-only: copy the plan folder to another one.",
}


def fill(file: BinaryIO, content: bytes) -> None:
    """Write all of a file and force it to disk; an OSError says that it could not be."""
    file.write(content)
    file.flush()
    os.fsync(file.fileno())


def sync(folder: Path) -> None:
    """Force the names in a folder to disk, where the system can."""
    with contextlib.suppress(OSError, AttributeError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def unwritable(path: Path, error: OSError, left: str = "Nothing was changed.") -> Problem:
    """Why something could not be written; `left` is a sentence on what has become of the rest."""
    return Problem(
        "folder-unwritable",
        Place(str(path)),
        f"The computer says: {error.strerror or error}. {left}",
        _REMEDIES.get(error.errno or 0, "see that you may write in this folder."),
    )


def unreadable(name: str, error: OSError) -> Problem:
    """Why a file of a plan folder could not be read."""
    return Problem(
        "file-unreadable",
        Place(name),
        f"The computer says: {error.strerror}.",
        "see that it is a plain file you may read.",
    )
