"""A file written whole or not at all."""

import contextlib
import os
from dataclasses import replace
from pathlib import Path

from planner.cli.folder.disk import fill, unwritable
from planner.terms import Place, Problem


def write_whole(path: Path, content: bytes) -> Problem | None:
    """Put a file in place in one step; what stood there before stays when that fails.

    Where a link leads to a file, that file is written.
    """
    try:
        target = path.resolve()
        if target.is_symlink() or (target.exists() and not target.is_file()):
            return _in_the_way(path)
        new = target.with_name(f".planner.{os.getpid()}")
        try:
            with new.open("wb") as file:
                fill(file, content)
            new.replace(target)
        finally:
            with contextlib.suppress(OSError):
                new.unlink()
    except OSError as error:
        if path.parent.is_dir():
            return replace(unwritable(path, error), kind="file-unwritable")
        return Problem(
            "file-unwritable",
            Place(str(path)),
            f"There is no folder {path.parent}. Nothing was changed.",
            "make that folder, or name a file in another one.",
        )
    except (ValueError, RuntimeError):  # a name no disk can hold, a link that leads to itself
        return _in_the_way(path)
    return None


def write_new(path: Path, content: bytes) -> None:
    """Make a file that is not there yet, and the folder it lies in.

    An OSError says that one is there or that it cannot be made; then nothing of it is left.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        try:
            fill(file, content)
        except BaseException:
            path.unlink(missing_ok=True)
            raise


def _in_the_way(path: Path) -> Problem:
    return Problem(
        "file-unwritable",
        Place(str(path)),
        "Something of that name that is no plain file is in the way. Nothing was changed.",
        "name another file.",
    )
