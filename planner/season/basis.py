"""What a season rests on, as one short mark: the garden, and what the journal tells so far."""

from hashlib import sha256

from planner.garden import Garden
from planner.journal import Journal


def basis_of(garden: Garden, journal: Journal) -> str:
    """A mark that is the same as long as garden and journal say the same.

    On which lines they say it is no part of it: places in files have no part in what nouns say of
    themselves (their repr).
    """
    return sha256(f"{garden!r}|{journal!r}".encode()).hexdigest()[:16]
