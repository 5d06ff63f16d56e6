"""The part of an address that nobody can guess, kept in the plan folder so that it stays."""

import os
import re
import secrets
from pathlib import Path

from planner.cli.folder import unwritable
from planner.terms import Place, Problem

SHARE_TOKEN = ".share-token"  # noqa: S105 - the name of the file, not what is in it
_OCTETS = 32
_TOKEN = re.compile(r"[A-Za-z0-9_-]{40,}")


def share_token(folder: Path) -> str | Problem:
    """The token of a plan folder, made on the first call; only its owner may read the file."""
    path = folder / SHARE_TOKEN
    try:
        _make(path)
        path.chmod(0o600)
        token = path.read_text(encoding="ascii").strip()
    except UnicodeDecodeError:
        token = ""
    except OSError as error:
        return unwritable(path, error, "Nothing is shared.")
    if not _TOKEN.fullmatch(token):
        return Problem(
            "file-unreadable",
            Place(str(path)),
            "It does not hold an address that was made here.",
            "take the file away; a new address is made, which your apps must be told.",
        )
    return token


def _make(path: Path) -> None:
    try:
        file = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    except FileExistsError:
        return
    try:
        os.write(file, f"{secrets.token_urlsafe(_OCTETS)}\n".encode())
        os.fsync(file)
    finally:
        os.close(file)
