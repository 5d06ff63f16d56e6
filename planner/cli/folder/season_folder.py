"""Writing the season folder in one step or not at all.

Everything is written into a new folder beside the old one and forced to disk; then the two
change names. Where the system can exchange two names at once that is one step; elsewhere it
is two, and a run that dies between them is put right by the next one. A list of what was
written stays in the folder, so that the next run knows its own from the grower's.
"""

import ctypes
import os
import shutil
import sys
from pathlib import Path

from planner.cli.folder.disk import fill, sync, unwritable
from planner.terms import Place, Problem

SEASON = "season"
WRITTEN = "written.txt"
_OLD = "season.old"
_NEW = "season.new"
_EXCHANGE = 2  # RENAME_EXCHANGE of Linux and RENAME_SWAP of macOS
_AT_FDCWD = -100


def write_season_folder(folder: Path, files: dict[str, bytes]) -> Problem | None:
    """Put the files in place of the season there was; a problem leaves that one whole.

    Names may have one folder in them. Files in the season folder that the program did not write
    are carried over; what it wrote before and does not write now is gone.
    """
    new = folder / f"{_NEW}.{os.getpid()}"
    season = folder / SEASON
    try:
        recover(folder)
        if season.is_symlink() or (season.exists() and not season.is_dir()):
            return _in_the_way(season)
        _clear_leftovers(folder)
        new.mkdir()
        _write_all(new, {**files, WRITTEN: _list_of(files)})
        if season.exists():
            in_the_way = _carry_over(season, new, _written_before(season))
            if in_the_way:
                return _in_the_way(in_the_way)
        sync(new)
        _change_places(new, season)
        sync(folder)
    except OSError as error:
        return unwritable(season, error)
    finally:
        _take_away(new)
    return None


def _take_away(folder: Path) -> None:
    """Remove a folder and what is in it, to the end even when Ctrl-C comes meanwhile."""
    try:
        shutil.rmtree(folder, ignore_errors=True)
    except KeyboardInterrupt:
        shutil.rmtree(folder, ignore_errors=True)
        raise


def recover(folder: Path) -> None:
    """Finish what a run that died between two renamings left behind."""
    old, season = folder / _OLD, folder / SEASON
    if old.is_dir() and not season.exists():
        old.rename(season)


def _clear_leftovers(folder: Path) -> None:
    """Take away what runs that were killed left behind; a run still going keeps its own."""
    for left in folder.glob(f"{_NEW}.*"):
        number = left.suffix.removeprefix(".")
        if number == str(os.getpid()) or not (number.isdigit() and _is_running(int(number))):
            shutil.rmtree(left, ignore_errors=True)


def _is_running(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True


def _in_the_way(path: Path) -> Problem:
    return Problem(
        "folder-unwritable",
        Place(str(path)),
        "Something of another kind but of that name is in the way. Nothing was changed.",
        "move it away; the program makes the file or folder of that name itself.",
    )


def _list_of(files: dict[str, bytes]) -> bytes:
    return "".join(f"{name}\n" for name in sorted({*files, WRITTEN})).encode()


def _written_before(season: Path) -> set[str]:
    """The names the run before wrote; none where no list of them can be read."""
    try:
        return set((season / WRITTEN).read_text(encoding="utf-8").splitlines())
    except (OSError, ValueError):
        return set()


def _write_all(new: Path, files: dict[str, bytes]) -> None:
    for name, content in files.items():
        (new / name).parent.mkdir(exist_ok=True)
        with (new / name).open("wb") as file:
            fill(file, content)
    for below in {(new / name).parent for name in files} - {new}:
        sync(below)


def _carry_over(season: Path, new: Path, written_before: set[str], below: str = "") -> Path | None:
    """Copy what is the grower's; what cannot stand beside the new files is given back."""
    for entry in sorted((season / below).iterdir()):
        name = f"{below}{entry.name}"
        target = new / name
        is_folder = entry.is_dir() and not entry.is_symlink()
        if target.exists() and is_folder != target.is_dir():
            return entry
        if is_folder:
            target.mkdir(exist_ok=True)
            in_the_way = _carry_over(season, new, written_before, f"{name}/")
            if in_the_way:
                return in_the_way
            shutil.copystat(entry, target)
        elif not target.exists() and name not in written_before:
            shutil.copy2(entry, target, follow_symlinks=False)
    return None


def _change_places(new: Path, season: Path) -> None:
    if not season.exists():
        new.rename(season)
        return
    if _exchange(new, season):
        return
    old = season.with_name(_OLD)
    shutil.rmtree(old, ignore_errors=True)
    season.rename(old)
    new.rename(season)
    shutil.rmtree(old, ignore_errors=True)


def _exchange(first: Path, second: Path) -> bool:
    """Exchange two names in one step; False where the system cannot."""
    try:
        library = ctypes.CDLL(None, use_errno=True)
        names = (os.fsencode(first), os.fsencode(second))
        if sys.platform == "darwin":
            return int(library.renamex_np(*names, _EXCHANGE)) == 0
        status = library.renameat2(_AT_FDCWD, names[0], _AT_FDCWD, names[1], _EXCHANGE)
        return int(status) == 0
    except (AttributeError, OSError, TypeError):
        return False
