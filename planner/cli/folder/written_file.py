"""A file the grower names, written whole or not at all."""

import contextlib
import os
from dataclasses import replace
from pathlib import Path

from planner.cli.folder.season_folder import unwritable
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
            _write(new, content)
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


def _write(path: Path, content: bytes) -> None:
    with path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _in_the_way(path: Path) -> Problem:
    return Problem(
        "file-unwritable",
        Place(str(path)),
        "Something of that name that is no plain file is in the way. Nothing was changed.",
        "name another file.",
    )
